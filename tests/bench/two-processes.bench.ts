/** The same county reconciled by one process and by two. Says how much two help on this machine. `PARCELS=2000 npm run bench -- two`. */
import { setTimeout as wait } from 'node:timers/promises'
import { COUNTY } from '../support/people.ts'
import { benchService } from './county/bench-service.ts'
import { fillCounty } from './county/fill.ts'
import { serve, stop } from './county/load.ts'
import { perSecond, sized, tell } from './county/tell.ts'

const PARCELS = sized('PARCELS', 2_000)

/** Seconds that so many processes take for a fresh county. */
async function taken(processes: number): Promise<number> {
  const service = await benchService()
  try {
    await fillCounty(service, { seed: 4, parcels: PARCELS, inspected: 1 })
    const environment = { ASFOUND_DATA: service.dataFolder, JOBS: 'on', JOBS_AT_ONCE: '1' }
    const all = await Promise.all(
      Array.from({ length: processes }, () => serve('ours', service.url, environment)),
    )
    const ask = async (address: string, body?: object) => {
      const response = await fetch(`http://127.0.0.1:${all[0]!.port}/v1/counties/${COUNTY}${address}`, {
        method: body ? 'POST' : 'GET',
        headers: {
          authorization: `Bearer ${service.people.reviewer.token}`,
          'content-type': 'application/json',
        },
        ...(body ? { body: JSON.stringify(body) } : {}),
      })
      return (await response.json()) as { id: string; state: string }
    }
    const from = performance.now()
    const { id } = await ask('/reruns', { cause: 'asked-for' })
    while ((await ask(`/reruns/${id}`)).state !== 'done') await wait(50)
    const took = (performance.now() - from) / 1000
    await Promise.all(all.map(stop))
    return took
  } finally {
    await service.close()
  }
}

const [one, two] = [await taken(1), await taken(2)]
tell({
  what: `re-run of ${PARCELS.toLocaleString('en-US')} parcels by two processes`,
  value: `${two.toFixed(1)} s (${perSecond(PARCELS, two)})`,
  limit: `by one: ${one.toFixed(1)} s (${perSecond(PARCELS, one)})`,
  ratio: one / two,
  aim: '1.8',
  met: one / two >= 1.8,
})
