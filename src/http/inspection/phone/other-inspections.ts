import { inspectionFilePath } from '../addresses.ts'
import { formOf } from '../form/from-record.ts'
import { type KeptInspection, nameOf } from '../sending/kept-inspection.ts'
import type { Telling } from '../sending/take-answer.ts'
import { keptFile } from './files.ts'
import { allInspections, photosOf } from './kept.ts'
import { type Round, sendInspection } from './send.ts'
import type { Reckoning } from './walk.ts'

export type Waiting = { readonly inspection: KeptInspection; readonly photos: number }

/** What this account has on this phone that the service does not have yet. */
export async function waitingInspections(account: string): Promise<readonly Waiting[]> {
  const own = (await allInspections()).filter((inspection) => inspection.account === account)
  const counted = await Promise.all(
    own.map(async (inspection) => ({
      inspection,
      photos: (await photosOf(inspection)).filter(({ trouble }) => trouble === null).length,
    })),
  )
  return counted.filter(
    ({ inspection, photos }) =>
      photos > 0 || (!inspection.done && (inspection.handIn || inspection.change > inspection.saved)),
  )
}

/** Sends an inspection that is not the one on the screen. */
export async function sendOther(
  reckoning: Reckoning,
  inspection: KeptInspection,
  onStep: () => void,
): Promise<Round> {
  const file = await keptFile(inspectionFilePath(inspection.county, inspection.parcel.number))
  // Without the parcel's file its parts can't be told apart, and opening the inspection brings it.
  if (!file || file.account !== inspection.account) return 'waiting'
  const { parts } = file.sheet
  const telling: Telling = {
    told: (record) => formOf(record, parts),
    tidy: (form) => {
      const { record } = reckoning.readForm(form)
      return record ? formOf(record, parts) : form
    },
  }
  const readable = ({ form }: KeptInspection): boolean => reckoning.readForm(form).record !== null
  return sendInspection(nameOf(inspection), { telling, readable, onStep, onPhoto: onStep })
}

/** All of them, one after the other, as far as the signal carries. */
export async function sendOthers(
  reckoning: Reckoning,
  account: string,
  but: string | null,
  onStep: () => void,
): Promise<void> {
  for (const { inspection } of await waitingInspections(account)) {
    if (nameOf(inspection) === but) continue
    if ((await sendOther(reckoning, inspection, onStep)) === 'no-signal') return
  }
}
