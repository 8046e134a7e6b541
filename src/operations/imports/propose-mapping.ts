import { COMPONENT_FIELDS } from '../../catalog/component-fields.ts'
import type { Fields } from '../../catalog/field.ts'
import { canonicalParcelNumber, type ParcelNumberFormat } from '../../reading/parcel-number.ts'
import { PERMIT_KINDS } from '../../records/permit.ts'
import type { ColumnMeaning, ImportHead, ImportKind, Mapping } from '../../store/imports.ts'
import { fieldOfTarget, isTarget, plainHeading, TARGETS } from './kinds.ts'

/** Columns that this service adds to the rejected rows it returns for correction; skipped when they are uploaded again. */
export const ADDED_COLUMNS = ['line', 'to fix'] as const

/** What stands in a heading for a component; longest first. */
const PARTS: readonly (readonly [RegExp, string])[] = [
  [/pump(ing)? ?(chamber|tank)/, 'pump-chamber'],
  [/tank|septic/, 'tank'],
  [/seepage ?pit|dry ?well|\bpit\b/, 'seepage-pit'],
  [/trench|lateral|leach ?line/, 'trench'],
  [/\bbed\b/, 'bed'],
  [/effluent ?line|outlet ?line/, 'effluent-line'],
  [/building ?sewer|house ?sewer/, 'building-sewer'],
  [/d-?box|distribution ?box/, 'distribution-box'],
  [/\bwell\b/, 'well'],
]
/** What stands in a heading for a field of a component; longest first, so that `liquid depth` is no `depth`. */
const FIELDS: readonly (readonly [RegExp, string])[] = Object.entries(COMPONENT_FIELDS as Fields)
  .flatMap(([name, { aliases = [] }]) => aliases.map((alias) => [alias, name] as const))
  .sort(([a], [b]) => b.length - a.length)
  .map(([alias, name]) => [new RegExp(alias.replaceAll(' ', ' ?')), name])
/** A unit that a heading carries: `Tank size (gal)`. */
const UNITS: readonly (readonly [RegExp, string])[] = [
  [/\b(gal|gals|gallons)\b/, 'gal'],
  [/\b(ft|feet)\b/, 'ft'],
  [/\b(in|inch|inches)\b/, 'in'],
  [/\b(m|meters|metres)\b/, 'm'],
]

/** Words that permit indexes use for what is done (common practice). */
const KIND_WORDS: readonly (readonly [RegExp, (typeof PERMIT_KINDS)[number]])[] = [
  [/abandon/i, 'abandonment'],
  [/repair|replace/i, 'repair'],
  [/alter|addition|modif|expan|upgrade/i, 'alteration'],
  [/new|install|construct/i, 'new'],
]

/** What each column seems to mean, by its heading and by what stands under it. For a person to check and correct. */
export function proposeMapping(kind: ImportKind, head: ImportHead, format: ParcelNumberFormat): Mapping {
  const taken = new Set<string>()
  const columns = head.headings.map((column, index) => {
    const cells = head.sample.map((row) => row[index] ?? '').filter((cell) => cell !== '')
    const to = targetOf(kind, column)
    const free = to !== null && !taken.has(to) ? to : null
    if (free !== null) taken.add(free)
    return meaning(kind, column, free, cells)
  })
  const parcel = kind === 'parcels' ? 'number' : 'parcel'
  if (!taken.has(parcel)) {
    const found = columnOfParcels(head, columns, format)
    if (found !== -1) columns[found] = { ...columns[found]!, to: parcel }
  }
  return { columns, always: kind === 'permits' && !taken.has('kind') ? { kind: 'new' } : {} }
}

function targetOf(kind: ImportKind, column: string): string | null {
  const plain = plainHeading(column)
  if (ADDED_COLUMNS.some((added) => plainHeading(added) === plain)) return null
  if (isTarget(kind, column)) return column
  const direct = TARGETS[kind].find(({ to, headings }) =>
    [to, ...headings].some((heading) => plainHeading(heading) === plain),
  )
  if (direct) return direct.to
  if (kind === 'parcels') return null
  const words = column.toLowerCase().replaceAll(/[_()./]+/g, ' ')
  const part = PARTS.find(([pattern]) => pattern.test(words))?.[1]
  const field = FIELDS.find(([pattern]) => pattern.test(words))?.[1]
  if (part === undefined || field === undefined) return null
  const to = `components.${part}.${field}`
  return isTarget(kind, to) ? to : null
}

function meaning(
  kind: ImportKind,
  column: string,
  to: string | null,
  cells: readonly string[],
): ColumnMeaning {
  const words = column.toLowerCase().replaceAll(/[_()./]+/g, ' ')
  const bare = cells.some((cell) => /^[\d,.]+$/.test(cell))
  const field = to === null ? undefined : fieldOfTarget(kind, to)
  const measured = field !== undefined && ['length', 'level', 'volume'].includes(field.value)
  const unit = measured && bare ? (UNITS.find(([pattern]) => pattern.test(words))?.[1] ?? null) : null
  return { column, to, unit, values: to === 'kind' ? kindValues(cells) : {} }
}

function kindValues(cells: readonly string[]): { readonly [written: string]: string } {
  const foreign = [...new Set(cells)].filter((cell) => !(PERMIT_KINDS as readonly string[]).includes(cell))
  return Object.fromEntries(
    foreign.flatMap((cell) => {
      const kind = KIND_WORDS.find(([pattern]) => pattern.test(cell))?.[1]
      return kind === undefined ? [] : [[cell, kind]]
    }),
  )
}

/** A column without a telling heading, in which at least four of five cells are parcel numbers of this county. */
function columnOfParcels(
  { sample }: ImportHead,
  columns: readonly ColumnMeaning[],
  format: ParcelNumberFormat,
): number {
  return columns.findIndex(({ to }, index) => {
    const cells = sample.map((row) => row[index] ?? '').filter((cell) => cell !== '')
    if (to !== null || cells.length === 0) return false
    return cells.filter((cell) => canonicalParcelNumber(cell, format).ok).length >= 0.8 * cells.length
  })
}

/** Headings as mappings are kept by: what this service added does not count. */
export const headingsKey = (headings: readonly string[]): string =>
  headings
    .map(plainHeading)
    .filter((heading) => !ADDED_COLUMNS.some((added) => plainHeading(added) === heading))
    .join(' ')
