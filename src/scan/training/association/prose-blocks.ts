import { plainNameOf } from './labels.ts'
import { type Block, factOf, factsOf, partNamed, valueParts } from './parts.ts'
import type { Component, Fact } from './permit.ts'
import type { Said, Sheet } from './sheet.ts'
import { sides } from './sides.ts'
import { BOILERPLATE, NOTHINGS } from './words.ts'

/** Writes a value into a sentence: `{f}` of the permit, or of a component where one is given. */
function filled(
  sheet: Sheet,
  template: string,
  find: (f: string) => Fact | undefined,
  part?: (label?: string) => Said,
): Said[] | null {
  const said: Said[] = []
  for (const piece of template.split(/(\{[^}]+\})/)) {
    const slot = /^\{([^}]+)\}$/.exec(piece)?.[1]
    if (slot === undefined) {
      // A label in a sentence is written between ‹ and ›.
      said.push(piece)
      continue
    }
    if (slot === 'part') {
      if (part) said.push(part())
      continue
    }
    const fact = find(slot)
    if (!fact) return null
    said.push(valueParts(sheet, fact, 0).at(-1)!)
  }
  return said
}

const OPENINGS = [
  'Permit {number} was issued on {issuedOn} for {address}.',
  'Re: {address}, parcel {parcelNumber}',
  'Re: Permit No. {number}',
  'This concerns the sewage system at {address} (Parcel No. {parcelNumber}).',
  'On {approvedOn} this office inspected and approved the system installed under permit {number}.',
  'Enclosed is the record for permit {number}, issued {issuedOn} and approved {approvedOn}.',
  'The property is parcel {parcelNumber} at {address}.',
  'Dear {owner}:',
  'The work was done by {installer}.',
  'The system was installed {installedOn} by {installer} and passed final inspection on {approvedOn}.',
  'Your application of {otherDate} has been reviewed.',
  'The house has {bedrooms} bedrooms and a design flow of {designFlowGpd} gallons per day.',
  'A {bedrooms} bedroom dwelling is served.',
  'The soil is {soilTexture} with a percolation rate of {percRateMpi} minutes per inch.',
  'Soils are {soilTexture}; perc tests on {otherDate} gave {percRateMpi} min/in.',
  'Final approval was given {approvedOn}.',
  'The permit was for {kind} work.',
  'The permit is dated {issuedOn}.',
  'Corner A is the {cornerA} and corner B the {cornerB}, {baseline} apart.',
  'Measurements were taken from A, {cornerA}, and B, {cornerB}.',
  'I looked at the lot of {owner} on {otherDate}.',
  'Mr. {owner} states that the work was finished {installedOn}.',
  'We issued permit number {number} to {owner} on {issuedOn}.',
]
const OF_A_TANK = [
  'A {capacity} {material} {part} was installed.',
  'The {part} is of {material} and holds {capacity}.',
  'A {part} of {capacity} capacity, {length} long by {width} wide with a liquid depth of {liquidDepth}, was set.',
  'The {part}, {material}, {capacity}, is {depthToTop} below grade.',
  'A {compartments} compartment {material} {part} of {capacity} was put in.',
  'The {part} measures {length} x {width} x {liquidDepth} liquid depth.',
  'The {part} lies {tieA} from corner A and {tieB} from corner B.',
  'Sewage flows to a {capacity} {part}.',
]
const OF_A_PIT = [
  'It drains to {count} {part} {diameter} in diameter and {effectiveDepth} below the inlet.',
  'There are {count} {part}, {diameter} across and {depth} deep.',
  'A {part} of {material}, {diameter} in diameter, takes the effluent.',
  'The {part} is {tieA} from A and {tieB} from B.',
]
const OF_A_FIELD = [
  'The {part} consists of {count} lines each {length} long and {width} wide with {effectiveDepth} of gravel under the pipe.',
  'There are {count} {part} {length} long, {width} wide.',
  'The {part} is {length} by {width} with {effectiveDepth} of stone.',
  'A total of {totalLength} of {part} was laid, {width} wide.',
  'The {part} has {area} of absorption area.',
  '{count} {part} of {length} were dug, with {effectiveDepth} rock below the pipe and {depthToTop} of cover.',
  'The {part} begins {tieA} from A and {tieB} from B.',
]
const OF_A_PIPE = [
  'The {part} is {pipeDiameter} {material}.',
  'A {part} of {pipeDiameter} {material} pipe {length} long leads there.',
]
const OF_A_BOX = [
  'The {part} is of {material}.',
  'A {material} {part} was set.',
  'The {part} is {tieA} from A, {tieB} from B.',
]

