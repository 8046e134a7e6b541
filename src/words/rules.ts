import type { RuleCited } from '../reconcile/outcome.ts'
import { type Citation, citeInWords, type Verified, weakest } from '../rules/citation.ts'
import type { ParameterName } from '../rules/parameters.ts'

/** What a rule is about, as a noun phrase after "the rule on". */
export const RULE_NOUNS: { readonly [P in ParameterName]: string } = {
  'tank.minimum-capacity': 'minimum tank capacity',
  'tank.minimum-capacity-by-flow': 'minimum tank capacity for a building that is no dwelling',
  'absorption.nominal-tolerance-pct': 'the tolerance for designed absorption areas',
  'tank.nominal-tolerance-pct': 'the tolerance for nominal tank sizes',
  'tank.usable-uncertainty-pct': 'how rough a capacity may be',
  'tank.metal-age-limit-years': 'the age of metal tanks',
  'tank.compartments-minimum': 'tank compartments',
  'tank.liquid-depth': 'liquid depth',
  'tank.freeboard': 'freeboard',
  'tank.wall-thickness': 'tank walls',
  'tank.masonry-accepted': 'masonry tanks',
  'inlet.invert-drop': 'the drop from inlet to outlet',
  'inlet.submergence': 'submergence of the inlet device',
  'outlet.submergence-pct': 'submergence of the outlet device',
  'outlet.submergence-in': 'submergence of the outlet device',
  'outlet.above-liquid': 'the outlet device above the liquid',
  'effluent-filter.required': 'effluent filters',
  'cesspool.accepted': 'cesspools',
  'pit.room-left': 'the room left in a cesspool or pit',
  'privy.accepted': 'privies',
  'privy.least-room-in': 'the room left in a privy',
  'design.flow-per-bedroom': 'design flow',
  'absorption.perc-table': 'absorption area',
  'absorption.texture-table': 'absorption area by soil',
  setbacks: 'setbacks',
  'setbacks.lender': 'a lender’s setbacks',
  'solids.rules': 'pumping',
  'solids.pump-out-years': 'years between pumpings',
  'level.tolerance-in': 'the tolerance for liquid levels',
  'position.record-accuracy-ft': 'the accuracy of record drawings',
  'position.significance': 'when two positions differ',
  'transfer.inspection-window-days': 'how long an inspection counts for a transfer',
  'inspection.protocol': 'what an inspection has to do',
  'household.flow-per-person': 'wastewater per person',
  'era-facts': 'what was built when',
  expectations: 'what is usual',
}

/** What has to stand beside a figure, so that nobody takes for code what is not verified or what no code says. */
export function sourceNote(source: Verified | null): string {
  switch (source) {
    case 'from-memory':
      return ' (source not yet verified)'
    case 'common-practice':
      return ' (common practice, no code)'
    case 'second-hand':
    case 'read':
    case null:
      return ''
  }
}

export const noteOf = (citations: readonly Citation[]): string => sourceNote(weakest(citations))

/** How a citation came to be here, as a reader must know it. */
export const VERIFIED_WORDS: { readonly [V in Verified]: string } = {
  read: 'source read',
  'second-hand': 'second-hand: read as another source repeats it',
  'from-memory': 'source not yet verified',
  'common-practice': 'common practice, no source',
}

/** One line for a list of rules. A convention says what it is about, so that it is not taken for part of the code. */
export const citationWords = (it: RuleCited): string =>
  it.verified === 'common-practice' && it.covers === null && it.rule !== null
    ? citeInWords({ ...it, covers: RULE_NOUNS[it.rule] })
    : citeInWords(it)
