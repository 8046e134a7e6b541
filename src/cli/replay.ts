/**
 * `npm run replay`: what this version answers otherwise. Exits with 1 where anything differs.
 *
 *   npm run replay -- --against v1.2.0            the stories, by a released version (a tag, or a folder) and by this one
 *   npm run replay -- --county quillback          the stored answers of a county, computed again by this version
 *   npm run replay -- --county quillback --against v1.2.0     the same, by both versions
 */
import { parseArgs } from 'node:util'
import { settingsOrExit } from '../config.ts'
import { openDatabase } from '../store/database/database.ts'
import { reachServer } from '../store/database/server.ts'
import { explain } from './explain.ts'
import { replayCounty } from './replay/county.ts'
import { type Difference, difference, printed } from './replay/differences.ts'
import { storyQuestions } from './replay/story-inputs.ts'
import { HERE, type Version, versionIn, versionOf } from './replay/version.ts'

const { values: asked } = parseArgs({
  options: { against: { type: 'string' }, county: { type: 'string' } },
})

function tell(what: string, compared: number, differences: readonly Difference[]): void {
  for (const it of differences) console.log(printed(it))
  const changes = differences.flatMap((it) => it.changes)
  const count = (change: string) => changes.filter((it) => it.change === change).length
  console.log(
    `${what}: ${compared} compared, ${compared - differences.length} identical, ${differences.length} differ; ` +
      `differences that appear ${count('appears')}, go away ${count('vanishes')}, have other evidence ${count('changes')}.`,
  )
  if (differences.length > 0) process.exitCode = 1
}

function stories(now: Version, before: Version): void {
  const questions = storyQuestions()
  const found = questions.map(({ name, input }) => difference(name, before.answer(input), now.answer(input)))
  tell(
    `Stories, ${before.name} and this version`,
    questions.length,
    found.flatMap((it) => it ?? []),
  )
}

async function county(name: string, now: Version, before: Version | undefined): Promise<void> {
  const settings = settingsOrExit()
  const onTrouble = (fault: Error | string) => console.error(String(fault))
  const server = await reachServer({
    url: settings.DATABASE_URL,
    dataFolder: settings.ASFOUND_DATA,
    onTrouble,
  })
  const database = openDatabase({ url: server.url, maxConnections: 4, onTrouble })
  try {
    const { compared, lost, differences } = await replayCounty(database, name, now, before)
    for (const line of lost) console.error(`NOT KEPT  ${line}`)
    if (lost.length > 0) process.exitCode = 1
    tell(`${name}, ${before?.name ?? 'as stored'} and this version`, compared, differences)
  } finally {
    await database.close()
    server.release()
  }
}

try {
  if (asked.against === undefined && asked.county === undefined)
    throw new Error(
      'Choose what to compare this version with: --against <tag or folder>, --county <county>, or both.',
    )
  const now = await versionIn(HERE, 'this version')
  const before = asked.against === undefined ? undefined : await versionOf(asked.against)
  try {
    if (asked.county !== undefined) await county(asked.county, now, before)
    else stories(now, before!)
  } finally {
    before?.close()
  }
} catch (fault) {
  explain(fault)
  process.exitCode = 1
}
