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
  'waive-seen-before': {
    choice: 'Waive it: seen before',
    follows: 'An earlier report or the county’s own visit shows it. Closes this item.',
    done: 'Waived: seen before',
  },
  'waive-being-replaced': {
    choice: 'Waive it: being replaced',
    follows: 'The part is being replaced under a permit. Closes this item.',
    done: 'Waived: being replaced',
  },
  'waive-no-way-in': {
    choice: 'Waive it: no way to reach it',
    follows: 'It cannot be reached without harm to what stands over it. Closes this item.',
    done: 'Waived: no way to reach it',
  },
  'waive-not-this-system': {
    choice: 'Waive it: this system has no need of it',
    follows: 'The step does not fit how this system works. Closes this item.',
    done: 'Waived: this system has no need of it',
  },
  'ask-remeasurement': {
    choice: 'Require another measurement',
    follows: 'Stays open until the firm has measured again.',
    done: 'Another measurement required',
  },
}
