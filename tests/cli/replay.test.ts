import { cp, mkdtemp, readFile, rm, symlink, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { afterAll, expect, test } from 'vitest'
import { must } from '../../src/base/result.ts'
import { replayCounty } from '../../src/cli/replay/county.ts'
import { difference } from '../../src/cli/replay/differences.ts'
import { storyQuestions } from '../../src/cli/replay/story-inputs.ts'
import { HERE, versionIn, versionOf } from '../../src/cli/replay/version.ts'
import { enterPermit } from '../../src/operations/permits/enter-permit.ts'
import { testApp } from '../support/app.ts'
import { COUNTY } from '../support/people.ts'
import { inspectionThatDiffers, newParcel, permit1974, permitRecord } from '../support/quillback.ts'

const now = await versionIn(HERE, 'this version')
const folder = await mkdtemp(path.join(tmpdir(), 'asfound-other-version-'))
afterAll(() => rm(folder, { recursive: true }))

/** This version with a longer memory of one table, in a folder of its own, as a released one would lie. */
async function otherVersion() {
  await cp(path.join(HERE, 'src'), path.join(folder, 'src'), { recursive: true })
  await cp(path.join(HERE, 'package.json'), path.join(folder, 'package.json'))
  await symlink(path.join(HERE, 'node_modules'), path.join(folder, 'node_modules'))
  const table = path.join(folder, 'src/rules/packs/public-health-service/tanks.yaml')
  const text = await readFile(table, 'utf8')
  await writeFile(table, text.replace('bedrooms: 3, gal: 900', 'bedrooms: 3, gal: 1400'))
  return versionOf(folder)
}

test('the stories put to the same version twice are answered alike, to the byte', () => {
  const questions = storyQuestions()
  expect(questions.length).toBeGreaterThan(20)
  expect(
    questions.flatMap(({ name, input }) => difference(name, now.answer(input), now.answer(input)) ?? []),
  ).toEqual([])
})

test('a version with another table says which differences appear, and in which stories', async () => {
  const other = await otherVersion()
  const found = storyQuestions().flatMap(
    ({ name, input }) => difference(name, other.answer(input), now.answer(input)) ?? [],
  )
  expect(found.length).toBeGreaterThan(0)
  const kinds = new Set(found.flatMap(({ changes }) => changes.map(({ kind }) => kind)))
  expect(kinds).toContain('capacity-below-code')
  other.close()
})

test('what is neither a folder nor a tag is told so', async () => {
  await expect(versionOf('no-such-version')).rejects.toThrow(/neither a folder .* nor a tag/)
})

test('the stored answers of a county are computed again, and a stored one that was altered is found', async () => {
  const { services, people, ask } = await testApp()
  const parcel = await newParcel(services)
  must(await enterPermit(services, people.reviewer, parcel.number, permitRecord(permit1974)))
  const at = `/v1/counties/${COUNTY}`
  const draft = (
    await ask('firm', {
      method: 'POST',
      url: `${at}/parcels/${parcel.number}/findings`,
      body: inspectionThatDiffers,
    })
  ).body
  await ask('firm', { method: 'POST', url: `${at}/findings/${draft.id}/submission` })
  expect(await replayCounty(services.database, COUNTY, now, undefined)).toEqual({
    compared: 1,
    lost: [],
    differences: [],
  })
  expect(await replayCounty(services.database, COUNTY, now, now)).toEqual({
    compared: 1,
    lost: [],
    differences: [],
  })
  const altered = {
    ...now,
    answer: (...given: Parameters<typeof now.answer>) => ({
      ...now.answer(...given),
      outcomes: [],
      discrepancies: [],
    }),
  }
  const { differences } = await replayCounty(services.database, COUNTY, altered, undefined)
  expect(differences[0]!.changes.map(({ change }) => change)).toContain('vanishes')
})
