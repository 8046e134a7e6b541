import type { DecisionAction } from '../records/decision.ts'

type Words = {
  /** As a choice on a form. */
  readonly choice: string
  /** What follows from choosing it. */
  readonly follows: string
  /** As something done. */
  readonly done: string
}

export const DECISION_WORDS: { readonly [A in DecisionAction]: Words } = {
  'correct-record': {
    choice: 'Correct the record',
    follows: 'Changes what the permit is read as. The parcel is compared again.',
    done: 'Record corrected',
  },
  accept: {
    choice: 'Accept as is',
    follows: 'Closes this difference. Nobody has to do anything.',
    done: 'Accepted',
  },
  'require-permit': {
    choice: 'Require a permit',
    follows: 'Stays open with the owner until the permit is on file.',
    done: 'Permit required',
  },
  'require-repair': {
    choice: 'Require a repair',
    follows: 'Stays open with the owner until an inspection finds it repaired.',
    done: 'Repair required',
  },
  'ask-remeasurement': {
    choice: 'Require another measurement',
    follows: 'Stays open until the firm has measured again.',
    done: 'Another measurement required',
  },
}
