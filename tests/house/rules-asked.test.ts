import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import type { PlainDate } from '../../src/base/plain-date.ts'
import { must } from '../../src/base/result.ts'
import { loadRuleBook } from '../../src/files/rule-packs.ts'
import { reconcile } from '../../src/reconcile/reconcile.ts'
import { PARAMETER_NAMES, PARAMETERS, type ParameterName } from '../../src/rules/parameters.ts'
import { inputOf, permit } from '../reconcile/asked.ts'

/** A rule that nothing asks is a promise nobody keeps: what a pack may say, a check or the brief reads. */
const ASKING = ['src/reconcile', 'src/brief']

const root = new URL('../../', import.meta.url)
const sources = ASKING.flatMap((room) =>
  readdirSync(new URL(room, root), { recursive: true, encoding: 'utf8' })
    .filter((file) => file.endsWith('.ts'))
    .map((file) => readFileSync(new URL(`${room}/${file}`, root), 'utf8')),
)

/** Named where a rule is looked up: by a check's need, a table of questions, or a lookup of its own. */
const isAsked = (name: ParameterName): boolean =>
  sources.some((source) => new RegExp(`(?:name|rule): '${name}'|inForce\\([^)]*'${name}'`).test(source))

test.each(PARAMETER_NAMES)('%s is asked by a check or the brief', (name) => {
  expect(isAsked(name), `${PARAMETERS[name].meaning}: ask it, or take it out of the register`).toBe(true)
})

describe('and asked in earnest', () => {
  test('every rule of the packs is looked up when a system that has everything is compared', async () => {
    const asked = new Set<string>()
    const book = must(await loadRuleBook())
    const places = new Map(
      [...book.places].map(([place, rules]) => [
        place,
        {
          ...rules,
          standings: new Proxy(rules.standings, {
            get: (map, key) =>
              key === 'get'
                ? (name: ParameterName) => {
                    asked.add(name)
                    return map.get(name)
                  }
                : Reflect.get(map, key).bind?.(map),
          }),
        },
      ]),
    )
    for (const [file, findings] of EVERYTHING)
      reconcile({ ...inputOf([file], findings), asOf: '2026-06-01' as PlainDate, book: { ...book, places } })
    const brief: readonly ParameterName[] = ['era-facts', 'expectations']
    expect(PARAMETER_NAMES.filter((name) => !asked.has(name) && !brief.includes(name))).toEqual([])
  })
})

type Inspected = Parameters<typeof inputOf>[1]

const found = { outcome: 'found' } as const
const reference = { a: 'rear left corner', b: 'rear right corner', baseline: '40 ft' }
const EVERYTHING: readonly (readonly [ReturnType<typeof permit>, Inspected])[] = [
  [
    permit(
      [
        {
          tag: 'tank',
          kind: 'tank',
          capacity: '1000 gal',
          material: 'steel',
          tie: { a: '20 ft', b: '30 ft', side: 'away' },
        },
        { tag: 'pit', kind: 'seepage-pit', diameter: '8 ft', effectiveDepth: '10 ft' },
        { tag: 'cesspool', kind: 'cesspool' },
        { tag: 'privy', kind: 'privy' },
        { tag: 'well', kind: 'well', tie: { a: '60 ft', b: '70 ft', side: 'away' } },
      ],
      { soilTexture: 'loam', reference },
    ),
    {
      lastPumpedOn: '2020-05-01',
      people: 4,
      occupancy: 'occupied',
      reference,
      components: [
        {
          ...found,
          key: '88-1/tank',
          label: 'tank',
          kind: 'tank',
          material: 'concrete-block',
          compartments: 1,
          length: '8 ft',
          width: '4 ft',
          liquidDepth: '4 ft',
          freeboard: '9 in',
          levelAboveOutlet: { below: '9 in' },
          inletAboveOutlet: { above: '2 in' },
          inletDeviceBelow: '8 in',
          outletDeviceBelow: '16 in',
          outletDeviceAbove: '6 in',
          tie: { a: '20 ft', b: '30 ft', side: 'away' },
        },
        { ...found, key: '88-1/privy', label: 'privy', kind: 'privy', roomBelowTop: '3 ft' },
        {
          ...found,
          label: 'effluent filter',
          kind: 'effluent-filter',
          outcome: 'not-found',
          searchedBy: ['seen-through-opening'],
        },
      ],
    },
  ],
  [
    permit(
      [
        { tag: 'tank', kind: 'tank', capacity: '1000 gal', material: 'steel' },
        { tag: 'bed', kind: 'bed', length: '30 ft', width: '20 ft' },
      ],
      {
        percRateMpi: 10,
      },
    ),
    {
      components: [
        { ...found, key: '88-1/tank', label: 'tank', kind: 'tank', material: 'steel', wallThickness: '3 in' },
      ],
    },
  ],
  [
    permit([{ tag: 'tank', kind: 'tank', capacity: '1000 gal' }], { bedrooms: null, designFlowGpd: 1200 }),
    {},
  ],
]
