/** Every permit of a county as CSV, NDJSON and BLDS, against COPY of the bare table. `ROWS=1000000 npm run bench -- export`. */
import { Writable } from 'node:stream'
import { pipeline } from 'node:stream/promises'
import { to as copyTo } from 'pg-copy-streams'
import { exportCounty } from '../../src/operations/exports/export-county.ts'
import { benchService } from './county/bench-service.ts'
import { fillCounty } from './county/fill.ts'
import { perSecond, seconds, sized, tell } from './county/tell.ts'

const ROWS = sized('ROWS', 100_000)
const MADE = Math.min(ROWS, 2_000)

const away = () => new Writable({ write: (_chunk, _encoding, done) => done() })
const service = await benchService()
try {
  const { owner, context, people } = service
  await fillCounty(service, { seed: 3, parcels: MADE })
  // The rest are copies of those: what is written out is as long, and nobody waits for a million entries of the audit.
  await owner.query('set session_replication_role = replica')
  await owner.query(
    `insert into permit (county, id, parcel, number, kind, issued_on, approved_on, record)
     select p.county, gen_random_uuid(), p.parcel, p.number || '-' || n, p.kind, p.issued_on, p.approved_on, p.record
     from generate_series(1, ceil($1::numeric / (select count(*) from permit))::integer) n cross join permit p limit $1`,
    [ROWS],
  )
  await owner.query('set session_replication_role = origin')
  await owner.query('analyze')
  const { rows } = await owner.query<{ n: string }>('select count(*) n from permit')
  const count = Number(rows[0]!.n)
  const bare = () => seconds(() => pipeline(owner.query(copyTo('copy permit to stdout')), away()))
  for (const [form, blds] of [
    ['csv', false],
    ['csv', true],
    ['ndjson', false],
  ] as const) {
    const ours = async () =>
      pipeline(await exportCounty(context, people.reviewer, { what: 'permits', form, blds }), away())
    // Once each before, so that neither pays for reading from the disk.
    await bare()
    await ours()
    let peak = 0
    const watch = setInterval(() => {
      peak = Math.max(peak, process.memoryUsage().rss)
    }, 50)
    const before = process.memoryUsage().rss
    const limit = await bare()
    const took = await seconds(ours)
    clearInterval(watch)
    const ratio = limit / took
    tell({
      what: `export of ${count.toLocaleString('en-US')} permits as ${blds ? 'BLDS ' : ''}${form}`,
      value: `${took.toFixed(1)} s (${perSecond(count, took)}), ${Math.round((peak - before) / 1_048_576)} MB more than before`,
      limit: `COPY permit TO STDOUT: ${limit.toFixed(1)} s (${perSecond(count, limit)})`,
      ratio,
      aim: '0.5 or better',
      met: ratio >= 0.5,
    })
  }
} finally {
  await service.close()
}
