/**
 * What a reviewer can do about a discrepancy. Two of them close it (`correct-record`, `accept`); two leave something
 * for the owner to do and one for the firm, and until that shows in the file the matter stays open.
 */
export const DECISION_ACTIONS = [
  'correct-record',
  'accept',
  'require-permit',
  'require-repair',
  'ask-remeasurement',
] as const
export type DecisionAction = (typeof DECISION_ACTIONS)[number]

/** Who has to act after the decision; null where it closes the matter. */
export const AWAITS: { readonly [A in DecisionAction]: 'owner' | 'firm' | null } = {
  'correct-record': null,
  accept: null,
  'require-permit': 'owner',
  'require-repair': 'owner',
  'ask-remeasurement': 'firm',
}