const templatesOf = ({ kind }: Component): readonly string[] => {
  if (kind === 'tank' || kind === 'pump-chamber') return OF_A_TANK
  if (kind === 'seepage-pit' || kind === 'cesspool') return OF_A_PIT
  if (kind === 'building-sewer' || kind === 'effluent-line') return OF_A_PIPE
  if (kind === 'distribution-box' || kind.endsWith('baffle')) return OF_A_BOX
  return OF_A_FIELD
}

const SHOULD = [
  'A tank of at least 1000 gallons is required for a 3 bedroom house.',
  'Lines may not exceed 100 ft in length.',
  'The field must be 100 ft. from any well.',
  'You must call before covering.',
  'The well is 85 ft deep and 60 ft from the tank.',
  'Lot 12 is 100 by 150 ft.',
  'The fee of $25.00 was received.',
  'Please sign and return one copy within 30 days.',
  'If you have questions call 555-0142.',
]

/** Sentences about the permit and its parts, in paragraphs. */
export const letterBlock: Block = (sheet, region, permit) => {
  const { roll } = sheet
  const wide = region.right - region.x
  const said: Said[] = []
  const add = (sentence: Said[] | null): void => {
    if (sentence) said.push(...sentence, ' ')
  }
  const isFor = (f: string): Fact | undefined => factsOf(permit, f)[0]
  let { y } = region
  for (const template of roll.shuffled(OPENINGS).slice(0, roll.whole(2, 7)))
    add(filled(sheet, template, isFor))
  if (roll.chance(0.6)) {
    y = sheet.flow(region.x, y, wide, said) + sheet.size
    said.length = 0
  }
  for (const component of permit.components) {
    const find = (f: string): Fact | undefined => factOf(component, f)
    const name = (): Said => {
      const said = plainNameOf(roll, component.kind)
      return partNamed(sheet, component, `${component.existing ? roll.of('existing |old ') : ''}${said}`)
    }
    const templates = roll.shuffled(templatesOf(component)).slice(0, roll.whole(1, 2))
    for (const template of templates) add(filled(sheet, template, find, name))
    if (roll.chance(0.2) && factOf(component, 'length')) add(['It is ', ...sides(sheet, component), '.'])
    if (roll.chance(0.15)) add([roll.pick(SHOULD)])
  }
  if (roll.chance(0.4)) add([roll.pick(SHOULD)])
  return sheet.flow(region.x, y, wide, said) + sheet.size
}

const CERTIFICATES = [
  'This is to certify that the individual sewage disposal system at {address} in the Town of ____ was installed by {installer} under Permit No. {number} and was inspected on {approvedOn}',
  'Permission is hereby granted to {owner} to {kind} a sewage disposal system at {address} Tax Parcel {parcelNumber} Dated this {issuedOn}',
  'The system serving a {bedrooms} bedroom residence located at {address} was found to comply with the regulations on {approvedOn}',
  'Certificate No. {otherNumber} issued upon completion of work under permit {number} dated {issuedOn} owner {owner} parcel number {parcelNumber}',
  'Permit {number} is hereby issued to {owner} of {address} valid until {otherDate}',
  'The works on the land of {owner} at {address}, parcel {parcelNumber}, permit {number} granted {issuedOn}, were examined {approvedOn} and passed',
  'Examined and passed {approvedOn} the works built under permit {number}, granted {issuedOn}',
  'Permit No. {number} Granted {issuedOn} Completed {installedOn} Accepted {approvedOn}',
  'I, the undersigned, on {approvedOn} inspected the work at {address} done under permit number {number} and approve the same',
]
const CERTIFIED_PARTS: readonly [RegExp, string][] = [
  [/tank|pump/, 'and consists of a {capacity} gallon {part} of {material}'],
  [
    /tank|pump/,
    'Septic tank size {capacity} gals., material {material}, length {length} width {width} liquid depth {liquidDepth}',
  ],
  [/pit|cesspool/, '{count} seepage pit(s) {diameter} in diameter and {effectiveDepth} effective depth'],
  [
    /trench|bed|chambers|mound|field|absorption/,
    'and {count} lines each {length} feet in length and {width} wide',
  ],
  [
    /trench|bed|chambers|mound|field|absorption/,
    'with a {part} {length} long by {width} wide having {effectiveDepth} of gravel',
  ],
  [/box/, 'with a {material} {part}'],
  [/tank|pump/, 'a {part} of {capacity} gallons, made of {material}'],
  [/tank|pump/, '{part} capacity {capacity} gallons material {material}'],
  [
    /trench|chambers/,
    '{count} {part} each {length} long and {width} wide with {effectiveDepth} of gravel beneath the pipe',
  ],
]

