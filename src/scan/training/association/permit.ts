import type { Field, ToldOf, UnitOf } from '../../../reading/association/fields.ts'
import type { Chance } from './chance.ts'
import { FAMILY_NAMES, FIRMS, GIVEN_NAMES, REMARKS, SOILS, STREET_KINDS, STREETS, TOWNS } from './words.ts'
import {
  type Hand,
  type Written,
  writtenCount,
  writtenDate,
  writtenFeet,
  writtenGallons,
  writtenInches,
  writtenParcel,
  writtenPermitNumber,
} from './written.ts'

/** One thing that a permit says. */
export type Fact = {
  readonly f: Field
  readonly of: ToldOf
  readonly comp: number
  readonly existing: boolean
  /** The text; `bare` where it may stand without its unit because something else gives it. */
  readonly write: (bare: boolean) => Written
}
export type Component = {
  readonly id: number
  readonly kind: ToldOf
  readonly existing: boolean
  readonly facts: readonly Fact[]
}
export type Permit = {
  readonly facts: readonly Fact[]
  readonly components: readonly Component[]
  readonly year: number
}

const TANKS = [500, 540, 600, 750, 800, 900, 1000, 1000, 1000, 1200, 1250, 1500, 2000]
export const MATERIALS_OF: Partial<Record<ToldOf, string>> = {
  tank: 'concrete|conc.|precast concrete|steel|metal|fiberglass|poly|plastic|concrete block|conc. block|precast|brick|coated steel|redwood|Conc|CONC.|reinf. conc.|block|polyethylene',
  'pump-chamber': 'concrete|fiberglass|poly|conc.|precast',
  cesspool: 'block|concrete block|stone|brick|fieldstone|conc. block|dry laid stone|cement block',
  'seepage-pit': 'block|concrete block|brick|precast concrete|precast|conc. block|stone|cinder block',
  'distribution-box': 'concrete|conc.|plastic|precast|poly|CONC',
  'building-sewer':
    'cast iron|C.I.|CI|PVC|Sch 40 PVC|SCH. 40|Orangeburg|clay tile|vit. clay|VCP|ABS|fiber|transite|bituminous fiber|tile',
  'effluent-line': 'PVC|Sch 40|Orangeburg|tile|clay|ABS|fiber|C.I.|SDR 35|solid PVC|drain tile|VCP',
  trench: 'drain tile|tile|Orangeburg|perf. PVC|fiber|PVC|clay tile|ABS|farm tile',
  bed: 'perf. PVC|tile|PVC|drain tile|Orangeburg',
  'inlet-baffle': 'PVC|concrete|C.I.|cast iron|plastic',
  'outlet-baffle': 'PVC|concrete|C.I.|cast iron|plastic',
  riser: 'concrete|PVC|poly|plastic',
}

export function personOf(roll: Chance): string {
  const family = roll.of(FAMILY_NAMES)
  return roll.pick([
    `${roll.of(GIVEN_NAMES)} ${family}`,
    `${family}, ${roll.of(GIVEN_NAMES)}`,
    `${roll.of(GIVEN_NAMES)} & ${roll.of(GIVEN_NAMES)} ${family}`,
    family,
    `${family} Est.`,
    `${roll.of(FAMILY_NAMES)} Bldrs.`,
  ])
}

export function addressOf(roll: Chance): string {
  const street = `${roll.of(STREETS)} ${roll.of(STREET_KINDS)}`
  return roll.pick([
    () => `${roll.whole(1, 9999)} ${street}`,
    () => `${roll.whole(1, 9999)} ${street}`,
    () => `${roll.whole(1, 9999)} ${roll.of('N|S|E|W|NE|NW')}${roll.of('|.')} ${street}`,
    () => `${roll.whole(1, 9999)} ${street}, ${roll.of(TOWNS)}`,
    () => `${roll.of(STREETS)} ${roll.of(STREET_KINDS)} #${roll.whole(1, 400)}`,
    () =>
      `${roll.of('N|S|E|W')} side ${street}, ${roll.whole(1, 9)} mi. ${roll.of('N|S|E|W')} of ${roll.of(TOWNS)}`,
    () => `${roll.of('NE|NW|SE|SW')} 1/4 ${roll.of('NE|NW|SE|SW')} 1/4 Sec. ${roll.whole(1, 36)}`,
    () => `Rt. ${roll.whole(1, 9)} Box ${roll.whole(1, 400)}`,
  ])()
}

const CORNER_SIDE =
  'rear left|rear right|front left|front right|NE|NW|SE|SW|N.E.|S.W.|left rear|right front|back left|north east|left front|r. rear|l. rear'
