import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { FOUND } from '../../../src/catalog/component-findings.ts'
import { MEASURES } from '../../../src/catalog/component-measures.ts'
import { PERMIT_FIELDS } from '../../../src/catalog/permit-fields.ts'
import { findingsEntry } from '../../../src/reading/entry/findings.ts'
import { entryIssues } from '../../../src/reading/entry/issues.ts'
import { permitEntry } from '../../../src/reading/entry/permit.ts'
import { readEntry } from '../../../src/reading/entry/read-entry.ts'
import { entryOfText } from '../../../src/reading/entry/typed-text.ts'

const faults = (schema: typeof permitEntry | typeof findingsEntry, entry: unknown) => {
  const result = schema.safeParse(entry)
  return result.success ? [] : entryIssues(result.error)
}

describe('a permit as typed', () => {
  test('lengths and volumes keep the writing beside the number', () => {
    const record = permitEntry.parse({
      number: '58-114',
      kind: 'new',
      components: [{ tag: 'tank', kind: 'tank', length: `8'-2"`, width: { in: 54 }, capacity: '3785 L' }],
    })
    expect(record.components[0]).toMatchObject({
      length: { asWritten: `8'-2"` },
      width: { ft: 4.5, asWritten: '54 in' },
      capacity: { asWritten: '3785 L' },
      action: 'install',
    })
    expect(record.components[0]!.capacity!.gal).toBeCloseTo(999.89, 1)
  })

  test('all faults at once, each with its pointer, those across fields too', () => {
    const found = faults(permitEntry, {
      number: '',
      kind: 'brand-new',
      issuedOn: '5/3/58',
      approvedOn: '5/2/58',
      nonsense: 1,
      components: [
        { tag: 'tank', kind: 'tank', capacity: '1O00 gal', width: '4-6' },
        { tag: 'Tank', kind: 'tank', tie: { a: '10 ft', b: '12 ft' } },
      ],
    })
    expect(found.map(({ pointer }) => pointer).sort()).toEqual([
      '/approvedOn',
      '/components/0/capacity',
      '/components/0/width',
      '/components/1/tag',
      '/components/1/tie',
      '/kind',
      '/nonsense',
      '/number',
    ])
  })

  test('an ambiguous length is told with the readings it could have', () => {
    const [fault] = faults(permitEntry, {
      number: '1',
      kind: 'new',
      components: [{ tag: 't', kind: 'tank', width: '4-6' }],
    })
    expect(fault?.message).toContain(`4'-6"`)
    expect(fault?.message).not.toContain('object')
  })

  test('the side comes from the words and the wall', () => {
    const sideOf = (wall: 'rear' | 'front' | 'left', sideWords: string) =>
      permitEntry.parse({
        number: '1',
        kind: 'new',
        reference: { a: 'A', b: 'B', wall },
        components: [{ tag: 't', kind: 'tank', tie: { a: '10 ft', b: '12 ft', sideWords } }],
      }).components[0]!.tie!.side
    expect(sideOf('rear', 'rear of house')).toBe('away')
    expect(sideOf('rear', 'behind the house')).toBe('away')
    expect(sideOf('front', 'in back yard')).toBe('toward')
    expect(sideOf('left', 'rear of house')).toBeNull()
    expect(sideOf('rear', 'right rear')).toBeNull()
  })
})

describe('findings as typed', () => {
  test('each measure has its usual method, and can have another', () => {
    const { components } = findingsEntry.parse({
      inspectedOn: '2026-05-19',
      components: [
        {
          label: 'tank',
          kind: 'tank',
          outcome: 'found',
          length: '8 ft',
          width: { length: '46 in', method: 'probe' },
          liquidDepth: '4 ft',
        },
      ],
    })
    expect(components[0]).toMatchObject({
      length: { method: 'inside-tape', halfStepFt: 1 / 24 },
      width: { method: 'probe' },
      liquidDepth: { method: 'sounding-rod' },
    })
  })

  test('below the outlet is negative, above positive, both or neither refused', () => {
    const level = (levelAboveOutlet: unknown) =>
      findingsEntry.safeParse({
        inspectedOn: '2026-05-19',
        components: [{ label: 'tank', kind: 'tank', outcome: 'found', levelAboveOutlet }],
      })
    expect(level({ below: '5 in' }).data?.components[0]?.levelAboveOutlet?.ft).toBeCloseTo(-5 / 12)
    expect(level({ above: '5 in' }).data?.components[0]?.levelAboveOutlet?.ft).toBeCloseTo(5 / 12)
    expect(level({ above: '5 in', below: '1 in' }).success).toBe(false)
    expect(level({}).success).toBe(false)
  })

  test('not found needs a search, not reached a reason', () => {
    const found = faults(findingsEntry, {
      inspectedOn: '2026-05-19',
      components: [
        { label: 'pit', kind: 'seepage-pit', outcome: 'not-found' },
        { label: 'box', kind: 'distribution-box', outcome: 'not-reached' },
        { label: 'well', kind: 'well', outcome: 'not-looked-for' },
      ],
    })
    expect(found.map(({ pointer }) => pointer)).toEqual([
      '/components/0/searchedBy',
      '/components/1/notReachedBecause',
    ])
  })
})

