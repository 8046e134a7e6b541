import { readFile } from 'node:fs/promises'
import { describe, expect, test } from 'vitest'
import { must } from '../../../src/base/result.ts'
import { enterPermit } from '../../../src/operations/permits/enter-permit.ts'
import type { TrialResult } from '../../../src/operations/rule-trials/try-rules.ts'
import { testApp } from '../../support/app.ts'
import { inspectionThatDiffers, newParcel, permit1974, permitRecord } from '../../support/quillback.ts'
import { jobRunner } from '../../support/run-jobs.ts'

const service = await testApp()
const { services, people, ask } = service
const runJobs = jobRunner(service)
const here = '/v1/counties/quillback'

const inspected = await newParcel(services)
must(await enterPermit(services, people.reviewer, inspected.number, permitRecord(permit1974)))
const draft = (
  await ask('firm', {
    method: 'POST',
    url: `${here}/parcels/${inspected.number}/findings`,
    body: inspectionThatDiffers,
  })
).body
await ask('firm', { method: 'POST', url: `${here}/findings/${draft.id}/submission` })
const uninspectioned = await newParcel(services)
must(
  await enterPermit(
    services,
    people.reviewer,
    uninspectioned.number,
    permitRecord({ ...permit1974, bedrooms: 4, approvedOn: '1981-06-20' }),
  ),
)
await newParcel(services)

const pack = (name: string) =>
  readFile(new URL(`../../../src/rules/packs/${name}.yaml`, import.meta.url), 'utf8')
const tanks = await pack('public-health-service/tanks')

const begin = (yaml: string, who: 'reviewer' | 'firm' = 'reviewer') =>
  ask(who, { method: 'POST', url: `${here}/rules/trial`, body: { yaml } })
async function tried(yaml: string): Promise<TrialResult> {
  const { status, body } = await begin(yaml)
  expect(status).toBe(202)
  const [result] = await runJobs()
  expect(body.trial).toMatch(/^[0-9a-f-]{36}$/)
  return result as TrialResult
}

describe('a proposed table', () => {
  // Publication 526, as the pack has it, asks 900 gal for three bedrooms; the inspection measured about 718.
  test('that asks for less makes a difference vanish where there was one, and nowhere else', async () => {
    const { parcels, ...result } = await tried(
      tanks.replace('bedrooms: 3, gal: 900', 'bedrooms: 3, gal: 700'),
    )
    expect(result).toMatchObject({
      pack: 'public-health-service/tanks',
      parameters: ['tank.minimum-capacity'],
      looked: 2,
      changed: 1,
      byDecade: [
        { decade: 1970, looked: 1, changed: 1 },
        { decade: 1980, looked: 1, changed: 0 },
      ],
      byBedrooms: [
        { bedrooms: 3, looked: 1, changed: 1 },
        { bedrooms: 4, looked: 1, changed: 0 },
      ],
    })
    expect(result.byKind.map(({ kind }) => kind)).toEqual(['capacity-below-code'])
    expect(parcels).toHaveLength(1)
    expect(parcels[0]).toMatchObject({ number: inspected.number, changes: [{ kind: 'capacity-below-code' }] })
  })

  test('that asks for the same changes nothing', async () => {
    expect(await tried(tanks)).toMatchObject({
      parameters: [],
      looked: 2,
      changed: 0,
      byKind: [],
      parcels: [],
    })
  })

  test('of another place changes nothing here', async () => {
    const other = (await pack('virginia/tanks')).replace('bedrooms: 3, gal: 900', 'bedrooms: 3, gal: 5000')
    expect(await tried(other)).toMatchObject({ parameters: [], changed: 0 })
  })

  test('is stored nowhere', async () => {
    const before = (await ask('reviewer', { url: `${here}/parcels/${inspected.number}/reconciliations` }))
      .body.items
    await tried(tanks.replace('bedrooms: 3, gal: 900', 'bedrooms: 3, gal: 700'))
    expect(
      (await ask('reviewer', { url: `${here}/parcels/${inspected.number}/reconciliations` })).body.items,
    ).toEqual(before)
  })
})

describe('a pack that is none', () => {
  test('is told its faults, each with its line', async () => {
    const { status, body } = await begin(
      tanks
        .replace('by: bedrooms', 'by: bathrooms')
        .replace('governed-by: permit-issued', 'governed-by: whim'),
    )
    expect(status).toBe(422)
    const told = body.errors.map((it: { pointer: string; message: string }) => `${it.pointer} ${it.message}`)
    expect(told).toHaveLength(2)
    for (const fault of told) expect(fault).toMatch(/^\/yaml line \d+, column \d+: /)
  })

  test.each(['', 'x', 'title: no name', '\tpack: a/b'])('%j is refused', async (yaml) => {
    const { status, body } = await begin(yaml)
    expect([status, body.errors[0].pointer]).toEqual([422, '/yaml'])
  })
})

test('only reviewers try rules, and a trial is no other job', async () => {
  expect((await begin(tanks, 'firm')).status).toBe(403)
  expect(
    (await ask('reviewer', { url: `${here}/rules/trials/01991c5e-7d7a-7a64-9f0c-2f7f0f7f6a11` })).status,
  ).toBe(404)
})
