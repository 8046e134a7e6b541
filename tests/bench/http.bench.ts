/**
 * Over HTTP, one process each: the status of a parcel against fastify and pg with a one-row lookup; a trial of a parcel of
 * twelve components against fastify sending the same body back. `npm run bench -- http`.
 */
import { findingsExample, permitExample } from '../../src/http/api/shapes/entries.ts'
import { shareRerun } from '../../src/operations/reruns/share-rerun.ts'
import { serviceIn } from '../../src/store/database/actor.ts'
import { transact } from '../../src/store/database/transact.ts'
import { gatherWholeCounty, insertRerun } from '../../src/store/reruns.ts'
import { COUNTY } from '../support/people.ts'
import { benchService } from './county/bench-service.ts'
import { dice } from './county/dice.ts'
import { fillCounty } from './county/fill.ts'
import { inTurn, rate, serve, stop } from './county/load.ts'
import { tell } from './county/tell.ts'

const service = await benchService()
const { context, people, url, owner } = service
try {
  await fillCounty(service, { seed: 2, parcels: 500, inspected: 0.3 })
  const rerun = context.newId()
  await transact(context.database, serviceIn(COUNTY), async (tx) => {
    await insertRerun(tx, COUNTY, {
      id: rerun,
      cause: 'asked-for',
      state: 'running',
      askedAt: context.clock(),
      by: null,
    })
    await gatherWholeCounty(tx, COUNTY, rerun)
  })
  await shareRerun(context, {
    id: rerun,
    actor: people.reviewer,
    data: { rerun },
    report: async () => {},
    signal: new AbortController().signal,
  })
  await owner.query('vacuum analyze')
  const { rows } = await owner.query<{ number: string }>(
    'select p.number from parcel p join parcel_status s on s.parcel = p.id',
  )
  const chance = dice(1)
  const number = () => chance.pick(rows).number
  const [ours, bare] = [
    await serve('ours', url, { ASFOUND_DATA: service.dataFolder }),
    await serve('bare', url),
  ]
  const headers = { authorization: `Bearer ${people.agent.token}` }
  try {
    const status = await inTurn(
      () =>
        rate(
          [ours.port],
          { method: 'GET', path: () => `/v1/counties/${COUNTY}/parcels/${number()}/status` },
          { headers },
        ),
      () => rate([bare.port], { method: 'GET', path: () => `/status/${number()}` }),
    )
    tell({
      what: 'reading one status over HTTP',
      value: `${Math.round(status.ours)} requests/s`,
      limit: `fastify and pg, one-row lookup: ${Math.round(status.limit)} requests/s`,
      ratio: status.ratio,
      aim: '0.8 or better',
      met: status.ratio >= 0.8,
    })
    const body = JSON.stringify({ rules: COUNTY, permits: [permitExample], findings: findingsExample })
    const trial = await inTurn(
      () => rate([ours.port], { method: 'POST', path: () => '/v1/reconciliations/trial', body }, { headers }),
      () => rate([bare.port], { method: 'POST', path: () => '/echo', body }),
    )
    tell({
      what: 'trial over HTTP',
      value: `${Math.round(trial.ours)} requests/s`,
      limit: `fastify sending the same body back: ${Math.round(trial.limit)} requests/s`,
      ratio: trial.ratio,
      aim: '0.5 or better',
      met: trial.ratio >= 0.5,
    })
  } finally {
    await stop(ours)
    await stop(bare)
  }
} finally {
  await service.close()
}
