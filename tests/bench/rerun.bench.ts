/**
 * A county reconciled again after a rule change that reaches everybody inspected, by one process with as many jobs at once as
 * the settings have without being told, against reading the same inputs and COPYing the same answers. And the same county when nobody is affected. `PARCELS=100000 npm run bench -- rerun`.
 */
import { createReadStream, createWriteStream } from 'node:fs'
import path from 'node:path'
import { pipeline } from 'node:stream/promises'
import { from as copyFrom, to as copyTo } from 'pg-copy-streams'
import { must } from '../../src/base/result.ts'
import { readSettings } from '../../src/config.ts'
import { PACKS_FOLDER, readPackTexts } from '../../src/files/rule-packs.ts'
import { shareRerun } from '../../src/operations/reruns/share-rerun.ts'
import { parsePacks } from '../../src/rules/parse/parse-packs.ts'
import { serviceIn } from '../../src/store/database/actor.ts'
import { transact } from '../../src/store/database/transact.ts'
import { onFileOf } from '../../src/store/many-parcels.ts'
import { parcelsOnFile } from '../../src/store/parcels-on-file.ts'
import { gatherWholeCounty, insertRerun, rerunCounts } from '../../src/store/reruns.ts'
import { COUNTY } from '../support/people.ts'
import { benchService } from './county/bench-service.ts'
import { fillCounty } from './county/fill.ts'
import { perSecond, seconds, sized, tell } from './county/tell.ts'

const PARCELS = sized('PARCELS', 2_000)
const { JOBS_AT_ONCE } = must(readSettings({}))

const ours = await benchService()
try {
  const { context, people, owner } = ours
  await fillCounty(ours, { seed: 5, parcels: PARCELS, inspected: 1 })
  const run = async (book = context.book) => {
    const id = context.newId()
    await transact(context.database, people.reviewer, async (tx) => {
      const by = people.reviewer.account
      await insertRerun(tx, COUNTY, {
        id,
        cause: 'rules-changed',
        state: 'running',
        askedAt: context.clock(),
        by,
      })
      await gatherWholeCounty(tx, COUNTY, id)
    })
    const job = {
      id,
      actor: people.reviewer,
      data: { rerun: id },
      report: async () => {},
      signal: new AbortController().signal,
    }
    const took = await seconds(() =>
      Promise.all(Array.from({ length: JOBS_AT_ONCE }, () => shareRerun({ ...context, book }, job))),
    )
    return {
      took,
      counts: await transact(context.database, people.reviewer, (tx) => rerunCounts(tx, COUNTY, id)),
    }
  }
  const first = await run()
  if (first.counts.failed > 0) throw new Error(`${first.counts.failed} failed`)
  await owner.query('vacuum analyze')

  const unaffected = await run()
  tell({
    what: `re-run of ${PARCELS.toLocaleString('en-US')} parcels of which none is affected`,
    value: `${unaffected.took.toFixed(1)} s (${perSecond(PARCELS, unaffected.took)})`,
    limit: `the same when all are: ${first.took.toFixed(1)} s (${perSecond(PARCELS, first.took)})`,
    ratio: first.took / unaffected.took,
    aim: 'skipped, not reconciled',
    met: unaffected.counts.unaffected === PARCELS,
  })

  const texts = await readPackTexts(PACKS_FOLDER)
  const other = texts.map((it) =>
    it.path === 'conventions/tolerances.yaml' ? { ...it, text: it.text.replace(/\b5\b/, '6') } : it,
  )
  const table = path.join(ours.dataFolder, 'answers')
  // With its keys and its audit, as the table itself.
  await owner.query('create table answers (like reconciliation including all)')
  await owner.query(`call watch_records('answers', 'id')`)
  await pipeline(owner.query(copyTo('copy reconciliation to stdout')), createWriteStream(table))
  const limit = await seconds(async () => {
    for (let after: string | null = null; ; ) {
      const last: string | null = after
      const some = await transact(context.database, serviceIn(COUNTY), async (tx) => {
        const parcels = await parcelsOnFile(tx, COUNTY, last, 50)
        await onFileOf(
          tx,
          COUNTY,
          parcels.map(({ id }) => id),
        )
        return parcels
      })
      if (some.length < 50) break
      after = some.at(-1)!.id
    }
    await pipeline(createReadStream(table), owner.query(copyFrom('copy answers from stdin')))
  })
  const again = await run(must(parsePacks(other)))
  const redone = again.counts.same + again.counts.changed
  tell({
    what: `re-run of ${PARCELS.toLocaleString('en-US')} parcels after a rule change, ${redone.toLocaleString('en-US')} of them affected`,
    value: `${again.took.toFixed(1)} s (${perSecond(PARCELS, again.took)})`,
    limit: `reading the inputs and COPYing the answers: ${limit.toFixed(1)} s (${perSecond(PARCELS, limit)})`,
    ratio: again.took / limit,
    aim: 'at most 2',
    met: again.took / limit <= 2,
  })
} finally {
  await ours.close()
}
