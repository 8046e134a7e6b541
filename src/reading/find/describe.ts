import { excerpt } from '../layout/strip.ts'
import { type Ask, MEASURE_ASKS, type SubjectKind } from '../lexicon/sense.ts'
import type { Doubt } from '../proposal.ts'
import type { Statement } from '../statement.ts'
import { findCounts, findNumbers } from '../values/count.ts'
import { type Found, matches } from '../values/found.ts'
import { findAddresses, findParcelNumbers } from '../values/identifiers.ts'
import { findLengths } from '../values/length.ts'
import { findVolumes } from '../values/volume.ts'
import type { Mention } from './groups.ts'
import type { ReadingContext } from './read-value.ts'
import type { SubjectAt } from './subjects.ts'
import { isTaken, orderOf, type TextUnit } from './text-unit.ts'
import { findSense } from './vocabulary.ts'

const VESSELS = new Set<SubjectKind>(['tank', 'pump-chamber', 'cesspool'])
const PIPES = new Set<SubjectKind>(['building-sewer', 'effluent-line'])
const isMeasure = (ask: Ask): boolean => (MEASURE_ASKS as readonly Ask[]).includes(ask)

/** What a text says without a label: `1,000 gal conc.`, `5' x 9' x 4'`, `three leach lines`, `4 in cast iron`. */
export function described(unit: TextUnit, subjectAt: SubjectAt, context: ReadingContext): Statement[] {
  const { text } = unit.strip
  const statements: Statement[] = []
  const add = (ask: Ask, found: Found, fit: number, doubts: readonly Doubt[] = []): void => {
    if (isTaken(unit, found.start, found.end)) return
    const subject = subjectAt(unit, found.start, { end: found.end, asks: [ask] })
    if (isMeasure(ask) && !subject) return
    unit.taken.push({ start: found.start, end: found.end })
    statements.push({
      ask,
      kind: isMeasure(ask) ? subject!.kind : null,
      ordinal: isMeasure(ask) ? subject!.ordinal : null,
      value: found.value,
      excerpt: excerpt(unit.strip, found.start, found.end),
      fit: found.fit * fit * (subject?.as === 'running' ? 0.8 : 1),
      how: unit.prose ? 'prose' : 'label',
      doubts: [...found.doubts, ...doubts],
      order: orderOf(unit, found.start),
    })
  }
  const kindAt = (found: Found): SubjectKind | null =>
    subjectAt(unit, found.start, { end: found.end })?.kind ?? null

  for (const { found, ask, doubts } of dimensionsIn(text, kindAt)) add(ask, found, 0.92, doubts)
  for (const found of findVolumes(text)) {
    const kind = kindAt(found)
    if (kind && VESSELS.has(kind)) add('capacity', found, 0.95)
  }
  for (const mention of unit.groups.filter((group): group is Mention => group.is === 'mention')) {
    const count = countBefore(text, mention)
    if (count && !isTaken(unit, count.start, count.end)) add('count', count, 0.95)
  }
  for (const mention of unit.groups.filter((group): group is Mention => group.is === 'mention')) {
    const count = countAfter(text, mention)
    if (count && !isTaken(unit, count.start, count.end)) add('count', count, 0.92)
  }
  for (const found of repeats(text)) {
    const kind = kindAt(found)
    if (kind && !PIPES.has(kind)) add('count', found, 0.9)
  }
  for (const found of findSense(text, 'material', context.misread)) {
    const subject = subjectAt(unit, found.start, { end: found.end })
    // A material alone on a line under some heading is too little; beside its component it is enough.
    if (subject && (subject.as === 'text' || subject.as === 'line') && !insideGroup(unit, found))
      add('material', found, 0.9)
  }
  for (const found of findLengths(text)) {
    const kind = kindAt(found)
    if (
      kind &&
      PIPES.has(kind) &&
      /in$/.test(String(found.value)) &&
      Number.parseFloat(String(found.value)) <= 12
    )
      add('pipeDiameter', found, 0.9)
  }
  for (const [ask, unitPattern] of [
    ['designFlowGpd', /^\s*(?:gpd|gal(?:lon)?s?\.?\s*(?:per|\/|a)\s*day)/i],
    ['percRateMpi', /^\s*(?:mpi|min(?:ute)?s?\.?\s*(?:per|\/|an)\s*in)/i],
  ] as const) {
    const found = findNumbers(text, 0.2, 50_000).find(({ end }) => unitPattern.test(text.slice(end)))
    if (found) add(ask, found, 0.8)
  }
  for (const found of findParcelNumbers(text, context.format)) {
    if (text.slice(found.start, found.end).includes(context.format.separator))
      add('parcelNumber', found, 0.85)
  }
  for (const found of findAddresses(text))
    add('address', found, /^\s*(?:re|at|site|property)\b|parcel/i.test(text) ? 0.75 : 0.5)
  // A heading or a sentence about the permit may say what work it allows.
  if (/permit|application|system/i.test(text)) {
    const found = findSense(text, 'work', context.misread)[0]
    if (found) add('kind', found, unit.prose ? 0.7 : 0.55)
  }
  return statements
}

const insideGroup = (unit: TextUnit, found: Found): boolean =>
  unit.groups.some((group) => found.start < group.end && found.end > group.start)

