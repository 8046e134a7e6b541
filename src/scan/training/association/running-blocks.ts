import type { Field } from '../../../reading/association/fields.ts'
import { labelOf, plainNameOf } from './labels.ts'
import { type Block, factOf, factsOf, labelPart, partNamed, tagOf, valueParts } from './parts.ts'
import type { Component, Fact, Permit } from './permit.ts'
import type { Said, Sheet } from './sheet.ts'
import { sides } from './sides.ts'

const SHORT_NAMES: Record<string, string> = {
  tank: 'ST|S.T.|tank|septic tank|Tank|SEPTIC TANK|S/T|tk',
  'pump-chamber': 'pump ch.|P.C.|dose tank|pump tank|lift sta.',
  'distribution-box': 'DB|D.B.|D-box|dist. box|D box|DIST. BOX|dist box',
  'seepage-pit': 'S.P.|pit|dry well|seepage pit|leach pit|SP|drywell|pits',
  cesspool: 'cesspool|C.P.|CP',
  trench: 'trench|lines|laterals|leach lines|L.L.|trenches|tile lines|drain lines|lat.|LL|lines tile',
  bed: 'bed|seepage bed|leach bed|BED|drain bed',
  mound: 'mound|MOUND|sand mound|at-grade|at grade',
  chambers: 'chambers|infil. chambers|chamber trench',
  'building-sewer': 'house sewer|bldg. sewer|sewer|bldg sewer|hse sewer|pipe to tank',
  'effluent-line': 'eff. line|solid line|tight line|outlet line|pipe to box',
  'drip-field': 'drip|drip field|drip tubing',
  absorption: 'field|drainfield|DF|D.F.|leach field|disp. field|drain field|abs. field',
}
export const shortName = (sheet: Sheet, kind: string): string =>
  SHORT_NAMES[kind] ? sheet.roll.of(SHORT_NAMES[kind]!) : plainNameOf(sheet.roll, kind as 'tank')

const fixed = (fact: Fact, t: string): Fact => ({ ...fact, write: () => ({ t, unit: 'own' }) })

/** What a card says of a component in short: `1000 gal conc ST`, `DB conc.`, `3-50' x 36" lines w/ 12" rock`. */
export function fragment(sheet: Sheet, component: Component): Said[] {
  const { roll } = sheet
  const name = partNamed(sheet, component, shortName(sheet, component.kind))
  const old = component.existing
    ? [roll.of('exist. |existing |EXIST. |old |ex. ')]
    : roll.chance(0.12)
      ? [roll.of('new |NEW |inst. |install |put in ')]
      : []
  const said = (f: Field, bare = false): Said[] => {
    const fact = factOf(component, f)
    return fact ? [valueParts(sheet, fact, 0, bare).at(-1)!] : []
  }
  const after = (f: Field, word: string): Said[] => {
    const value = said(f)
    return value.length > 0 && roll.chance(0.35) ? [roll.of(', |; | '), ...value, word] : []
  }
  switch (component.kind) {
    case 'tank':
    case 'pump-chamber': {
      const capacity = said('capacity', roll.chance(0.4))
      const material = roll.chance(0.75) ? said('material') : []
      const pieces = roll.pick([
        () => [...capacity, ' ', ...material, ' ', name],
        () => [name, roll.of(' |: | - |-|, '), ...capacity, ' ', ...material],
        () => [...material, ' ', name, ' ', ...capacity],
        () => [name, ' ', ...material, roll.of(', | '), ...capacity],
        () => [...capacity, ' ', name, roll.of(', |, |-| '), ...material],
      ])()
      const compartments = factOf(component, 'compartments')
      const dims =
        factOf(component, 'length') && roll.chance(0.25)
          ? [
              roll.of(', |; '),
              ...said('length'),
              roll.of(' x |x| X '),
              ...said('width'),
              roll.of(' x |x| X '),
              ...said('liquidDepth'),
              roll.of(' LD| L.D.| deep| liq. depth||'),
            ]
          : []
      return [
        ...old,
        ...pieces,
        ...(compartments && roll.chance(0.25)
          ? [
              roll.of(', |; | '),
              { t: compartments.write(false).t, v: tagOf(sheet, compartments, 0, 'own') },
              roll.of('-comp.| comp.| compt.| compartment|-compartment'),
            ]
          : []),
        ...dims,
        ...after('depthToTop', roll.of(' deep to top| cover| below grade| to lid| bury')),
      ]
    }
    case 'distribution-box':
      return [
        ...old,
        ...(roll.chance(0.5)
          ? [name, ' ', ...(roll.chance(0.6) ? said('material') : [])]
          : [...said('material'), ' ', name]),
        roll.chance(0.3) ? roll.of(' 4 hole| 5 outlets| 3-way| 5-hole') : '',
      ]
    case 'building-sewer':
    case 'effluent-line':
      return [
        ...old,
        ...(roll.chance(0.5) ? [name, roll.of(' |: |-')] : []),
        ...said('pipeDiameter'),
        ' ',
        ...said('material'),
        roll.chance(0.4) ? roll.of(' pipe| pipe|') : '',
        ...after('length', roll.of('| long|')),
        ...(roll.chance(0.3) ? [' ', name] : []),
      ]
    case 'seepage-pit':
    case 'cesspool': {
      const material = roll.chance(0.5) ? said('material') : []
      return [
        ...old,
        ...(roll.chance(0.5)
          ? [name, roll.of(' |: |, '), ...sides(sheet, component), ' ', ...material]
          : [...sides(sheet, component), ' ', ...material, ' ', name]),
      ]
    }
    default:
      return [
        ...old,
        ...(roll.chance(0.5)
          ? [name, roll.of(' |: |, |-'), ...sides(sheet, component)]
          : [...sides(sheet, component), ' ', name]),
        ...after('totalLength', roll.of(' total| tot.| total lin. ft.')),
        ...after('area', roll.of('| sq ft| abs. area')),
        ...(roll.chance(0.25) && factOf(component, 'material')
          ? [roll.of(', | w/ '), ...said('pipeDiameter'), ' ', ...said('material')]
          : []),
        ...after('depthToTop', roll.of(' cover| earth cover| deep')),
      ]
  }
}

