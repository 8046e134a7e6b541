import type { RuleBook } from '../../../rules/book.ts'
import type { InspectionFile } from '../file.ts'
import { formOf } from '../form/from-record.ts'
import type { Faults, ReadForm } from '../form/read.ts'
import type { InspectionForm } from '../form/typed.ts'
import type { LiveStep } from '../live/live-of.ts'
import { NOTHING_YET } from '../live/nothing-yet.ts'
import type { KeptInspection } from '../sending/kept-inspection.ts'
import type { Telling } from '../sending/take-answer.ts'
import { stepsOf } from '../sheet/steps.ts'
import type { Going } from '../view/kept-words.ts'
import type { PhotoShown } from '../view/shown.ts'
import type { KeptPhoto } from './kept.ts'

export type Reckoning = typeof import('./reckoning.ts')

/** All that the form on this phone goes by. One of it, changed as things happen. */
export type Walk = {
  readonly root: HTMLElement
  file: InspectionFile
  inspection: KeptInspection
  /** As it stands in the fields, a moment before it is kept. */
  form: InspectionForm
  dirty: boolean
  /** Counts what was typed, so that a slow write does not pass for the newest. */
  edits: number
  step: string
  reckoning: Reckoning | null
  book: RuleBook | null
  going: Going
  /** Photos on this phone, and those that the service has. */
  shots: readonly KeptPhoto[]
  sent: readonly PhotoShown[]
  /** Fields whose fault may show: somebody has left them, or asked to go on. */
  readonly touched: Set<string>
  /** The faults that somebody was stopped for and may go on with. */
  warned: string
  asks: boolean
  /** Somebody has looked back over it all: from then on what is left unsaid shows at its field, sent or not. */
  reviewed: boolean
  notice: string | null
}

export const readWalk = ({ reckoning, form }: Walk): ReadForm =>
  reckoning ? reckoning.readForm(form) : { record: null, faults: {} }

/** What the inspection comes to as it stands; nothing before the reckoning and the rules are here. */
export function reckonWalk(
  { reckoning, book, file, inspection, form, step }: Walk,
  read: ReadForm,
): LiveStep {
  if (!reckoning || !book) return { live: NOTHING_YET, differences: [], holds: {} }
  const given = { ...file.given, book, findings: inspection.base?.id ?? 'draft' }
  return reckoning.liveOf(file.sheet, form, step, reckoning.readableRecord(form, read), given)
}

/** What the service would ask for before it takes the inspection; nothing while something in it can't be read. */
export function unsaidInWalk(
  { reckoning, book, file, inspection, form }: Walk,
  { record }: ReadForm,
): Faults {
  if (!reckoning || !book || record === null) return {}
  const given = { ...file.given, book, findings: inspection.base?.id ?? 'draft' }
  return reckoning.unsaidFaults(record, form, given)
}

/** All faults that show: of fields that were left and, once somebody has looked back over it all, what is unsaid. */
export function faultsOfWalk(walk: Walk, read: ReadForm): Faults {
  const shown = faultsShown(walk, read.faults)
  if (!walk.reviewed) return shown
  const unsaid = unsaidInWalk(walk, read)
  const steps = new Set([...Object.keys(unsaid), ...Object.keys(shown)])
  return Object.fromEntries([...steps].map((step) => [step, { ...unsaid[step], ...shown[step] }]))
}

/** The faults that may show on a step: of the fields somebody has left. Elsewhere all do. */
export const faultsShown = ({ touched, step }: Walk, faults: Faults): Faults =>
  Object.fromEntries(
    Object.entries(faults).flatMap(([at, fields]) => {
      if (at !== step) return [[at, fields]]
      const shown = Object.entries(fields).filter(([field]) => touched.has(`${at}/${field}`))
      return shown.length > 0 ? [[at, Object.fromEntries(shown)]] : []
    }),
  )

export const faultySteps = ({ file, form }: Walk, faults: Faults): readonly string[] =>
  stepsOf(file.sheet, form)
    .filter(({ name }) => faults[name] !== undefined)
    .map(({ title }) => title)

export const tellingOf = ({ file, reckoning }: Walk): Telling => ({
  told: (record) => formOf(record, file.sheet.parts),
  tidy: (form) => {
    const record = reckoning?.readForm(form).record
    return record ? formOf(record, file.sheet.parts) : form
  },
})
