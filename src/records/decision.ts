/**
 * Why a step of an inspection is done without: a closed list, since an agent or an owner reads it. What the reviewer adds in
 * their own words stays with the county.
 */
export const WAIVERS = [
  'waive-seen-before',
  'waive-being-replaced',
  'waive-no-way-in',
  'waive-not-this-system',
] as const
export type Waiver = (typeof WAIVERS)[number]

/**
 * What a reviewer can do about a discrepancy. The waivers and two more close it (`correct-record`, `accept`); two leave
 * something for the owner to do and one for the firm, and until that shows in the file the matter stays open.
 */
export const DECISION_ACTIONS = [
  'correct-record',
  'accept',
  'require-permit',
  'require-repair',
  'ask-remeasurement',
  ...WAIVERS,
] as const
export type DecisionAction = (typeof DECISION_ACTIONS)[number]

/** Who has to act after the decision; null where it closes the matter. */
export const AWAITS: { readonly [A in DecisionAction]: 'owner' | 'firm' | null } = {
  'correct-record': null,
  accept: null,
  'require-permit': 'owner',
  'require-repair': 'owner',
  'ask-remeasurement': 'firm',
  'waive-seen-before': null,
  'waive-being-replaced': null,
  'waive-no-way-in': null,
  'waive-not-this-system': null,
}

export const isWaiver = (action: DecisionAction): action is Waiver =>
  (WAIVERS as readonly DecisionAction[]).includes(action)
