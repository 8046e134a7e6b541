import type { Chance } from './chance.ts'
import { factOf, factsOf, labelPart, partNamed, type Region, tagOf, valueParts } from './parts.ts'
import { type Fact, makePermit, type Permit } from './permit.ts'
import { fragment, shortName } from './running-blocks.ts'
import type { Said, Sheet } from './sheet.ts'
import { sides } from './sides.ts'
import { HEADINGS } from './words.ts'
import { type Hand, makeHand } from './written.ts'

type Column = {
  readonly head: string
  readonly lines?: true
  readonly id: number
  readonly cell: (permit: Permit) => Said[]
  readonly second: boolean
}

const TANK = /^(?:tank|pump-chamber)$/
const FIELD = /^(?:trench|bed|seepage-pit|cesspool|chambers|mound|drip-field|absorption)$/

function columnsOf(sheet: Sheet, year: number): Column[] {
  const { roll } = sheet
  const ditto = roll.chance(0.35)
  const last = new Map<string, string>()
  const column = (head: string, cell: (permit: Permit, id: number) => Said[], second = false): Column => {
    const id = sheet.label()
    return { head, id, cell: (permit) => cell(permit, id), second }
  }
  const ofPermit = (f: string, head: string): Column =>
    column(head, (permit, id) => {
      const [fact] = factsOf(permit, f)
      if (!fact || roll.chance(0.06)) return [roll.of('||-|--')]
      return dittoed(f, fact, id)
    })
  const dittoed = (key: string, fact: Fact, id: number, bare = false): Said[] => {
    const { t, unit } = fact.write(bare)
    // What stands above is meant again where the same is written with a mark.
    if (ditto && last.has(key) && roll.chance(0.25))
      return [{ t: roll.of('"|"|do|do.|\'\'|ditto|" "|same'), v: tagOf(sheet, fact, id, unit) }]
    last.set(key, t)
    return roll.chance(0.03) ? valueParts(sheet, fact, id, bare) : [{ t, v: tagOf(sheet, fact, id, unit) }]
  }
  const ofPart = (kinds: RegExp, f: string, head: string, bare: boolean): Column =>
    column(head, (permit, id) => {
      const component = permit.components.find(({ kind, existing }) => kinds.test(kind) && !existing)
      const fact = component && factOf(component, f)
      return fact && roll.chance(0.92) ? dittoed(`${head}${f}`, fact, id, bare) : [roll.of('||-|--')]
    })
  const all: Column[] = [
    ofPermit('number', roll.of('Permit|No.|Permit No.|PERMIT|#|Number|Pmt.')),
    ofPermit('issuedOn', roll.of('Date|Issued|Date Issued|DATE|Iss.')),
    ...(roll.chance(0.7) ? [ofPermit('owner', roll.of('Owner|Name|NAME|Issued to|Applicant'))] : []),
    ...(roll.chance(0.65) ? [ofPermit('address', roll.of('Location|Address|Site|LOCATION|Street'))] : []),
    ...(roll.chance(0.75)
      ? [ofPermit('parcelNumber', roll.of('Parcel|Parcel No.|Tax lot|APN|PARCEL|Tax No.'))]
      : []),
    ...(roll.chance(0.45) ? [ofPermit('kind', roll.of('Type|Work|New/Rep|Class|N/R'))] : []),
    ...(roll.chance(0.35) ? [ofPermit('bedrooms', roll.of('BR|Bdrms|Bedrms.|Bed.'))] : []),
    ...(roll.chance(0.2) ? [ofPermit('percRateMpi', roll.of('Perc|Perc.|MPI'))] : []),
    ...(roll.chance(0.2) ? [ofPermit('soilTexture', 'Soil')] : []),
    ...(roll.chance(0.75)
      ? [
          ofPart(
            TANK,
            'capacity',
            roll.of('Tank|Tank gal.|Tank Gals|Tank size|S.T.|TANK GAL|Septic tank'),
            roll.chance(0.6),
          ),
        ]
      : []),
    ...(roll.chance(0.45)
      ? [ofPart(TANK, 'material', roll.of('Mat.|Tank mat.|Kind|Material|Made of'), false)]
      : []),
    ...(roll.chance(0.55)
      ? [
          column(roll.of('Field|System|Drainfield|Disposal|FIELD|Leaching'), (permit) => {
            const component = permit.components.find(({ kind, existing }) => FIELD.test(kind) && !existing)
            if (!component) return ['-']
            const said = sides(sheet, component)
            const name = partNamed(sheet, component, shortName(sheet, component.kind))
            return roll.chance(0.75)
              ? roll.chance(0.5)
                ? [...said, ' ', name]
                : [name, ' ', ...said]
              : [name]
          }),
        ]
      : [
          {
            ...ofPart(FIELD, 'count', roll.of('Lines|No. lines|No.|Qty|No. of lines'), false),
            lines: true as const,
          },
          ofPart(FIELD, 'length', roll.of('Length|Lgth.|Field length|Ft.'), roll.chance(0.5)),
          ofPart(FIELD, 'width', roll.of('Width|Wid.|In.'), roll.chance(0.4)),
        ]),
    ...(roll.chance(0.55)
      ? [ofPermit('approvedOn', roll.of('Approved|Final|Appr.|Insp.|FINAL|Date appr.'))]
      : []),
    ...(roll.chance(0.35) ? [ofPermit('installer', roll.of('Installer|By|Contractor|Inst. by'))] : []),
    ...(roll.chance(0.3) ? [column(roll.of('Fee|Amt.|Pd.'), () => [roll.of('5.00|$10|25.00|pd')])] : []),
    ...(roll.chance(0.2)
      ? [column(roll.of('Remarks|Notes'), () => [roll.of('||see card|OK|void|N side|transf.')])]
      : []),
  ]
  const limited = all.slice(0, roll.whole(5, 12))
  if (!roll.chance(0.3)) return limited
  const split = roll.whole(3, Math.max(3, limited.length - 2))
  void year
  return limited.map((one, at) => ({ ...one, second: at >= split }))
}