test('nothing that JSON can carry makes an entry throw, and every fault has words', () => {
  fc.assert(
    fc.property(fc.jsonValue(), (entry) => {
      for (const schema of [permitEntry, findingsEntry]) {
        for (const { pointer, message } of faults(schema, entry)) {
          expect(pointer === '' || pointer.startsWith('/')).toBe(true)
          expect(message.length).toBeGreaterThan(3)
        }
      }
    }),
  )
})

describe('a name that no field has', () => {
  const named = (key: string, at: 'permit' | 'component' | 'tie' = 'component') => {
    const tank = { tag: 'tank', kind: 'tank' }
    const tie = { a: '12 ft', b: '9 ft' }
    const entry = {
      number: '1',
      kind: 'new',
      reference: { a: 'A', b: 'B' },
      ...(at === 'permit' ? { [key]: 1 } : {}),
      components: [
        {
          ...tank,
          ...(at === 'component' ? { [key]: 1 } : {}),
          ...(at === 'tie' ? { tie: { ...tie, [key]: 1 } } : {}),
        },
      ],
    }
    const read = readEntry(permitEntry, entry)
    return read.ok ? [] : read.error
  }

  test.each([
    ['liqudDepth', 'component', 'liquidDepth'],
    ['LiquidDepth', 'component', 'liquidDepth'],
    ['sidewallDepth', 'component', 'effectiveDepth'],
    ['absorbing_depth', 'component', 'effectiveDepth'],
    ['bedroms', 'permit', 'bedrooms'],
    ['perc rate', 'permit', 'percRateMpi'],
    ['sideWord', 'tie', 'sideWords'],
  ] as const)('%s in a %s is refused, with %s', (key, at, meant) => {
    const faults = named(key, at)
    expect(faults).toEqual([
      expect.objectContaining({ message: expect.stringContaining(`did you mean "${meant}"?`) }),
    ])
    expect(faults[0]!.pointer.endsWith(`/${key}`)).toBe(true)
  })

  test('what is near to nothing is refused all the same; of few names all are told', () => {
    expect(named('chimney')[0]!.message).toBe('there is no field of this name here')
    expect(named('chimney', 'tie')[0]!.message).toBe(
      'there is no field of this name here; the fields are a, b, side, sideWords',
    )
  })
})

describe('what stands in a box or a cell', () => {
  test.each([
    ['whole', MEASURES.count, '3', 3],
    ['grouped', PERMIT_FIELDS.designFlowGpd, '1,200', 1200],
    ['no figure', MEASURES.count, 'three', 'three'],
    ['a choice in words', MEASURES.material, 'Vitrified clay', 'vitrified-clay'],
    ['no choice', MEASURES.material, 'straw', 'straw'],
    ['yes', FOUND.lidSecured, 'Yes', true],
    ['no', FOUND.lidSecured, 'n', false],
    ['a length', MEASURES.liquidDepth, `4'-6"`, `4'-6"`],
    ['several', FOUND.searchedBy, 'probe; camera', ['probe', 'camera']],
  ] as const)('%s', (_, field, text, value) => {
    expect(entryOfText(field, text)).toEqual(value)
  })
})

describe('limits', () => {
  test.each([
    ['liquidDepth', '101 ft', /more than 100 ft/],
    ['capacity', '2,000,000 gal', /more than 1,000,000 gal/],
    ['compartments', 12, /at most 9/],
    ['count', 0, /at least 1/],
  ])('%s of %s is refused', (name, value, says) => {
    const found = faults(permitEntry, {
      number: '1',
      kind: 'new',
      components: [{ tag: 't', kind: 'tank', [name]: value }],
    })
    expect(found).toEqual([{ pointer: `/components/0/${name}`, message: expect.stringMatching(says) }])
  })
})
