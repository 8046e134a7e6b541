import { type Bounds, type Field, type FieldOf, useOn } from '../../catalog/field.ts'
import type { ComponentKind } from '../../catalog/kinds.ts'
import { parseLength } from '../../measure/parse/length.ts'
import { printNumber, printSignificant } from '../../measure/print/number.ts'
import { isWithin, marked, unmarked } from './marked.ts'

/**
 * A question about a value: as a file or a program is asked it, with how to say in writing that it is meant; and as a form
 * asks it, which has a box to tick for what was written.
 */
export type Asked = { readonly says: string; readonly asks: string; readonly written: string }

export const askedOf = (written: string, asks: string, it = written): Asked => ({
  says: `${asks} If ${it} is right, write "${marked(written)}"`,
  asks,
  written,
})

/** A fault as an issue of a schema: a question carries what a form asks in its own way. */
export const issueOf = (it: string | Asked) =>
  typeof it === 'string'
    ? { code: 'custom' as const, message: it }
    : {
        code: 'custom' as const,
        message: it.says,
        params: { kind: 'unusual', asks: it.asks, written: it.written },
      }

/** What to ask about a value beyond its bounds: what else it may be, and how to say that it is meant. */
export function askAbout(
  written: string,
  bounds: Bounds,
  unit: string,
  readAs: readonly string[] = [],
): Asked {
  const [least, most] = bounds.map((bound) => printSignificant(bound, 3))
  const usual = `Usual is ${least} to ${most}${unit === '' ? '' : ` ${unit}`}.`
  const meant = readAs[0] === undefined ? usual : `Did you mean ${readAs[0]}?`
  return askedOf(written, `${written}? ${meant}`)
}

/** The same figure with another unit, where that is a usual length: `84 ft` may be `84 in`. */
export function otherUnits(written: string, bounds: Bounds): readonly string[] {
  const figure = /^\s*(\d[\d,]*(?:\.\d+)?)\s*(?:[a-z'"′″’”]+\.?|['′’]\s*-?\s*0\s*["″”]?)\s*$/i.exec(
    written,
  )?.[1]
  if (figure === undefined) return []
  return ['in', 'ft', 'm'].flatMap((unit) => {
    const other = parseLength(`${figure} ${unit}`)
    const meant = `${figure} ${unit}`
    // A level under its invert is a negative one: the same words are not another reading of it.
    return other.ok && meant !== written.trim() && isWithin(bounds, other.value.ft) ? [meant] : []
  })
}

/** A length or a volume as it is held. */
export type Measured = ({ readonly ft: number } | { readonly gal: number }) & {
  readonly asWritten: string
}
type MeasuredField = FieldOf<'length'> | FieldOf<'level'> | FieldOf<'volume'>

const figureOf = (value: Measured): number => ('ft' in value ? value.ft : value.gal)

/** Why a value can't be at all; null where it can. */
export function beyondPossible(
  { possible: [least, most], unit, ...field }: MeasuredField,
  value: Measured,
): string | null {
  const figure = figureOf(value)
  if ('open' in field && field.open === 'least' && figure <= least)
    return `${unmarked(value.asWritten).text} is no size: leave it out where it is not known`
  if (figure >= least && figure <= most) return null
  const beyond = least < 0 ? 'further' : 'more'
  return `is ${beyond} than ${printNumber(most)} ${unit}: check the number and the unit`
}

/** Whether what is usual of a field hangs on the kind of component. */
export const isByKind = ({ on }: MeasuredField): boolean =>
  on?.some(({ plausible }) => plausible !== undefined) ?? false

/** What to ask about a value that is not usual, of a component of this kind where the field goes by it; null for no question. */
export function unusualValue(field: MeasuredField, value: Measured, kind?: ComponentKind): Asked | null {
  const bounds = (kind === undefined ? undefined : useOn(field, kind)?.plausible) ?? field.plausible
  const { text, checked } = unmarked(value.asWritten)
  if (bounds === undefined || checked || isWithin(bounds, figureOf(value))) return null
  return askAbout(text, bounds, field.unit, 'ft' in value ? otherUnits(text, bounds) : [])
}

export const isMeasured = (value: unknown): value is Measured =>
  typeof value === 'object' && value !== null && 'asWritten' in value && ('ft' in value || 'gal' in value)

/** What to ask about a value whose field goes by the kind of component; null for no question. */
export const unusualOf = (field: Field, value: Measured, kind: ComponentKind | undefined): Asked | null =>
  (field.value === 'length' || field.value === 'level' || field.value === 'volume') &&
  isByKind(field) &&
  beyondPossible(field, value) === null
    ? unusualValue(field, value, kind)
    : null
