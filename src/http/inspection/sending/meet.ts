import type { InspectionFile } from '../file.ts'
import { blankForm } from '../sheet/steps.ts'
import { clashes, type Side, settled } from './clashes.ts'
import { type Base, beginKept, type KeptInspection } from './kept-inspection.ts'
import { amendment, look } from './next-request.ts'
import type { Telling } from './take-answer.ts'

/** An inspection that this phone has not met yet: the draft that the service has, else a form with nothing in it. */
export function newKept(
  file: InspectionFile,
  today: string,
  newKey: () => string,
  now: string,
): KeptInspection {
  const { account, sheet, draft } = file
  const begun = { account, county: sheet.county, parcel: sheet.parcel }
  if (!draft) return beginKept({ ...begun, form: blankForm(sheet, today), base: null }, newKey, now)
  const { id, revision, form } = draft
  return beginKept({ ...begun, form, base: { id, revision, form } }, newKey, now)
}

/**
 * What this phone keeps meets what the service has now. With nothing of its own to lose the phone takes the service's
 * copy; with changes of its own the two are laid side by side.
 */
export function meet(
  inspection: KeptInspection,
  { draft }: Pick<InspectionFile, 'draft'>,
  { tidy }: Pick<Telling, 'tidy'>,
): KeptInspection {
  const { base, request, other, done, change, saved } = inspection
  if (request || other || done) return inspection
  if (!draft) return base ? { ...inspection, request: look(inspection, base.id) } : inspection
  if (base && draft.id === base.id && draft.revision === base.revision) return inspection
  const theirs: Base = { id: draft.id, revision: draft.revision, form: draft.form }
  if (change === saved) return { ...inspection, base: theirs, form: draft.form }
  if (clashes(tidy(inspection.form), draft.form, null).length === 0)
    return { ...inspection, base: theirs, saved: change }
  return { ...inspection, other: { base: theirs, handedIn: false, at: draft.changedAt } }
}

/** After a person has chosen, line by line, out of two copies. */
export function settle(
  inspection: KeptInspection,
  chosen: (clash: string) => Side,
  { tidy }: Pick<Telling, 'tidy'>,
  now: string,
): KeptInspection {
  const { other } = inspection
  if (!other) return inspection
  const form = settled(tidy(inspection.form), other.base.form, chosen)
  const change = inspection.change + 1
  const same = clashes(form, other.base.form, null).length === 0
  const weighed: KeptInspection = {
    ...inspection,
    form,
    other: null,
    trouble: null,
    keptAt: now,
    change,
    base: other.base,
  }
  if (!other.handedIn) return { ...weighed, saved: same ? change : inspection.saved }
  if (same) return { ...weighed, saved: change, done: { findings: other.base.id, status: null, at: now } }
  return { ...weighed, base: null, request: amendment({ ...weighed, base: null }, other.base.id) }
}
