/**
 * Search and queue over a large county, as operations have them (row-level security and all), against the index scan
 * alone. `ROWS=1000000 npm run bench -- queue-and-search`.
 */

import { transact } from '../../src/store/database/transact.ts'
import { discrepancyQueue } from '../../src/store/discrepancies.ts'
import { searchParcels } from '../../src/store/parcels.ts'
import type { QueueFilter } from '../../src/store/queue-heads.ts'
import { benchService } from './county/bench-service.ts'
import { dice } from './county/dice.ts'
import { numberOf } from './county/make-county.ts'
import { sized, tell } from './county/tell.ts'

const ROWS = sized('ROWS', 200_000)
const ASKED = 200

const ours = await benchService()
try {
  const { owner, context, people } = ours
  await fill()
  await queue()
  await search()

  /** Straight into the tables, without the triggers: a million of what an import would leave. */
  async function fill(): Promise<void> {
    await owner.query('set session_replication_role = replica')
    await owner.query(
      `insert into parcel (county, id, number, address)
       select 'quillback', gen_random_uuid(), lpad((1 + n / 1000000)::text, 2, '0') || '-' || lpad((n / 100 % 10000)::text, 4, '0')
         || '-' || lpad((1 + n % 100)::text, 4, '0'),
         (n % 60 + 1) * 2 || ' ' || (array['Tern','Heron','Larch','Mill','Alder','Quarry','Marsh','Fern','Kestrel','Otter'])[1 + n / 60 % 10]
         || ' ' || (array['Pond','Hill','Brook','Ridge','Hollow','Meadow','Crossing','Point','Glen','Field'])[1 + n / 600 % 10]
         || case when n < 36000 then '' else ' ' || n / 36000 + 1 end || ' '
         || (array['Road','Lane','Street','Drive','Court','Avenue'])[1 + n / 6000 % 6]
       from generate_series(0, $1 - 1) n`,
      [ROWS],
    )
    await owner.query(
      `insert into street (county, key) select distinct county, street_key from parcel on conflict do nothing`,
    )
    await owner.query(
      `insert into parcel_alias (county, parcel, number, kind)
       select county, id, 'A-' || number, 'renumbered' from parcel where random() < 0.1`,
    )
    await owner.query(
      `insert into discrepancy (county, id, parcel, kind, subject, severity, state, evidence_hash, reconciliation, body, says,
         raised_at, changed_at)
       select county, gen_random_uuid(), id,
         (array['capacity-below-record','line-replaced','solids-high','condition-poor','record-unclear'])[1 + (random() * 4)::int],
         'x', (array['action','review','review','note'])[1 + (random() * 3)::int],
         (array['open','open','decided','vanished'])[1 + (random() * 3)::int], repeat('a', 64), id,
         jsonb_build_object('filler', repeat('b', 600)), now() - random() * interval '900 days', now() - random() * interval '90 days'
       from parcel`,
    )
    await owner.query('set session_replication_role = origin')
    await owner.query('vacuum analyze parcel, parcel_alias, street, discrepancy')
  }

  async function queue(): Promise<void> {
    const open: QueueFilter = {
      states: ['open'],
      kinds: [],
      severities: [],
      since: undefined,
      parcel: undefined,
    }
    const filters: readonly (readonly [string, QueueFilter])[] = [
      ['what is open', open],
      ['open and ground moved', { ...open, states: ['open', 'ground-moved'] }],
      ['one kind', { ...open, kinds: ['solids-high'] }],
      ['one severity', { ...open, severities: ['review'] }],
      ['changed this week', { ...open, since: new Date(Date.now() - 7 * 86_400_000) }],
      [
        'kind and severity and since',
        {
          ...open,
          kinds: ['solids-high'],
          severities: ['action'],
          since: new Date(Date.now() - 30 * 86_400_000),
        },
      ],
    ]
    const { rows } = await owner.query<{ rank: number; raised: Date; id: string }>(
      `select severity_rank as rank, raised_at as raised, id from discrepancy where county = 'quillback' and state = 'open'
       order by severity_rank, raised_at, id offset $1 limit 1`,
      [Math.floor(ROWS * 0.3)],
    )
    const deep = { rank: rows[0]!.rank, raisedAt: rows[0]!.raised, id: rows[0]!.id }
    const bare = await times(() =>
      owner.query({
        name: 'bare',
        text: `select id, body, raised_at from discrepancy where county = $1 and state = $2
          order by severity_rank, raised_at, id limit 51`,
        values: ['quillback', 'open'],
      }),
    )
    for (const [what, filter] of filters) {
      for (const [where, after] of [
        ['first page', undefined],
        ['a page far down', deep],
      ] as const) {
        const took = await times(() =>
          transact(context.database, people.reviewer, (tx) =>
            discrepancyQueue(tx, 'quillback', filter, after, 51),
          ),
        )
        told(`queue, ${what}, ${where}`, took, bare, 'the index scan alone')
      }
    }
  }

  async function search(): Promise<void> {
    const chance = dice(11)
    const { rows: old } = await owner.query<{ number: string }>('select number from parcel_alias limit 5000')
    const kinds: readonly (readonly [string, () => string])[] = [
      [
        'number in another spelling',
        () =>
          numberOf(chance.between(0, ROWS - 1))
            .replace(/-0*/g, ' ')
            .replace(/^0/, ''),
      ],
      ['old number', () => chance.pick(old).number],
      ['beginning of a number', () => numberOf(chance.between(0, ROWS - 1)).slice(0, 7)],
      ['address', () => `${chance.between(1, 60) * 2} Heron Hill Road`],
      [
        'misspelled address',
        () =>
          `${chance.between(1, 60) * 2} ${chance.pick(['Herron Hil', 'Kestral Brok', 'Quary Medow', 'Oter Crosing'])} Rd`,
      ],
    ]
    const bare = await times(() =>
      owner.query({
        name: 'by-number',
        text: 'select id from parcel where county = $1 and number = $2',
        values: ['quillback', numberOf(chance.between(0, ROWS - 1))],
      }),
    )
    for (const [what, asked] of kinds) {
      const took = await times(() =>
        transact(context.database, people.agent, (tx) => searchParcels(tx, asked(), 20)),
      )
      told(`search, ${what}`, took, bare, 'one row by its key')
    }
  }

  function told(what: string, took: Times, bare: Times, against: string): void {
    tell({
      what: `${what}, ${ROWS.toLocaleString('en-US')} rows`,
      value: `median ${took.median.toFixed(1)} ms, 95th percentile ${took.p95.toFixed(1)} ms`,
      limit: `${against}: median ${bare.median.toFixed(1)} ms`,
      ratio: took.median / bare.median,
      aim: '95th percentile under 20 ms',
      met: took.p95 < 20,
    })
  }
} finally {
  await ours.close()
}

type Times = { readonly median: number; readonly p95: number }
async function times(work: () => Promise<unknown>): Promise<Times> {
  for (let n = 0; n < 20; n++) await work()
  const took: number[] = []
  for (let n = 0; n < ASKED; n++) {
    const from = performance.now()
    await work()
    took.push(performance.now() - from)
  }
  took.sort((a, b) => a - b)
  return { median: took[ASKED >> 1]!, p95: took[Math.floor(ASKED * 0.95)]! }
}