/** Where the columns only speak of lines, the permits are of lines: of what else could nobody tell. */
function fittingPermit(roll: Chance, hand: Hand, year: number, columns: readonly Column[]): Permit {
  const onlyLines = columns.some(({ lines }) => lines)
  for (;;) {
    const permit = makePermit(roll, hand, year, Math.min(2019, year + 2))
    const field = permit.components.find(({ kind, existing }) => FIELD.test(kind) && !existing)
    if (!onlyLines || field?.kind === 'trench') return permit
  }
}

/** A register: one permit a row, or two lines a permit; headings may come again, lines may run on. */
export function registerBlock(
  sheet: Sheet,
  region: Region,
  most: number,
  from: number,
): { y: number; permits: number } {
  const { roll } = sheet
  const hand = makeHand(roll)
  const year = roll.whole(1948, 2005)
  sheet.size = roll.between(5.5, 8.5)
  const columns = columnsOf(sheet, year)
  const two = columns.some(({ second }) => second)
  const step = sheet.size * roll.between(1.15, 2)
  const between = two ? roll.between(0, sheet.size) : 0
  const spots = placesOf(sheet, region, columns)
  const wrapsHead = roll.chance(0.3)
  let { y } = region
  let permits = 0
  const heads = (): void => {
    for (const line of [false, true]) {
      const own = columns.filter(({ second }) => second === line)
      if (own.length === 0) continue
      own.forEach((column) => {
        const words = column.head.split(' ')
        const x = spots.get(column)!
        if (wrapsHead && words.length > 1) {
          sheet.run(x, y, [labelPart(words[0]!, column.id)])
          sheet.run(x, y + sheet.size * 1.1, [words.slice(1).join(' ')])
        } else sheet.run(x, y + (wrapsHead ? sheet.size * 0.6 : 0), [labelPart(column.head, column.id)])
      })
      y += step * (wrapsHead ? 1.7 : 1.1)
    }
  }
  if (roll.chance(0.92)) heads()
  const again = roll.chance(0.12) ? roll.whole(6, 14) : 0
  const continued = roll.chance(0.12)
  while (permits < most && y < sheet.height - 40 - step * (two ? 2 : 1)) {
    sheet.permit = from + permits
    const permit = fittingPermit(roll, hand, year, columns)
    if (again > 0 && permits > 0 && permits % again === 0) {
      if (roll.chance(0.5)) {
        sheet.run(region.x + 30, y, [roll.of(HEADINGS)])
        y += step
      }
      heads()
    }
    const lines = continued && permits === 0 ? [true] : [false, true]
    for (const line of lines) {
      const own = columns.filter(({ second }) => second === line)
      if (own.length === 0) continue
      for (const column of own)
        sheet.run(spots.get(column)!, y + roll.between(-0.6, 0.6), column.cell(permit))
      y += step
    }
    if (continued && permits === 0 && !two) y += 0
    permits += 1
    y += between
    if (roll.chance(0.05)) y += step * 0.6
  }
  return { y, permits }
}

