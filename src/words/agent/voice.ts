import type { Act } from '../../reconcile/acts.ts'
import type { OpenPart } from '../../reconcile/detail.ts'
import type { DiscrepancyKind } from '../../reconcile/kinds.ts'
import type { OpenItem, StatusWord } from '../../reconcile/status.ts'
import type { DecisionAction } from '../../records/decision.ts'
import type { OurText } from '../../records/whose.ts'

/**
 * All that an agent, a lender or an owner reads of a parcel's status, in one language. Made of our own words alone. A
 * language that leaves a sentence out does not compile.
 */
export type AgentVoice = {
  readonly word: { readonly [W in StatusWord]: OurText }
  readonly sentence: { readonly [W in StatusWord]: OurText }
  /** The sentence of `resolved` where the county did without a part of the inspection. */
  readonly resolvedByWaiver: OurText
  /** The name of a part at the head of a line. */
  readonly part: (part: OpenPart) => OurText
  /** What differs, one or two short sentences. */
  readonly says: { readonly [K in DiscrepancyKind]: (item: OpenItem) => OurText }
  /** What has to be done by whoever's turn it is. */
  readonly act: { readonly [A in Act]: (part: OpenPart) => OurText }
  readonly decided: { readonly [A in DecisionAction]: OurText }
}
