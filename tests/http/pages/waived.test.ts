import pg from 'pg'
import { beforeAll, expect, test } from 'vitest'
import { must } from '../../../src/base/result.ts'
import { enrolCast } from '../../../src/cli/demonstration/enrol.ts'
import { loadStories } from '../../../src/cli/demonstration/load.ts'
import { readStories } from '../../../src/cli/demonstration/read-stories.ts'
import { readParcel } from '../../../src/operations/parcels/read-parcel.ts'
import { subscribe } from '../../../src/operations/subscriptions/subscribe.ts'
import { VOICES } from '../../../src/words/agent/status.ts'
import { testApp } from '../../support/app.ts'

/** A file whose whole inspection the county waived: nowhere that its status is told does it say that nothing has to be done. */
const { app, services, people, ask, url } = await testApp()
const story = readStories().filter(({ slug }) => slug === 'waived-by-the-county')
const { number } = story[0]!.parcels[0]!.parcel
beforeAll(async () => {
  const cast = await enrolCast(services.database)
  expect(await loadStories(services, cast, story)).toBe(1)
  const { parcel } = must(await readParcel(services, people.agent, number))
  const here = { address: null, parcel: parcel.id }
  must(await subscribe(services, people.agent, here, { vault: services.door.vault }))
  // The word goes and comes back, so that whoever follows the parcel is told.
  const owner = new pg.Client({ connectionString: url })
  await owner.connect()
  for (const word of ['under-review', 'resolved'])
    await owner.query('update parcel_status set word = $2 where parcel = $1', [parcel.id, word])
  await owner.end()
})

const page = async (who: 'agent' | 'reviewer', url: string, language = 'en'): Promise<string> => {
  const headers = { authorization: `Bearer ${people[who].token}`, 'accept-language': language }
  const answer = await app.inject({ url, headers })
  expect(answer.statusCode, url).toBe(200)
  return answer.body
}
const plain = (html: string): string => html.replaceAll(/\s+/g, ' ')

test('the answer of the API lists each with its reason', async () => {
  const { status } = (await ask('agent', { url: `/v1/counties/quillback/parcels/${number}/status` })).body
  expect([status.word, status.sentence]).toEqual(['resolved', VOICES.en.resolvedByWaiver])
  expect(status.waived).toHaveLength(story[0]!.parcels[0]!.decisions.length)
  expect(status.waived[0]).toMatchObject({
    kind: 'inspection-incomplete',
    why: expect.stringContaining('waived'),
  })
})

test.each(['en', 'es'] as const)(
  'the status page says so, in %s, and keeps the reviewer’s words inside',
  async (language) => {
    const told = plain(await page('agent', `/counties/quillback/parcels/${number}`, language))
    const { resolvedByWaiver, sentence, decided } = VOICES[language]
    expect(told).toContain(resolvedByWaiver)
    expect(told).toContain(decided['waive-no-way-in'])
    expect(told).not.toContain(sentence.resolved)
    for (const { reason } of story[0]!.parcels[0]!.decisions) expect(told).not.toContain(reason)
  },
)

test('so do the file, the list of changes and the export', async () => {
  const told = [
    await page('reviewer', `/counties/quillback/parcels/${number}`),
    await page('agent', '/counties/quillback/changes'),
    await page('reviewer', '/v1/counties/quillback/exports/parcels.csv'),
  ]
  for (const text of told) {
    expect(plain(text)).toContain(VOICES.en.resolvedByWaiver)
    expect(plain(text)).not.toContain(VOICES.en.sentence.resolved)
  }
})
