import type { ComponentDraft, EntryDraft } from '../../src/reading/proposal.ts'
import { type Dice, dice } from './dice.ts'

export type Era = 1958 | 1967 | 1978 | 1986 | 1999 | 2015

/** What a synthetic paper says: the permit as a person would type it from the page, and whose land it is. */
export type Truth = {
  readonly entry: EntryDraft
  readonly parcelNumber: string
  readonly address: string
  /** Texts of the trade without a place in the record; a reading must not mistake them for values. */
  readonly noise: {
    readonly installer: string
    readonly fee: string
    readonly telephone: string
    readonly wellDepth: string
  }
}

type Component = ComponentDraft

const STREETS = [
  'Heron Hollow Rd',
  'Sumac Ln',
  'Old Kiln Rd',
  'Tannery St',
  'Quarry Ridge Rd',
  'Gristmill Ct',
  'Bittern Way',
  'Sedge Pond Rd',
]
const FIRMS = ['Brindle Creek Excavating', 'Two Ponds Septic', 'Larch Hill Contractors', 'Stony Ford Digging']
const SOILS = ['sandy loam', 'loam', 'silt loam', 'fine sand', 'clay loam', 'gravelly loam']

/** Feet and inches the way a drawing writes them, in steps of half a foot. */
const feetInches = (ft: number): string => `${Math.floor(ft)}'-${Math.round((ft % 1) * 12)}"`

const monthNames = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
]

export function writtenDate(
  style: 'figures' | 'words' | 'dashes' | 'iso',
  year: number,
  month: number,
  day: number,
): string {
  switch (style) {
    case 'figures':
      return `${month}/${day}/${year}`
    case 'dashes':
      return `${month}-${day}-${String(year).slice(2)}`
    case 'words':
      return `${monthNames[month - 1]} ${day}, ${year}`
    case 'iso':
      return `${year}-${String(month).padStart(2, '0')}-${String(day).padStart(2, '0')}`
  }
}

const DATE_STYLE = {
  1958: 'words',
  1967: 'dashes',
  1978: 'figures',
  1986: 'figures',
  1999: 'figures',
  2015: 'iso',
} as const

/** A permit of an era, from a seed: the same seed gives the same permit for ever. */
export function makeTruth(seed: number, era: Era): Truth {
  const roll = dice(seed * 7919 + era)
  const year = era + roll.whole(0, 3)
  const month = roll.whole(1, 9)
  const style = DATE_STYLE[era]
  const bedrooms = roll.whole(2, 5)
  const kind = roll.pick(['new', 'new', 'repair', 'alteration'] as const)
  const number = roll.pick([
    `${year}-${roll.whole(100, 999)}`,
    `SW${String(year).slice(2)}${String(roll.whole(1, 9999)).padStart(4, '0')}`,
    `${roll.whole(1000, 9999)}`,
  ])
  const baselineFt = roll.whole(24, 48)
  const components = componentsOf(roll, era, bedrooms, baselineFt)
  const withTies = components.some(({ tie }) => tie)
  const wall = roll.pick(['rear', 'front'] as const)
  return {
    entry: {
      number,
      kind,
      issuedOn: writtenDate(style, year, month, roll.whole(1, 28)),
      approvedOn: writtenDate(style, year, month + roll.whole(1, 3), roll.whole(1, 28)),
      bedrooms,
      designFlowGpd: bedrooms * 150,
      percRateMpi: roll.pick([4, 5, 8, 10, 12, 15, 22, 30]),
      soilTexture: roll.pick(SOILS),
      ...(withTies
        ? {
            reference: {
              a: `${wall} left corner of house`,
              b: `${wall} right corner of house`,
              baseline: feetInches(baselineFt),
              wall,
            },
          }
        : {}),
      components,
    },
    parcelNumber: `${String(roll.whole(1, 19)).padStart(2, '0')}-${String(roll.whole(1, 999)).padStart(4, '0')}-${String(roll.whole(1, 120)).padStart(4, '0')}`,
    address: `${roll.whole(11, 3999)} ${roll.pick(STREETS)}`,
    noise: {
      installer: roll.pick(FIRMS),
      fee: `$${roll.whole(5, 250)}.00`,
      telephone: `555-01${roll.whole(10, 99)}`,
      wellDepth: `${roll.whole(60, 320)} ft`,
    },
  }
}

