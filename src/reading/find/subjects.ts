import { onlyKind, possibleAmong } from '../lexicon/compatible.ts'
import type { Ask, SubjectKind } from '../lexicon/sense.ts'
import type { Group, Mention } from './groups.ts'
import { soleMention, type TextUnit } from './text-unit.ts'

export type Subject = {
  readonly kind: SubjectKind
  readonly ordinal: number | null
  /** Named in the same text, on the same line, in a heading above, or last named somewhere above. */
  readonly as: 'text' | 'line' | 'heading' | 'running'
}

type Naming = Subject & { readonly unit: TextUnit; readonly start: number; readonly heading: boolean }

/** The component spoken of at a place; `end` lets what stands after it count; `asks` leaves out what can't have it. */
export type SubjectAt = (
  unit: TextUnit,
  start: number,
  options?: { readonly end?: number; readonly asks?: readonly Ask[] },
) => Subject | null

/**
 * Which component a place on the page speaks of, where its label does not say: what its words lead up to or have just
 * named, else what is named before it on the same line, else the heading above, else what was named last.
 */
export function subjectFinder(units: readonly TextUnit[]): SubjectAt {
  const naming = units.flatMap(namingIn)
  const byLine = naming.filter(({ unit }) => !unit.prose)
  return (unit, start, { end, asks = [] } = {}) => {
    const fits = ({ kind }: { readonly kind: SubjectKind }): boolean =>
      asks.length === 0 || possibleAmong(asks, kind)
    const mentions = unit.groups.filter((group): group is Mention => group.is === 'mention')
    if (end !== undefined) {
      const ahead = mentions.find((mention) => mention.start >= end)
      if (ahead && fits(ahead) && leadsUp(unit.strip.text.slice(end, ahead.start)))
        return subject(ahead, 'text')
    }
    const before = unit.groups
      .flatMap(nameIn)
      .filter(fits)
      .findLast((name) => name.start <= start)
    if (before) return subject(before, 'text')
    if (unit.prose) {
      const first = mentions.find(fits)
      const earlier = naming.filter(fits).findLast((known) => known.unit.row < unit.row)
      return first ? subject(first, 'text') : earlier ? subject(earlier, 'running') : null
    }
    const onLine = byLine.findLast(
      (known) => known.unit.row === unit.row && known.unit !== unit && known.unit.place < unit.place,
    )
    if (onLine && fits(onLine)) return subject(onLine, 'line')
    const found = above(byLine, unit, units)
    if (found && fits(found)) return found
    const other = byLine.filter(fits).findLast((known) => known.unit.row < unit.row)
    if (other) return subject(other, 'running')
    const only = onlyKind(asks)
    return only ? { kind: only, ordinal: null, as: 'running' } : null
  }
}

/** A label that names its component (`Tank size`) names it for what follows, too. */
const nameIn = (
  group: Group,
): { readonly start: number; readonly kind: SubjectKind; readonly ordinal: number | null }[] =>
  group.is === 'mention'
    ? [group]
    : group.is === 'label' && group.kind !== null
      ? [{ start: group.start, kind: group.kind, ordinal: null }]
      : []

function namingIn(unit: TextUnit): Naming[] {
  const heading = !unit.prose && soleMention(unit) !== undefined
  return unit.groups.flatMap((group): Naming[] => {
    if (group.is === 'mention') return [{ unit, start: group.start, ...subject(group, 'text'), heading }]
    if (group.is === 'label' && group.kind !== null && !unit.prose)
      return [{ unit, start: group.start, kind: group.kind, ordinal: null, as: 'line', heading: false }]
    return []
  })
}

const subject = (
  { kind, ordinal }: { readonly kind: SubjectKind; readonly ordinal: number | null },
  as: Subject['as'],
): Subject => ({ kind, ordinal, as })

function above(naming: readonly Naming[], unit: TextUnit, units: readonly TextUnit[]): Subject | null {
  const earlier = naming.filter((known) => known.unit.row < unit.row)
  const last = earlier.at(-1)
  if (!last) return null
  const lone = earlier.findLast((known) => known.heading && !isBeside(known, earlier))
  const column = headingOfColumn(
    earlier.filter((known) => known.heading && isBeside(known, earlier)),
    unit,
    units,
  )
  if (column && (!lone || column.unit.row > lone.unit.row)) {
    const within = earlier.findLast(
      (known) =>
        known.unit.row > column.unit.row &&
        headingOfColumn(sideBySide(column, earlier), known.unit, units) === column,
    )
    return subject(within ?? column, within ? 'running' : 'heading')
  }
  return subject(last, last.heading ? 'heading' : 'running')
}

const sideBySide = (heading: Naming, naming: readonly Naming[]): Naming[] =>
  naming.filter((other) => other.heading && other.unit.row === heading.unit.row)
const isBeside = (heading: Naming, naming: readonly Naming[]): boolean =>
  sideBySide(heading, naming).length > 1

/**
 * Headings side by side each rule a column: where texts below begin flush with a heading, from there to the next;
 * where headings are centerd over their columns, the nearest one.
 */
function headingOfColumn(
  headings: readonly Naming[],
  unit: TextUnit,
  units: readonly TextUnit[],
): Naming | undefined {
  const row = headings.at(-1)?.unit.row
  const beside = headings.filter((heading) => heading.unit.row === row)
  if (beside.length < 2) return undefined
  const flush = beside.filter((heading) =>
    units.some((other) => other.row > heading.unit.row && Math.abs(other.box.x - heading.unit.box.x) < 0.012),
  )
  if (flush.length === beside.length)
    return beside.findLast((heading) => heading.unit.box.x <= unit.box.x + 0.02) ?? beside[0]
  const center = ({ box }: TextUnit): number => box.x + box.w / 2
  return [...beside].sort(
    (a, b) => Math.abs(center(a.unit) - center(unit)) - Math.abs(center(b.unit) - center(unit)),
  )[0]
}

const LEADING =
  /^(?:precast|pre|cast|reinforced|concrete|conc|block|steel|metal|iron|ci|pvc|sch|schedule|40|sdr|35|abs|clay|vitrified|tile|fiberglass|polyethylene|poly|plastic|brick|stone|wood|redwood|cement|new|existing|round|rectangular|cylindrical|perforated|two|one|single|double|three|compartments?|gallons?|gals?|gal|inch|inches|in|ft|foot|feet|diameter|dia|diam|deep|long|wide|by|x|each|orangeburg|solid|gravity|\d+)$/i

/** Nothing but adjectives of the trade: what stands before it belongs to what comes after. */
const leadsUp = (text: string): boolean =>
  !/[.;:]/.test(text) &&
  text
    .split(/[\s,()'"-]+/)
    .filter((word) => word !== '')
    .every((word) => LEADING.test(word))