/** A label and a value in running abbreviations: `iss. 5-3-74`, `4 BR`, `perc 12`. */
export function shortFact(sheet: Sheet, fact: Fact): Said[] {
  const { roll } = sheet
  const id = sheet.label()
  const before = (words: string): Said[] => [
    labelPart(roll.of(words), id),
    roll.of(' |: | |. '),
    valueParts(sheet, fact, id).at(-1)!,
  ]
  const after = (words: string): Said[] => [
    valueParts(sheet, fact, id).at(-1)!,
    roll.of(' | ||-'),
    labelPart(roll.of(words), id),
  ]
  switch (fact.f) {
    case 'bedrooms':
      return roll.chance(0.8)
        ? after('BR|bdrm|bdrms|bed.|bedrm|br.|bedrooms|BDRM')
        : before('BR|bedrms|no. bdrms')
    case 'percRateMpi':
      return before('perc|perc.|Perc|PERC|p.r.|perc rate|perc test')
    case 'issuedOn':
      return before('iss.|issued|Iss|permit|dated|date|ISS.|pmt issued')
    case 'approvedOn':
      return before("appr.|apprvd|final|OK|ok'd|insp.|APPR|approved|final insp|OK to cover|pass")
    case 'installedOn':
      return before('inst.|installed|inst|put in|instld|built')
    case 'installer':
      return before('by|inst. by|contr.|inst|BY')
    case 'owner':
      return roll.chance(0.4) ? [valueParts(sheet, fact, 0).at(-1)!] : before('owner|own.|for|iss. to')
    case 'number':
      return roll.chance(0.25)
        ? [valueParts(sheet, fact, 0).at(-1)!]
        : before('No.|#|permit|Pmt|Pmt.|permit #|PERMIT|Permit No.|P#')
    case 'parcelNumber':
      return roll.chance(0.3)
        ? [valueParts(sheet, fact, 0).at(-1)!]
        : before('parcel|APN|tax lot|TL|Par.|PIN|parc.|tax pcl')
    case 'address':
      return roll.chance(0.6) ? [valueParts(sheet, fact, 0).at(-1)!] : before('loc.|at|addr|site|Loc:|LOC')
    case 'soilTexture':
      return roll.chance(0.4) ? after('soil|soils') : before('soil|soils|SOIL')
    case 'designFlowGpd':
      return [
        valueParts(sheet, fixed(fact, fact.write(false).t.replace(/\D+$/, '')), id).at(-1)!,
        ' ',
        labelPart(roll.of('gpd|GPD|gal/day|g.p.d.'), id),
      ]
    case 'kind':
      return roll.chance(0.7) ? [valueParts(sheet, fact, 0).at(-1)!] : before('type|for|work|job')
    default:
      return [labelPart(labelOf(sheet, fact.f), id), ' ', ...valueParts(sheet, fact, id)]
  }
}

/** A card of running abbreviations: everything one after the other, parted by marks or lines. */
export const runningBlock: Block = (sheet, region, permit) => {
  const { roll } = sheet
  const separator = roll.pick([', ', '; ', '. ', '  ', ' - ', ' / '])
  const wide = region.right - region.x
  const head = permit.facts.filter(
    ({ f }) =>
      !f.startsWith('corner') &&
      f !== 'baseline' &&
      f !== 'remarks' &&
      f !== 'otherNumber' &&
      roll.chance(f === 'number' || f === 'parcelNumber' ? 0.85 : 0.5),
  )
  const pieces = [...(roll.chance(0.7) ? head : roll.shuffled(head)).map((fact) => shortFact(sheet, fact))]
  const parts = permit.components.map((component) => fragment(sheet, component))
  const mixed = roll.chance(0.7)
    ? [...pieces, ...parts]
    : [...pieces.slice(0, 3), ...parts, ...pieces.slice(3)]
  if (roll.chance(0.4))
    mixed.splice(roll.whole(0, mixed.length), 0, [
      roll.of(
        "well 85'|pd. $15|see sketch|std. design|rolled fill|lot 14 blk 2|trees|wet spot N. side|50' to well|no grinder|10' to house|hdpn at 4'|ok cover 8\"",
      ),
    ])
  const perLine = roll.chance(0.4)
  const said = mixed.flatMap((piece, nth) =>
    nth === 0 ? piece : [perLine && roll.chance(0.6) ? '\n' : separator, ...piece],
  )
  let { y } = region
  let line: Said[] = []
  const flush = (): void => {
    if (line.length > 0) y = sheet.flow(region.x, y, wide, line) + sheet.size * 0.2
    line = []
  }
  for (const one of said) {
    if (one === '\n') flush()
    else line.push(one)
  }
  flush()
  return y
}

/** Components line by line, as in the lower half of a card. */
export const fragmentLines: Block = (sheet, region, permit: Permit) => {
  const { roll } = sheet
  let { y } = region
  const lead = roll.of('|||- |• |* ')
  for (const component of permit.components) {
    y =
      sheet.flow(region.x, y, region.right - region.x, [lead, ...fragment(sheet, component)]) +
      sheet.size * roll.between(0, 0.8)
  }
  return y
}

export const headFacts = (permit: Permit, ...fields: readonly string[]): Fact[] => factsOf(permit, ...fields)
