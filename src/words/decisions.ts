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
    follows: 'The record says something else from now on. The parcel is compared again.',
    done: 'Record corrected',
  },
  accept: {
    choice: 'Accept it as it is',
    follows: 'Closes it. Nobody has to do anything.',
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
    choice: 'Ask for another measurement',
    follows: 'Stays open with the firm until it has measured again.',
    done: 'Another measurement requested',
  },
}
