import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { findingsExample, permitExample } from '../../../src/http/api/shapes/entries.ts'
import { testApp } from '../../support/app.ts'
import type { People } from '../../support/people.ts'
import { newParcel } from '../../support/quillback.ts'

const { services, ask } = await testApp()
const parcel = await newParcel(services, '07-0412-0031')
const here = '/v1/counties/quillback'
const at = `${here}/parcels/${parcel.number}`
const ID = '01991c5e-7d7a-7a64-9f0c-2f7f0f7f6a11'

/** What breaks programs: the ends of types, other kinds of value, text that is not quite text. */
const LEAVES: readonly unknown[] = [
  null,
  true,
  0,
  -0,
  -1,
  1.5,
  1e21,
  1e308,
  2 ** 53,
  '',
  ' ',
  '\u0000',
  '\ud800',
  '𝟙𝟘 ft',
  '1e400 ft',
  '0 ft',
  '-3 ft',
  '99999999999999999999 gal',
  '1/0 in',
  "'; drop table permit; --",
  '2024-02-30',
  '0000-01-01',
  '9999-12-31',
  '../../..',
  'x'.repeat(5000),
  [],
  {},
  { ft: -1 },
  { ft: Number.MAX_VALUE },
  { __proto__: null, constructor: { prototype: 1 } },
]
const leaf = fc.constantFrom(...LEAVES)

/** The example with one to three of its values (or a field that is not there) put wrong. */
function spoilt(example: unknown): fc.Arbitrary<unknown> {
  const pointers = pathsOf(example)
  return fc
    .array(fc.tuple(fc.constantFrom(...pointers), leaf), { minLength: 1, maxLength: 3 })
    .map((changes) => changes.reduce((value, [path, to]) => put(value, path, to), structuredClone(example)))
}

type Path = readonly (string | number)[]
function pathsOf(value: unknown, path: Path = []): Path[] {
  if (typeof value !== 'object' || value === null) return [path]
  const inner = Object.keys(value).flatMap((key) =>
    pathsOf((value as Record<string, unknown>)[key], [...path, Array.isArray(value) ? Number(key) : key]),
  )
  return [path, ...inner, [...path, 'unheard of']]
}

function put(value: unknown, [key, ...rest]: Path, to: unknown): unknown {
  if (key === undefined) return to
  if (typeof value !== 'object' || value === null) return value
  const copy: Record<string | number, unknown> = Array.isArray(value) ? ([...value] as never) : { ...value }
  copy[key] = rest.length === 0 ? to : put(copy[key], rest, to)
  return copy
}

const length = '8 ft'
const routes: readonly (readonly [keyof People, string, unknown])[] = [
  ['reviewer', `${at}/permits`, permitExample],
  ['firm', `${at}/findings`, findingsExample],
  [
    'reviewer',
    `${here}/documents/${ID}/transcription`,
    { permits: [{ parcel: parcel.number, entry: permitExample }] },
  ],
  [
    'reviewer',
    `${here}/discrepancies/${ID}/decisions`,
    {
      action: 'correct-record',
      reason: 'x',
      correction: { permit: ID, component: 'tank', field: 'capacity', value: '1 gal' },
      supersedes: ID,
    },
  ],
  [
    'agent',
    '/v1/reconciliations/trial',
    { rules: 'quillback', asOf: '2026-11-25', permits: [permitExample], findings: findingsExample },
  ],
  [
    'agent',
    '/v1/calculations/tank-capacity',
    { shape: { kind: 'rectangular', length, width: length, liquidDepth: length }, wallThickness: '3 in' },
  ],
  [
    'agent',
    '/v1/calculations/tank-capacity',
    {
      shape: {
        kind: 'horizontal-cylinder',
        diameter: length,
        length,
        liquidDepth: '7 ft',
        ends: { kind: 'elliptical' },
      },
    },
  ],
  [
    'agent',
    '/v1/calculations/code-capacity',
    { rules: 'quillback', on: '1974-06-20', bedrooms: 3, flowGpd: 450 },
  ],
  ['agent', '/v1/calculations/tie-location', { baseline: '36 ft', a: '18 ft', b: '27 ft', side: 'away' }],
  [
    'agent',
    '/v1/calculations/absorption-area',
    {
      shape: { kind: 'trenches', width: '2 ft', lengths: ['60 ft', '60 ft'], absorbingDepth: '1 ft' },
      counts: 'bottom-and-sidewall',
      required: { rules: 'quillback', percRateMpi: 10, bedrooms: 3, flowGpd: 450 },
    },
  ],
  [
    'agent',
    '/v1/calculations/solids',
    {
      rules: 'quillback',
      readings: { liquidDepth: '48 in', sludgeThickness: '14 in', outletBottomBelowLiquid: '18 in' },
      nominalGal: 1000,
    },
  ],
]

describe('whatever is sent', () => {
  test.each(routes)(
    'as %s to %s is answered or refused with a pointer, never a fault of the service',
    async (who, url, example) => {
      await fc.assert(
        fc.asyncProperty(spoilt(example), async (body) => {
          const payload = JSON.stringify(body) ?? 'null'
          const { status, body: answer } = await ask(who, {
            method: 'POST',
            url,
            headers: { 'content-type': 'application/json', 'if-match': '"r1"' },
            payload,
          })
          expect(status, JSON.stringify(answer)).toBeLessThan(500)
          if (status !== 422) return
          expect(answer.errors.length).toBeGreaterThan(0)
          for (const { pointer, message } of answer.errors) {
            expect(pointer).toMatch(/^(\/.*)?$/s)
            expect(message).not.toMatch(/^(Invalid input|undefined)?$/)
          }
        }),
        { numRuns: 60, endOnFailure: true },
      )
    },
    120_000,
  )

  test('as query and path is answered or refused', async () => {
    const odd = fc.oneof(
      leaf.map((value) => (typeof value === 'string' ? value.toWellFormed() : JSON.stringify(value))),
      fc.string({ unit: 'binary' }),
    )
    const keys = ['q', 'limit', 'cursor', 'state', 'kind', 'severity', 'since', 'parcel', 'on']
    const addresses = [`${here}/parcels`, `${here}/discrepancies`, `${at}/as-built`, `${at}/reconciliations`]
    await fc.assert(
      fc.asyncProperty(
        fc.constantFrom(...addresses),
        fc.array(fc.tuple(fc.constantFrom(...keys), odd), { maxLength: 3 }),
        odd,
        async (address, query, name) => {
          const search = query.map(([key, value]) => `${key}=${encodeURIComponent(value)}`).join('&')
          expect((await ask('reviewer', { url: `${address}?${search}` })).status).toBeLessThan(500)
          const named = `${here}/parcels/${encodeURIComponent(name)}/status`
          expect((await ask('reviewer', { url: named })).status).toBeLessThan(500)
        },
      ),
      { numRuns: 150, endOnFailure: true },
    )
  }, 120_000)
})