/** Print that asks for parts that this permit has none of. */
const ABSENT_PARTS = [
  'and _ seepage pits',
  'with a pump chamber of _ gallons',
  'and _ lineal feet of drain tile',
  'a dosing tank of _ gallon capacity',
  'with a grease trap _ gallons',
  '_ cesspools, each _ in diameter',
  'and _ dry wells _ deep',
  'a seepage bed _ by _',
  ', _ trenches',
  'alarm _ pump _ h.p.',
]
const ABSENT_BLANKS = '____|________|___________| no | none | N/A | -- | __no__ |  | _0_ | nil '

/** Running print with blanks that somebody typed over; some stay blank. */
export const certificateBlock: Block = (sheet, region, permit) => {
  const { roll } = sheet
  const fill = (template: string, find: (f: string) => Fact | undefined, part?: () => Said): Said[] => {
    const said: Said[] = []
    for (const piece of template.split(/(\{[^}]+\})/)) {
      const slot = /^\{([^}]+)\}$/.exec(piece)?.[1]
      if (slot === undefined) said.push(piece)
      else if (slot === 'part') said.push(part?.() ?? '')
      else {
        const fact = find(slot)
        const line = '_'.repeat(roll.whole(1, 8))
        if (!fact || roll.chance(0.12)) said.push(roll.pick(['________', '_____________', roll.of(NOTHINGS)]))
        else if (roll.chance(0.6))
          said.push(
            line,
            roll.of('| '),
            valueParts(sheet, fact, 0, roll.chance(0.5)).at(-1)!,
            roll.of('| '),
            line,
          )
        else said.push(roll.of('|  '), valueParts(sheet, fact, 0, roll.chance(0.5)).at(-1)!, roll.of('|  '))
      }
    }
    return said
  }
  const said: Said[] = []
  for (const template of roll.shuffled(CERTIFICATES).slice(0, roll.whole(1, 3)))
    said.push(...fill(template, (f) => factsOf(permit, f)[0]), roll.of('. |, |; | '))
  for (const component of permit.components) {
    if (component.existing) continue
    const fitting = CERTIFIED_PARTS.filter(([kinds]) => kinds.test(component.kind))
    if (fitting.length === 0 || roll.chance(0.2)) continue
    const part = (): Said => partNamed(sheet, component, plainNameOf(roll, component.kind))
    const [, template] = roll.pick(fitting)
    if (template.includes('seepage pit') && component.kind === 'cesspool') continue
    said.push(...fill(template, (f) => factOf(component, f), part), roll.of('. |, |; | '))
  }
  for (const blanks of roll.some(ABSENT_PARTS, 0.2)) {
    const place = Math.max(0, said.lastIndexOf('. '))
    const put: Said[] = blanks
      .split('_')
      .flatMap((words, nth) => (nth === 0 ? [words] : [roll.of(ABSENT_BLANKS), words]))
    said.splice(roll.chance(0.5) ? said.length : place, 0, ' ', ...put, ' ')
  }
  const y = sheet.flow(region.x, region.y, region.right - region.x, said)
  return y + sheet.size
}

/** Print that says nothing of this permit. */
export function boilerplate(sheet: Sheet, x: number, y: number, right: number): number {
  return sheet.flow(
    x,
    y,
    right - x,
    sheet.roll
      .shuffled(BOILERPLATE)
      .slice(0, sheet.roll.whole(1, 3))
      .map((line) => `${line} `),
    { size: sheet.size * sheet.roll.between(0.7, 1) },
  )
}