function placesOf(sheet: Sheet, region: Region, columns: readonly Column[]): Map<Column, number> {
  const { roll } = sheet
  const spots = new Map<Column, number>()
  const weight = (column: Column): number => {
    const head = column.head.toLowerCase()
    if (/owner|name|loc|addr|site|street|issued to|appl|install|contr|inst|^by/.test(head))
      return roll.between(13, 18)
    if (/field|system|drain|dispos|leach/.test(head)) return roll.between(15, 22)
    if (/parcel|apn|tax|date|issued|appr|final|insp/.test(head)) return roll.between(9.5, 13)
    return Math.max(head.length, roll.between(5, 9))
  }
  for (const line of [false, true]) {
    const own = columns.filter(({ second }) => second === line)
    const weights = own.map(weight)
    const total = weights.reduce((sum, one) => sum + one, 0)
    const indent = line ? roll.between(0, 40) : 0
    const unit = Math.min((region.right - region.x - indent) / Math.max(1, total), sheet.size * 0.62)
    // Columns too narrow for the type: it is set smaller, as clerks write smaller.
    if (unit < sheet.size * 0.5) sheet.size = Math.max(4.5, unit / 0.52)
    let at = region.x + indent
    own.forEach((column, nth) => {
      spots.set(column, at)
      at += weights[nth]! * unit
    })
  }
  return spots
}

/** A docket: each permit a few lines of running abbreviations behind its number. */
export function docketBlock(
  sheet: Sheet,
  region: Region,
  most: number,
  from: number,
): { y: number; permits: number } {
  const { roll } = sheet
  const hand: Hand = makeHand(roll)
  const year = roll.whole(1948, 2005)
  const separator = roll.pick([', ', '; ', '. ', '  ', ' - '])
  const indent = roll.between(0, 50)
  const order = roll.shuffled([
    'issuedOn',
    'owner',
    'address',
    'parcelNumber',
    'kind',
    'bedrooms',
    'soilTexture',
    'percRateMpi',
    'approvedOn',
    'installer',
  ])
  const shown = order.filter((f) => roll.chance(f === 'parcelNumber' || f === 'issuedOn' ? 0.8 : 0.5))
  const early = roll.whole(1, Math.max(1, shown.length))
  let { y } = region
  let permits = 0
  while (permits < most && y < sheet.height - 60) {
    sheet.permit = from + permits
    const permit = makePermit(roll, hand, year, year + 1)
    const say = (f: string): Said[] => {
      const [fact] = factsOf(permit, f)
      if (!fact || roll.chance(0.06)) return []
      const id = sheet.label()
      const word = DOCKET_WORDS[f]
      const value = valueParts(sheet, fact, word ? id : 0).at(-1)!
      if (f === 'bedrooms') return [separator, value, ' ', labelPart('BR', id)]
      return word && roll.chance(0.6)
        ? [separator, labelPart(roll.of(word), id), ' ', value]
        : [separator, value]
    }
    const [number] = factsOf(permit, 'number')
    const said: Said[] = [
      valueParts(sheet, number!, 0).at(-1)!,
      ...shown.slice(0, early).flatMap(say),
      ...permit.components
        .filter(({ existing }) => !existing || roll.chance(0.5))
        .flatMap((component) => [separator, ...fragment(sheet, component)]),
      ...shown.slice(early).flatMap(say),
    ]
    const end = sheet.flow(region.x + (indent > 25 ? 0 : indent), y, region.right - region.x - indent, said)
    y = end + sheet.size * roll.between(0.1, 0.9)
    permits += 1
  }
  return { y, permits }
}

const DOCKET_WORDS: Record<string, string> = {
  issuedOn: 'iss.|dated|issued',
  parcelNumber: 'parcel|lot|tax lot|APN|Par.',
  approvedOn: "appr.|OK|final|insp.|approved|ok'd",
  installer: 'by|inst.|contr.',
  soilTexture: 'soil',
  percRateMpi: 'perc',
  bedrooms: 'BR',
  owner: 'to|for|own.',
  address: 'at|loc.',
}
