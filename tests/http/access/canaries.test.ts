import { expect, test } from 'vitest'
import { z } from 'zod'
import { COMPONENT_KINDS } from '../../../src/catalog/kinds.ts'
import { decisionBody } from '../../../src/http/api/discrepancies/shapes.ts'
import { permitExample } from '../../../src/http/api/shapes/entries.ts'
import { LANGUAGES } from '../../../src/words/language.ts'
import { openLetter } from '../../letters/open-letter.ts'
import { testApp } from '../../support/app.ts'
import { canaries, FREE_TEXT, NAMES_ANOTHER } from '../../support/canaries.ts'
import { COUNTY } from '../../support/people.ts'
import { inspectionThatDiffers } from '../../support/quillback.ts'
import { silentProviders } from '../../support/silent-provider.ts'
import { requestTo } from './matrix/requests.ts'
import { ROWS } from './matrix/table.ts'
import { liveThrough } from './matrix/world.ts'

/**
 * A parcel with a word of its own in every field of free text, read by an agent and by somebody who holds a letter:
 * every route that docs/access.md lets them read, in both languages, PDFs included.
 */
const birds = canaries()
const service = await testApp({ door: { providers: silentProviders } })
const here = `/v1/counties/${COUNTY}`
const told = { tie: { a: '18\'-6"', b: '27\'-0"', sideWords: 'rear' }, note: 'x' }
const reference = { a: 'left', b: 'right', wall: 'rear', baseline: '36 ft' }
const permit = birds.permit({
  ...permitExample,
  reference,
  components: permitExample.components!.map((it) => ({ ...it, ...told })),
})
/** What stands on no record, of every kind that is not, so that each is spoken of. */
const onRecord = permit.components!.map(({ kind }) => kind)
const unrecorded = COMPONENT_KINDS.filter((kind) => !onRecord.includes(kind)).map((kind) => ({
  label: `my ${kind}`,
  kind,
  outcome: 'found',
  opened: 'cover-off',
  leftOutBecause: 'no-time',
  ...told,
}))
const findings = birds.findings({
  ...inspectionThatDiffers,
  reference,
  components: [
    ...inspectionThatDiffers.components!.map((it) => ({ ...it, leftOutBecause: 'no-time' })),
    ...unrecorded,
  ],
})
const world = await liveThrough(service, permit, findings)

/** Every free text of a decision, by its schema. */
const { $defs } = z.toJSONSchema(decisionBody, { io: 'input', unrepresentable: 'any' })
const written = Object.entries($defs?.DecisionEntry?.properties ?? {}).flatMap(([name, schema]) =>
  /"maxLength"/.test(JSON.stringify(schema)) && !/"(?:properties|enum)"/.test(JSON.stringify(schema))
    ? [name]
    : [],
)
const list = await service.ask('reviewer', { url: `${here}/discrepancies?parcel=${world.parcel}&limit=100` })
for (const { id, revision, kind } of list.body.items) {
  // What an inspection left out is waived for a reason of a closed list.
  if (kind === 'inspection-incomplete') continue
  const body = {
    action: 'require-repair',
    ...Object.fromEntries(written.map((name) => [name, birds.fresh(`decision.${name}`)])),
  }
  const headers = { 'if-match': `"r${revision}"` }
  const made = await service.ask('reviewer', {
    method: 'POST',
    url: `${here}/discrepancies/${id}/decisions`,
    headers,
    body,
  })
  expect(made.status, JSON.stringify(made.body)).toBe(201)
}

test('every free text of the catalog and of a decision has its word, and the county reads them', async () => {
  expect(written).toEqual(['reason', 'asks'])
  expect(birds.planted()).toEqual(
    expect.arrayContaining(FREE_TEXT.filter((it) => !NAMES_ANOTHER.includes(it))),
  )
  const { body } = await service.ask('reviewer', { url: `${here}/parcels/${world.parcel}/findings` })
  const read = [
    'inspection.notes',
    'found.note',
    'found.label',
    'found.tie.sideWords',
    'found.conditionWords',
  ]
  expect(birds.in(JSON.stringify(body))).toEqual(expect.arrayContaining(read))
})

const readable = [...ROWS].filter(
  ([route, { anyone, may }]) =>
    /^GET /.test(route) && !route.endsWith('/events') && (anyone || may.agent !== 'no'),
)

test.each(readable)('%s', async (route, { anyone }) => {
  const [method = '', url = ''] = route.split(' ')
  for (const language of LANGUAGES) {
    const request = await requestTo(world, method, url, 'agent')
    const headers = {
      ...request.headers,
      'accept-language': language,
      ...(anyone ? {} : { authorization: `Bearer ${world.people.agent.token}` }),
    }
    const answer = await service.app.inject({ ...request, headers })
    expect(answer.statusCode).toBeLessThan(500)
    expect(birds.in(answer.body)).toEqual([])
  }
})

test.each(LANGUAGES)('a letter that was decided on, in %s, and its check', async (language) => {
  const asked = { kind: 'status', language }
  const letter = await service.ask('agent', {
    method: 'POST',
    url: `${here}/parcels/${world.parcel}/letters`,
    body: asked,
  })
  expect(letter.status).toBe(201)
  const authorization = `Bearer ${world.people.agent.token}`
  const { rawPayload } = await service.app.inject({ url: letter.body.pdf, headers: { authorization } })
  const { text, alternatives } = await openLetter(rawPayload)
  const check = await service.ask('nobody', { url: `/v1/letters/${letter.body.code}/verification` })
  const page = await service.ask('nobody', {
    url: `/letters/${letter.body.code}`,
    headers: { 'accept-language': language },
  })
  const all = [
    ...text,
    ...alternatives,
    JSON.stringify(letter.body),
    JSON.stringify(check.body),
    String(page.body),
  ]
  expect(text.join(' ')).toContain(world.parcel)
  expect(birds.in(all.join(' ')).filter((it) => it !== 'permit.number')).toEqual([])
})