/** `three leaching trenches`, `(2) seepage pits`, `3 - leach lines`; not `1,000 gal tank` and not `No. 2 pit`. */
function countBefore(text: string, mention: Mention): Found | undefined {
  const ahead = text.slice(Math.max(0, mention.start - 24), mention.start)
  const shift = Math.max(0, mention.start - 24)
  const found = findCounts(ahead, 1, 30).at(-1)
  if (
    !found ||
    !/^[\s)@-]*(?:-|ea\.?|each|new|precast|concrete|perforated|parallel)?[\s-]*$/i.test(
      ahead.slice(found.end),
    )
  )
    return undefined
  if (/(?:no\.?|number|#|permit|sch|sdr|section)\s*$/i.test(ahead.slice(0, found.start))) return undefined
  return { ...found, start: found.start + shift, end: found.end + shift }
}

/** `Trenches: 3, each 60 ft long`, `Seepage pits - 2`: how many, right after the name; a measure is no number of them. */
function countAfter(text: string, mention: Mention): Found<number> | undefined {
  const named = text.slice(mention.start, mention.end)
  if (!/s$/i.test(named)) return undefined
  const match = /^\s*[:=-]\s*(\d{1,2})(?=\s*(?:$|[,;](?!\s?\d{3})|@|ea\b|each\b))/i.exec(
    text.slice(mention.end),
  )
  const value = Number(match?.[1])
  if (!match || value < 1 || value > 30) return undefined
  const end = mention.end + match[0].length
  return { start: end - match[1]!.length, end, value, fit: 1, doubts: [] }
}

/** `3 @ 60'`, `2 ea.`, `(2) 6' dia.`: how many there are, before what each is like. */
const repeats = (text: string): Found<number>[] =>
  matches(
    text,
    /(?<![\d.,/'"-])(?:(\d{1,2})\s*(?:@|ea\b\.?|each\b|pcs?\b)|\((\d{1,2})\)(?=\s*\d))/i,
    ([, before, bracketed]) => {
      const value = Number(before ?? bracketed)
      return value >= 1 && value <= 30 ? { value, fit: 1, doubts: [] } : undefined
    },
  )

type Dimension = { readonly found: Found<string>; readonly ask: Ask; readonly doubts: readonly Doubt[] }

const TIMES = /^\s*(?:(?:long|wide|deep|dia(?:m|meter)?\.?|l|w|d|in(?:side)?)\.?\s*)?(?:[xX×]|by)\s*$/

/** Lengths with `x` between them, each given its meaning by what they belong to. */
function dimensionsIn(text: string, kindAt: (found: Found) => SubjectKind | null): Dimension[] {
  const lengths = findLengths(text, (value) => (value <= 200 ? { unit: 'ft', sure: false } : null))
  const runs: Found<string>[][] = []
  for (const length of lengths) {
    const run = runs.at(-1)
    if (run && TIMES.test(text.slice(run.at(-1)!.end, length.start))) run.push(length)
    else runs.push([length])
  }
  return runs
    .filter((run) => run.length >= 2 && run.length <= 3)
    .flatMap((run) => meant(sharedUnit(run), kindAt(run[0]!), text))
}

/** `5 x 9 x 4 ft` names its unit once, at the end. */
function sharedUnit(run: readonly Found<string>[]): Found<string>[] {
  const last = run.at(-1)!
  const unit = last.doubts.length === 0 ? /(ft|in)$/.exec(last.value)?.[1] : undefined
  if (unit === undefined || run.some((found, index) => index < run.length - 1 && found.doubts.length === 0))
    return [...run]
  return run.map((found) => ({
    ...found,
    value: found.value.replace(/(?:ft|in)$/, unit),
    fit: 0.95,
    doubts: [],
  }))
}

const feetOf = (value: string): number =>
  /'/.test(value) ? Number.parseFloat(value) : Number.parseFloat(value) / (/in$/.test(value) ? 12 : 1)

const assumed = (says: string): Doubt[] => [{ kind: 'meaning-assumed', says, readings: [] }]

function meant(run: readonly Found<string>[], kind: SubjectKind | null, text: string): Dimension[] {
  const [first, second, third] = run
  const after = text.slice(run.at(-1)!.end)
  const dimension = (
    ask: Ask,
    found: Found<string> | undefined,
    doubts: readonly Doubt[] = [],
  ): Dimension[] => (found ? [{ ask, found, doubts }] : [])
  switch (kind) {
    case 'tank':
    case 'pump-chamber':
    case 'distribution-box': {
      const liquid = /^\s*(?:l\.?\s?d\b|liq)/i.test(after)
      const inside = /^\s*(?:high|inside h|overall)/i.test(after)
      return [
        ...dimension('length', first),
        ...dimension('width', second),
        ...dimension(
          inside ? 'insideHeight' : 'liquidDepth',
          third,
          liquid || inside
            ? []
            : assumed('the third dimension is taken as the liquid depth; the paper does not say so'),
        ),
      ]
    }
    case 'seepage-pit':
    case 'cesspool':
      if (third) return []
      return [
        ...dimension('diameter', first),
        ...dimension(
          'effectiveDepth',
          second,
          assumed('the depth is taken as the sidewall below the inlet; the paper does not say so'),
        ),
      ]
    case 'trench':
    case 'chambers':
    case 'bed':
    case 'mound':
    case 'drip-field':
    case 'absorption': {
      const [long, wide] = feetOf(first!.value) >= feetOf(second!.value) ? [first, second] : [second, first]
      return [
        ...dimension('length', long),
        ...dimension('width', wide),
        ...dimension(
          'effectiveDepth',
          third,
          assumed('the third dimension is taken as the depth of gravel; the paper does not say so'),
        ),
      ]
    }
    default:
      return []
  }
}