const CORNER_OF =
  'corner of house|corner of house|corner house|cor. house|house corner|cor. of dwelling|corner of garage|corner|cor.|corner of porch|foundation corner|corner of bldg|corner addition'
export const cornerOf = (roll: Chance): string =>
  roll.pick([
    () => `${roll.of(CORNER_SIDE)} ${roll.of(CORNER_OF)}`,
    () => `${roll.of(CORNER_SIDE)} ${roll.of(CORNER_OF)}`,
    () =>
      roll.of(
        'center of chimney|left side of back door|rear of garage|right side front steps|cellar bulkhead, left|well house|sill at rear door',
      ),
  ])()

/** Everything one permit says, from chance. Which of it a page shows, and how, is the page's. */
export function makePermit(roll: Chance, hand: Hand, oldest = 1948, latest = 2019): Permit {
  const year = roll.whole(oldest, latest)
  const own = (t: string, unit: UnitOf = 'own'): Written => ({ t, unit })
  const facts: Fact[] = []
  const fact = (f: Field, write: (bare: boolean) => Written): void => {
    facts.push({ f, of: 'permit', comp: -1, existing: false, write })
  }
  const text = (f: Field, t: string): void => fact(f, () => own(t))
  const casing = (t: string): string => (hand.upper ? t.toUpperCase() : t)
  text('number', writtenPermitNumber(roll, year))
  text('parcelNumber', writtenParcel(roll))
  text('address', casing(addressOf(roll)))
  text('issuedOn', writtenDate(roll, hand, year))
  text('approvedOn', writtenDate(roll, hand, year))
  text('installedOn', writtenDate(roll, hand, year))
  text('otherDate', writtenDate(roll, hand, year))
  text('otherNumber', String(roll.whole(100, 99999)))
  text('owner', casing(personOf(roll)))
  text('installer', casing(roll.chance(0.7) ? roll.of(FIRMS) : personOf(roll)))
  text(
    'kind',
    casing(
      roll.of(
        'new|New|New installation|repair|Repair|replacement|alteration|new system|NEW|REPAIR|Addition|rep.|New constr.|repair existing|Alteration or addition|abandon|replace|enlargement',
      ),
    ),
  )
  text('bedrooms', writtenCount(roll, roll.whole(1, 6)))
  const flow = roll.pick([150, 300, 330, 375, 400, 440, 450, 600, 750])
  text('designFlowGpd', `${flow}${roll.of('||| gpd| GPD| gal/day| gals. per day| g.p.d.')}`)
  text(
    'percRateMpi',
    `${roll.pick([1, 2, 3, 4, 5, 6, 8, 10, 12, 15, 20, 22, 30, 45, 60])}${roll.of('||| mpi| min/in| min. per inch| min/inch| MPI|.5')}`,
  )
  text('soilTexture', casing(roll.of(SOILS)))
  text('cornerA', casing(cornerOf(roll)))
  text('cornerB', casing(cornerOf(roll)))
  const baseline = roll.whole(20, 96) / 2
  fact('baseline', (bare) => writtenFeet(roll, hand, baseline, bare))
  text('remarks', casing(roll.of(REMARKS)))

  const components: Component[] = []
  const component = (kind: ToldOf, existing: boolean, make: (add: Adder) => void): void => {
    const id = components.length
    const list: Fact[] = []
    make((f, write) => list.push({ f, of: kind, comp: id, existing, write }))
    components.push({ id, kind, existing, facts: list })
  }
  const isRepair = roll.chance(0.3)
  const feet = (least: number, most: number) => {
    const value = roll.whole(least * 2, most * 2) / 2
    return (bare: boolean): Written => writtenFeet(roll, hand, value, bare)
  }
  const wholeFeet = (least: number, most: number) => {
    const value = roll.whole(least, most)
    return (bare: boolean): Written => writtenFeet(roll, hand, value, bare)
  }
  const inches = (values: readonly number[]) => {
    const value = roll.pick(values)
    return (bare: boolean): Written => writtenInches(roll, hand, value, bare)
  }
  const material = (kind: ToldOf) => {
    const t = casing(roll.of(MATERIALS_OF[kind]!))
    return () => own(t)
  }
  const count = (least: number, most: number) => {
    const t = writtenCount(roll, roll.whole(least, most))
    return () => own(t)
  }
  const ties = (add: Adder): void => {
    add('tieA', feet(5, 90))
    add('tieB', feet(5, 90))
  }
  const tank = (existing: boolean): void =>
    component(roll.chance(0.08) ? 'pump-chamber' : 'tank', existing, (add) => {
      const gallons = roll.pick(TANKS)
      add('capacity', (bare) => writtenGallons(roll, hand, gallons, bare))
      add('material', material('tank'))
      const compartments = roll.whole(1, 3)
      const t = writtenCount(roll, compartments)
      add('compartments', () => own(t))
      if (roll.chance(0.7)) {
        add('length', feet(4, 12))
        add('width', feet(3, 6))
      } else add('diameter', feet(4, 8))
      add('liquidDepth', feet(3, 6))
      add('insideHeight', feet(4, 7))
      add('wallThickness', inches([2, 3, 4, 6, 8]))
      add('depthToTop', roll.chance(0.5) ? feet(0.5, 5) : inches([6, 8, 10, 12, 14, 18, 24, 30, 36]))
      if (roll.chance(0.4)) {
        const shape = casing(
          roll.of('rectangular|round|cylindrical|rect.|Rectangular|horizontal cylinder|oval'),
        )
        add('shape', () => own(shape))
      }
      ties(add)
    })
  tank(isRepair && roll.chance(0.5))
  if (roll.chance(isRepair ? 0.4 : 0.1)) tank(isRepair)
  for (const kind of ['building-sewer', 'effluent-line'] as const)
    if (roll.chance(0.45))
      component(kind, isRepair && roll.chance(0.4), (add) => {
        add('pipeDiameter', inches([3, 4, 4, 4, 6, 2]))
        add('material', material(kind))
        add('length', wholeFeet(4, 90))
      })
  if (roll.chance(0.6))
    component('distribution-box', isRepair && roll.chance(0.3), (add) => {
      add('material', material('distribution-box'))
      add('depthToTop', inches([6, 8, 10, 12, 18, 24]))
      ties(add)
    })
  const field = (existing: boolean): void => {
    const kind = roll.pick([
      'trench',
      'trench',
      'trench',
      'bed',
      'bed',
      'seepage-pit',
      'seepage-pit',
      'cesspool',
      'chambers',
      'mound',
      'drip-field',
      'absorption',
    ] as const)
    component(kind, existing, (add) => {
      if (kind === 'seepage-pit' || kind === 'cesspool') {
        add('count', count(1, 4))
        add('diameter', feet(3, 12))
        add(roll.chance(0.6) ? 'effectiveDepth' : 'depth', feet(4, 16))
        add('material', material('seepage-pit'))
        ties(add)
        return
      }
      const isWide = kind === 'bed' || kind === 'mound'
      if (!isWide || roll.chance(0.2)) add('count', count(1, 8))
      add('length', wholeFeet(18, 110))
      add(
        'width',
        isWide ? wholeFeet(8, 17) : roll.chance(0.7) ? inches([18, 24, 30, 36, 36, 24, 12]) : wholeFeet(2, 4),
      )
      add('effectiveDepth', inches([4, 6, 8, 10, 12, 12, 12, 18, 24]))
      add('depthToTop', inches([8, 10, 12, 16, 18, 24]))
      if (roll.chance(0.4)) add('depth', roll.chance(0.7) ? inches([24, 30, 36, 42, 48]) : feet(2, 5))
      const total = roll.whole(10, 60) * 10
      add('totalLength', (bare) => writtenFeet(roll, hand, total, bare))
      add('area', () => own(`${total * 3}${roll.of('| sq ft| sq. ft.| SF| sq.ft.| square feet')}`))
      const rate = roll.pick([0.2, 0.35, 0.4, 0.45, 0.5, 0.6, 0.74, 0.8, 1.2])
      add('rate', () => own(`${rate}${roll.of('|| gpd/sf| gal/sq ft')}`))
      if (kind === 'trench' || kind === 'bed') {
        add('pipeDiameter', inches([3, 4, 4]))
        add('material', material(kind))
      }
      ties(add)
    })
  }
  field(false)
  if (roll.chance(isRepair ? 0.6 : 0.1)) field(isRepair)
  for (const kind of [
    'inlet-baffle',
    'outlet-baffle',
    'effluent-filter',
    'riser',
    'access-opening',
    'observation-port',
  ] as const)
    if (roll.chance(0.1))
      component(kind, false, (add) => {
        if (kind.endsWith('baffle') || kind === 'riser')
          add('material', material(kind.endsWith('baffle') ? 'inlet-baffle' : 'riser'))
        if (kind === 'riser' || kind === 'access-opening') add('diameter', inches([18, 20, 24]))
        if (kind === 'observation-port') add('count', count(1, 3))
        if (kind === 'riser' || kind === 'access-opening') add('depthToTop', inches([0, 2, 6, 12]))
      })
  return { facts, components, year }
}
type Adder = (f: Field, write: (bare: boolean) => Written) => void