function componentsOf(roll: Dice, era: Era, bedrooms: number, baselineFt: number): Component[] {
  // The second tie makes a triangle with the first and the baseline, as any two ties of one place do.
  const tie = (): NonNullable<Component['tie']> => {
    const a = roll.whole(24, 80) / 2
    const least = Math.abs(baselineFt - a) + 1
    return {
      a: feetInches(a),
      b: feetInches(Math.round((least + roll.unit() * (2 * Math.min(a, baselineFt) - 2)) * 2) / 2),
    }
  }
  const material = roll.pick(
    era < 1970
      ? (['concrete', 'steel', 'concrete-block'] as const)
      : era < 1990
        ? (['concrete', 'fiberglass'] as const)
        : (['concrete', 'polyethylene'] as const),
  )
  const capacity = roll.pick(
    era < 1970 ? ['500 gal', '750 gal', '900 gal'] : ['1,000 gal', '1,250 gal', '1,500 gal'],
  )
  // Inside dimensions that hold what the tank is sold as, to the half foot below it and up: 1 ft3 is 7.48052 gal.
  const gallons = Number(capacity.replace(/\D/g, ''))
  const depthFt = roll.whole(7, 10) / 2
  const widthFt = Math.round(Math.sqrt(gallons / 7.48052 / depthFt / 1.9) * 2) / 2
  const lengthFt = Math.round((gallons / 7.48052 / depthFt / widthFt) * 2 + 0.2) / 2
  const tank: Component = {
    tag: 'septic tank',
    kind: 'tank',
    action: 'install',
    capacity,
    material,
    compartments: era >= 1978 ? roll.whole(1, 2) : 1,
    length: feetInches(lengthFt),
    width: feetInches(widthFt),
    liquidDepth: feetInches(depthFt),
    tie: tie(),
  }
  const sewer: Component = {
    tag: 'building sewer',
    kind: 'building-sewer',
    action: 'install',
    pipeDiameter: '4 in',
    material: era < 1975 ? roll.pick(['cast-iron', 'vitrified-clay'] as const) : 'pvc',
  }
  const box: Component = {
    tag: 'distribution box',
    kind: 'distribution-box',
    action: 'install',
    material: 'concrete',
    tie: tie(),
  }
  const pits: Component = {
    tag: 'seepage pit',
    kind: 'seepage-pit',
    action: 'install',
    count: roll.whole(1, 3),
    diameter: `${roll.whole(5, 8)} ft`,
    effectiveDepth: `${roll.whole(6, 12)} ft`,
  }
  const trenches: Component = {
    tag: 'trenches',
    kind: 'trench',
    action: 'install',
    count: roll.whole(2, 5),
    length: `${roll.whole(8, 20) * 5} ft`,
    width: `${roll.pick([24, 30, 36])} in`,
    effectiveDepth: `${roll.pick([12, 18, 24])} in`,
  }
  const bed: Component = {
    tag: 'bed',
    kind: 'bed',
    action: 'install',
    length: `${roll.whole(4, 10) * 5} ft`,
    width: `${roll.whole(10, 24)} ft`,
    effectiveDepth: '12 in',
  }
  const field = roll.pick(era < 1970 ? [pits, trenches] : [trenches, bed, pits, trenches])
  return [
    tank,
    ...(era < 1990 || roll.chance(0.5) ? [sewer] : []),
    ...(field.kind === 'trench' && bedrooms < 6 ? [box] : []),
    field,
  ]
}
