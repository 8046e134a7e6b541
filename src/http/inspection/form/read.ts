import { fieldAt } from '../../../catalog/catalog.ts'
import { faultsAcross } from '../../../reading/entry/components.ts'
import { findingsOf, foundEntry, inspectionEntry, OWN_NAMES } from '../../../reading/entry/findings.ts'
import type { EntryIssue } from '../../../reading/entry/issues.ts'
import { readEntry } from '../../../reading/entry/read-entry.ts'
import type { FindingsRecord, FoundComponent } from '../../../records/findings.ts'
import type { FormFault } from '../../../words/form-faults.ts'
import { componentEntryOf, inspectionEntryOf, isAnswered } from './entry.ts'
import { formOf } from './from-record.ts'
import { filled, type InspectionForm, type PartForm, rowsIn, type Typed } from './typed.ts'

/** What is wrong in the fields of each step. `start` and `review` are steps too. */
export type Faults = { readonly [step: string]: { readonly [field: string]: FormFault } }

export type ReadForm = {
  /** Null while something in the form can't be read. */
  readonly record: FindingsRecord | null
  readonly faults: Faults
}

type Fault = { readonly field: string; readonly fault: FormFault }
/** One step as it was read; null while something in it can't be. */
type Reading<T> = { readonly value: T | null; readonly faults: readonly Fault[] }
type Inspection = Parameters<typeof findingsOf>[0]

/** A step is read once for as long as nothing in it changes: forms are never changed in place. */
const starts = new WeakMap<Typed, Reading<Inspection>>()
const parts = new WeakMap<PartForm, Reading<FoundComponent>>()

/** Reads a form by the same parsers as everything else that is typed; nothing of it is written a second time here. */
export function readForm({ start, parts: all, notes }: InspectionForm): ReadForm {
  const answered = all.filter(isAnswered)
  const house = once(starts, start, () => readStart(start))
  const read = answered.map((part) => once(parts, part, () => readPart(part)))
  const said = readEntry(NOTES, inspectionEntryOf({ notes }))
  const { reference, cornerA } = inspectionEntryOf(start)
  const across = faultsAcross({ components: answered.map(componentEntryOf), reference, cornerA }, OWN_NAMES)

  const faults: Record<string, Record<string, FormFault>> = {}
  const add = (step: string, { field, fault }: Fault): void => {
    faults[step] = { [field]: fault, ...faults[step] }
  }
  read.forEach(({ faults: own }, at) => {
    for (const it of own) add(answered[at]!.id, it)
  })
  for (const it of house.faults) add('start', it)
  if (!said.ok) for (const { message } of said.error) add('review', fault('notes', message))
  for (const { path, message, kind } of across)
    add(
      answered[path[1]]!.id,
      kind
        ? { field: 'tie.a', fault: { why: kind } }
        : fault(path[2] === 'fix' ? 'fix.lat' : path[2], message),
    )

  const found = read.flatMap(({ value }) => (value ? [value] : []))
  const isWhole = Object.keys(faults).length === 0 && house.value !== null && said.ok
  return { record: isWhole ? findingsOf({ ...house.value, ...said.value }, found) : null, faults }
}

/** The form that findings on file would have been typed into: it is not read again, only what is changed in it. */
export function formOnFile(
  { components, ...inspection }: FindingsRecord,
  sheet: Parameters<typeof formOf>[1],
): InspectionForm {
  const form = formOf({ ...inspection, components }, sheet)
  starts.set(form.start, { value: inspection as Inspection, faults: [] })
  form.parts.forEach((part, at) => {
    parts.set(part, { value: { ...components[at]!, key: part.key }, faults: [] })
  })
  return form
}

function once<K extends object, V>(known: WeakMap<K, V>, key: K, read: () => V): V {
  const value = known.get(key) ?? read()
  known.set(key, value)
  return value
}

const fault = (field: string, says: string): Fault => ({ field, fault: { why: 'says', says } })

const NOTES = inspectionEntry.pick({ notes: true })
const START = inspectionEntry.omit({ notes: true })

function readStart(start: Typed): Reading<Inspection> {
  const { notes: _, ...entry } = inspectionEntryOf(start)
  const read = readEntry(START, entry)
  if (read.ok) return { value: { ...read.value, notes: null }, faults: [] }
  return { value: null, faults: read.error.map((issue) => placed(issue, 'no-day')) }
}

function readPart(part: PartForm): Reading<FoundComponent> {
  const read = readEntry(foundEntry, componentEntryOf(part))
  const faults = [
    ...unfinished(part),
    ...(read.ok ? [] : read.error.map((issue) => placed(issue, 'nothing', part.typed))),
  ]
  return { value: read.ok && faults.length === 0 ? (read.value as FoundComponent) : null, faults }
}

const LEVELS = ['levelAboveOutlet', 'levelAboveInlet'] as const

/** What only the form can know: that a pair of fields was filled by half. */
function unfinished({ typed }: PartForm): readonly Fault[] {
  const said = filled(typed)
  if (said.outcome === undefined) return [{ field: 'outcome', fault: { why: 'no-outcome' } }]
  if (said.outcome !== 'found') return []
  const oneTie = (said['tie.a'] === undefined) !== (said['tie.b'] === undefined)
  return [
    ...LEVELS.flatMap((field): readonly Fault[] => {
      const side = said[`${field}.side`]
      if (said[field] !== undefined) return side ? [] : [{ field, fault: { why: 'no-side' } }]
      return side === 'above' || side === 'below' ? [{ field, fault: { why: 'no-distance', side } }] : []
    }),
    ...(oneTie ? [{ field: said['tie.a'] ? 'tie.b' : 'tie.a', fault: { why: 'one-tie' } } as const] : []),
  ]
}

/** `tie/b/length` was typed in `tie.b`, `levelAboveOutlet/below` in itself. */
function placed(
  { pointer, message, kind, asked }: EntryIssue,
  nothing: 'nothing' | 'no-day',
  typed: Typed = {},
): Fault {
  const [first = '', second, third] = pointer.slice(1).split('/')
  const rows = fieldAt('component', first)
  if (second !== undefined && rows?.value === 'rows') {
    const at = rowsIn(typed, first)[Number(second)] ?? second
    const row = `${first}.${at}.${third ?? Object.keys(rows.parts)[0]}`
    return kind === 'nothing' ? { field: row, fault: { why: nothing } } : says(row, message, asked)
  }
  const isGroup = second !== undefined && ['tie', 'fix', 'reference', 'cornerA', 'cornerB'].includes(first)
  const field = isGroup ? `${first}.${second}` : first
  const isDay = nothing === 'no-day' && first !== 'inspectedOn'
  if (kind !== 'nothing' || isDay) return says(field, message, asked)
  return { field, fault: { why: nothing } }
}

const says = (field: string, message: string, asked: EntryIssue['asked']): Fault =>
  asked ? { field, fault: { why: 'unusual', ...asked } } : fault(field, message)
