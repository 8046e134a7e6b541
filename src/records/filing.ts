/** What can be changed about how a permit is filed. `restore` undoes `void`, `separate` undoes `merge`, another move a move. */
export const FILING_ACTS = ['move', 'void', 'restore', 'merge', 'separate'] as const
export type FilingAct = (typeof FILING_ACTS)[number]

/** Void and merged permits build nothing; they stay, and are shown as what they are. */
export const PERMIT_STANDINGS = ['in-file', 'void', 'merged'] as const
export type PermitStanding = (typeof PERMIT_STANDINGS)[number]

/** Why, from a closed list for each act. `other` needs the reviewer's own words beside it. */
export const FILING_REASONS = {
  move: [
    'parcel-misread',
    'filed-in-wrong-folder',
    'address-mixed-up',
    'lot-split-since',
    'moved-in-error',
    'other',
  ],
  void: ['never-built', 'canceled', 'expired', 'entered-in-error', 'not-a-septic-permit', 'other'],
  restore: ['voided-in-error', 'new-evidence', 'other'],
  merge: ['scanned-twice', 'copy-of-the-original', 'entered-twice', 'imported-and-entered', 'other'],
  separate: ['merged-in-error', 'two-permits-after-all', 'other'],
} as const satisfies { readonly [A in FilingAct]: readonly string[] }
export type FilingReason<A extends FilingAct = FilingAct> = (typeof FILING_REASONS)[A][number]
