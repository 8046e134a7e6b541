import { visitFilePath } from '../../pages/visit/addresses.ts'
import { formOf } from '../../pages/visit/form/from-record.ts'
import { type KeptVisit, nameOf } from '../../pages/visit/sending/kept-visit.ts'
import type { Telling } from '../../pages/visit/sending/take-answer.ts'
import { keptFile } from './files.ts'
import { allVisits, photosOf } from './kept.ts'
import { type Round, sendVisit } from './send.ts'
import type { Floors } from './walk.ts'

export type Waiting = { readonly visit: KeptVisit; readonly photos: number }

/** What this account has on this phone that the service does not have yet. */
export async function waitingVisits(account: string): Promise<readonly Waiting[]> {
  const own = (await allVisits()).filter((visit) => visit.account === account)
  const counted = await Promise.all(
    own.map(async (visit) => ({
      visit,
      photos: (await photosOf(visit)).filter(({ trouble }) => trouble === null).length,
    })),
  )
  return counted.filter(
    ({ visit, photos }) => photos > 0 || (!visit.done && (visit.handIn || visit.change > visit.saved)),
  )
}

/** Sends a visit that is not the one on the screen. */
export async function sendOther(floors: Floors, visit: KeptVisit, onStep: () => void): Promise<Round> {
  const file = await keptFile(visitFilePath(visit.county, visit.parcel.number))
  // Without the parcel's file its parts can't be told apart, and opening the visit brings it.
  if (!file || file.account !== visit.account) return 'waiting'
  const { parts } = file.sheet
  const telling: Telling = {
    told: (record) => formOf(record, parts),
    tidy: (form) => {
      const { record } = floors.readForm(form)
      return record ? formOf(record, parts) : form
    },
  }
  const readable = ({ form }: KeptVisit): boolean => floors.readForm(form).record !== null
  return sendVisit(nameOf(visit), { telling, readable, onStep, onPhoto: onStep })
}

/** All of them, one after the other, as far as the signal carries. */
export async function sendOthers(
  floors: Floors,
  account: string,
  but: string | null,
  onStep: () => void,
): Promise<void> {
  for (const { visit } of await waitingVisits(account)) {
    if (nameOf(visit) === but) continue
    if ((await sendOther(floors, visit, onStep)) === 'no-signal') return
  }
}
