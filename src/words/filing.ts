import type { FilingAct, FilingReason, PermitStanding } from '../records/filing.ts'

/** A filing change as it is told to whoever works with the file. */
export const FILING_ACT_WORDS: { readonly [A in FilingAct]: string } = {
  move: 'moved to another parcel',
  void: 'voided',
  restore: 'restored',
  merge: 'merged into another permit',
  separate: 'separated again',
}

export const FILING_REASON_WORDS: { readonly [R in FilingReason]: string } = {
  'parcel-misread': 'the parcel number was misread',
  'filed-in-wrong-folder': 'it was filed in the wrong folder',
  'address-mixed-up': 'two addresses were mixed up',
  'lot-split-since': 'the lot was split, and the system is on the other one',
  'moved-in-error': 'it was moved in error',
  'never-built': 'the work was never done',
  canceled: 'the permit was canceled',
  expired: 'the permit expired before any work',
  'entered-in-error': 'it was entered in error',
  'not-a-septic-permit': 'it is not a septic permit',
  'voided-in-error': 'it was voided in error',
  'new-evidence': 'there is new evidence',
  'scanned-twice': 'the same document was scanned twice',
  'copy-of-the-original': 'one document is a copy of the other',
  'entered-twice': 'it was entered twice',
  'imported-and-entered': 'it was both imported and entered',
  'merged-in-error': 'they were merged in error',
  'two-permits-after-all': 'they are two permits after all',
  other: 'another reason',
}

export const PERMIT_STANDING_WORDS: { readonly [S in PermitStanding]: string } = {
  'in-file': 'on file',
  void: 'void',
  merged: 'merged into another permit',
}
