import type { FindingsEntry } from '../../../src/reading/entry/findings.ts'
import type { PermitEntry } from '../../../src/reading/entry/permit.ts'
import { type Dice, dice } from './dice.ts'

/** A parcel as it would come out of a county's own files: invented, and the same for the same seed. */
export type MadeParcel = {
  readonly number: string
  readonly address: string
  readonly oldNumbers: readonly string[]
  readonly permits: readonly PermitEntry[]
  readonly inspection: FindingsEntry | null
}

export type CountyAsked = {
  readonly seed: number
  readonly parcels: number
  /** The share of parcels that a firm has inspected. */
  readonly inspected?: number
}

/**
 * Any number of parcels, one after the other. The mix is a guess at a rural county's (common practice): one in five has
 * no paper at all, three in five one permit, the rest a repair besides; older papers say less; most inspections agree.
 */
export function* madeCounty({ seed, parcels, inspected = 0.1 }: CountyAsked): Generator<MadeParcel> {
  for (let index = 0; index < parcels; index++) yield madeParcel(dice(seed * 7919 + index), index, inspected)
}

const FIRST = [
  'Tern',
  'Heron',
  'Larch',
  'Mill',
  'Alder',
  'Quarry',
  'Marsh',
  'Fern',
  'Kestrel',
  'Otter',
  'Slate',
  'Birch',
]
const SECOND = ['Pond', 'Hill', 'Brook', 'Ridge', 'Hollow', 'Meadow', 'Crossing', 'Point', 'Glen', 'Field']
const KIND = ['Road', 'Lane', 'Street', 'Drive', 'Court', 'Avenue']

/** Sixty parcels to a street, and streets enough for any county. */
function addressOf(index: number): string {
  const street = Math.floor(index / 60)
  const names = FIRST.length * SECOND.length * KIND.length
  const round = Math.floor(street / names)
  const first = FIRST[street % FIRST.length]!
  const second = SECOND[Math.floor(street / FIRST.length) % SECOND.length]!
  const kind = KIND[Math.floor(street / (FIRST.length * SECOND.length)) % KIND.length]!
  return `${((index % 60) + 1) * 2} ${first} ${second}${round === 0 ? '' : ` ${round + 1}`} ${kind}`
}

/** `07-0412-0031`: ninety-nine books of 10,000 pages each. */
export const numberOf = (index: number): string => {
  const [book, page, lot] = [
    1 + (Math.floor(index / 1_000_000) % 99),
    Math.floor(index / 100) % 10_000,
    1 + (index % 100),
  ]
  return [String(book).padStart(2, '0'), String(page).padStart(4, '0'), String(lot).padStart(4, '0')].join(
    '-',
  )
}

function madeParcel(chance: Dice, index: number, inspected: number): MadeParcel {
  const permits: PermitEntry[] = []
  if (!chance.chance(0.2)) permits.push(installation(chance, index))
  if (permits.length > 0 && chance.chance(0.25)) permits.push(repair(chance, index))
  return {
    number: numberOf(index),
    address: addressOf(index),
    oldNumbers: chance.chance(0.15) ? [`A-${index}`] : [],
    permits,
    inspection: chance.chance(inspected) ? inspection(chance, permits[0]) : null,
  }
}

const day = (chance: Dice, year: number): string =>
  `${year}-${String(chance.between(1, 12)).padStart(2, '0')}-${String(chance.between(1, 28)).padStart(2, '0')}`

function installation(chance: Dice, index: number): PermitEntry {
  const year = chance.between(1958, 2022)
  const bedrooms = chance.pick([2, 3, 3, 3, 4, 4, 5])
  const gallons = Math.max(750, 250 * (bedrooms + 1))
  const issuedOn = day(chance, year)
  return {
    number: `${String(year).slice(2)}-${index}`,
    kind: 'new',
    issuedOn,
    approvedOn: `${year + 1}${issuedOn.slice(4)}`,
    ...(year > 1965 || chance.chance(0.5) ? { bedrooms } : {}),
    ...(year > 1980 ? { percRateMpi: chance.between(5, 60) } : {}),
    reference: {
      a: 'rear left corner',
      b: 'rear right corner',
      baseline: `${chance.between(28, 60)} ft`,
      wall: 'rear',
    },
    components: [
      {
        tag: 'tank',
        kind: 'tank',
        shape: 'rectangular',
        capacity: `${gallons} gal`,
        material: year < 1968 && chance.chance(0.3) ? 'steel' : 'concrete',
        tie: {
          a: `${chance.between(10, 40)} ft`,
          b: `${chance.between(30, 60)} ft`,
          sideWords: 'rear of house',
        },
      },
      {
        tag: 'line',
        kind: 'effluent-line',
        material: year < 1975 ? 'vitrified-clay' : 'pvc',
        pipeDiameter: '4 in',
      },
      chance.chance(0.5)
        ? { tag: 'pit', kind: 'seepage-pit', diameter: '8 ft', effectiveDepth: `${chance.between(5, 10)} ft` }
        : {
            tag: 'trenches',
            kind: 'trench',
            count: 3,
            length: `${chance.between(40, 80)} ft`,
            width: '3 ft',
            effectiveDepth: '12 in',
          },
    ],
  }
}

function repair(chance: Dice, index: number): PermitEntry {
  const year = chance.between(1990, 2024)
  return {
    number: `R${String(year).slice(2)}-${index}`,
    kind: 'repair',
    issuedOn: day(chance, year),
    approvedOn: day(chance, year + 1),
    components: [
      {
        tag: 'line',
        kind: 'effluent-line',
        action: 'replace',
        replaces: ['line'],
        material: 'pvc',
        pipeDiameter: '4 in',
      },
    ],
  }
}

function inspection(chance: Dice, permit: PermitEntry | undefined): FindingsEntry {
  const small = chance.chance(0.15)
  return {
    inspectedOn: day(chance, chance.pick([2025, 2026]))
      .replace('2026-11', '2026-09')
      .replace('2026-12', '2026-10'),
    occupancy: 'occupied',
    bedroomsCounted: permit?.bedrooms ?? 3,
    components: [
      {
        label: 'tank',
        kind: 'tank',
        outcome: 'found',
        shape: 'rectangular',
        length: small ? '6\'-0"' : '8\'-2"',
        width: small ? '4\'-0"' : '4\'-6"',
        liquidDepth: { length: '4\'-0"', method: 'liquid-level-rule' },
        material: 'concrete',
        condition: chance.pick(['sound', 'sound', 'worn']),
        lidSecured: true,
      },
      {
        label: 'line',
        kind: 'effluent-line',
        outcome: 'found',
        material: chance.chance(0.8) ? 'pvc' : 'vitrified-clay',
        pipeDiameter: { length: '4 in', method: 'rigid-rule' },
      },
    ],
  }
}
