import type { InspectionPrepared } from '../../../operations/findings/prepare-inspection.ts'
import type { Photo } from '../../../store/photos.ts'
import { photoPath } from '../addresses.ts'
import { type Faults, formOnFile, readForm } from '../form/read.ts'
import { readableRecord } from '../form/readable.ts'
import type { InspectionForm } from '../form/typed.ts'
import { liveOf } from '../live/live-of.ts'
import type { ReckonWith } from '../live/reckon.ts'
import { makeSheet } from '../sheet/make-sheet.ts'
import type { InspectionSheet } from '../sheet/sheet.ts'
import { blankForm } from '../sheet/steps.ts'
import { momentInWords } from '../view/moment.ts'
import type { InspectionShown, PhotoShown } from '../view/shown.ts'

export const sheetOf = (county: string, prepared: InspectionPrepared): InspectionSheet =>
  makeSheet({
    county,
    ...prepared,
    serves: (prepared.input.system?.serves ?? []).map(({ parcel }) => parcel),
  })

/** The draft as it is saved; a fresh form where there is none. */
export const savedForm = ({ draft, input }: InspectionPrepared, sheet: InspectionSheet): InspectionForm =>
  draft ? formOnFile(draft.record, sheet.parts) : blankForm(sheet, input.asOf)

/** A form as it would come back once saved, so that `03` and 3, or a way left unsaid, are no difference. */
export function tidyForm(form: InspectionForm, sheet: InspectionSheet): InspectionForm {
  const { record } = readForm(form)
  return record ? formOnFile(record, sheet.parts) : form
}

export const reckonWith = ({ input, draft }: InspectionPrepared, firm: string): ReckonWith => ({
  ...input,
  findings: draft?.id ?? 'draft',
  firm,
})

type Over = {
  readonly form?: InspectionForm
  readonly faults?: Faults
  readonly notice?: string | null
  readonly asks?: boolean
}

/** A step as the service shows it by itself: what is saved, or what came back with its faults. */
export function shownBy(
  prepared: InspectionPrepared,
  sheet: InspectionSheet,
  { step, firm }: { readonly step: string; readonly firm: string },
  { form = savedForm(prepared, sheet), faults = {}, notice = null, asks = false }: Over = {},
): InspectionShown {
  const { draft, photos } = prepared
  const record = readableRecord(form, readForm(form))
  return {
    sheet,
    form,
    step,
    faults,
    ...liveOf(sheet, form, step, record, reckonWith(prepared, firm)),
    draft: draft && { id: draft.id, revision: draft.revision },
    photos: photos.map((photo) => photoShown(sheet.county, photo)),
    kept: draft ? `Saved ${momentInWords(draft.changedAt.toISOString())}.` : 'Not saved yet.',
    notice,
    asks,
  }
}

export const photoShown = (county: string, { id, component, takenAt, addedAt }: Photo): PhotoShown => ({
  id,
  component,
  src: photoPath(county, id, true),
  taken: momentInWords(takenAt ?? addedAt.toISOString()),
  says: 'sent',
})
