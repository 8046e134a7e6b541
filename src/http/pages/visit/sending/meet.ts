import type { VisitFile } from '../file.ts'
import { blankForm } from '../sheet/steps.ts'
import { clashes, type Side, settled } from './clashes.ts'
import { type Base, beginKept, type KeptVisit } from './kept-visit.ts'
import { amendment, look } from './next-request.ts'
import type { Telling } from './take-answer.ts'

/** A visit that this phone has not met yet: the draft that the service has, else a form with nothing in it. */
export function newKept(file: VisitFile, today: string, newKey: () => string, now: string): KeptVisit {
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
  visit: KeptVisit,
  { draft }: Pick<VisitFile, 'draft'>,
  { tidy }: Pick<Telling, 'tidy'>,
): KeptVisit {
  const { base, request, other, done, change, saved } = visit
  if (request || other || done) return visit
  if (!draft) return base ? { ...visit, request: look(visit, base.id) } : visit
  if (base && draft.id === base.id && draft.revision === base.revision) return visit
  const theirs: Base = { id: draft.id, revision: draft.revision, form: draft.form }
  if (change === saved) return { ...visit, base: theirs, form: draft.form }
  if (clashes(tidy(visit.form), draft.form, null).length === 0)
    return { ...visit, base: theirs, saved: change }
  return { ...visit, other: { base: theirs, handedIn: false, at: draft.changedAt } }
}

/** After a person has chosen, line by line, out of two copies. */
export function settle(
  visit: KeptVisit,
  chosen: (clash: string) => Side,
  { tidy }: Pick<Telling, 'tidy'>,
  now: string,
): KeptVisit {
  const { other } = visit
  if (!other) return visit
  const form = settled(tidy(visit.form), other.base.form, chosen)
  const change = visit.change + 1
  const same = clashes(form, other.base.form, null).length === 0
  const weighed: KeptVisit = {
    ...visit,
    form,
    other: null,
    trouble: null,
    keptAt: now,
    change,
    base: other.base,
  }
  if (!other.handedIn) return { ...weighed, saved: same ? change : visit.saved }
  if (same) return { ...weighed, saved: change, done: { findings: other.base.id, status: null, at: now } }
  return { ...weighed, base: null, request: amendment({ ...weighed, base: null }, other.base.id) }
}
