import type { Certainty } from '../reconcile/outcome.ts'
import type { Basis } from '../reconcile/reason.ts'

const BASES: { readonly [B in Extract<Basis, string>]: string } = {
  undecided: 'nothing was decided',
  'beyond-uncertainty': 'beyond the expanded uncertainty',
  'rule-not-verified': 'beyond the expanded uncertainty, but the source of the rule is not yet verified',
  'within-tolerance': 'within the tolerance',
  'within-by-uncertainty':
    'outside the tolerance, but within it once the uncertainty of the readings is counted',
  'too-rough': 'the expanded uncertainty is too large to decide the question',
  'within-uncertainty': 'the limit lies within the expanded uncertainty',
  'beyond-tolerance': 'beyond the tolerance and the expanded uncertainty (k = 2) together',
  seen: 'seen by the inspector',
  counted: 'both are counts',
  'by-dates': 'by the dates',
  opened: 'the place itself was opened or seen',
  'surface-search': 'searched from the surface only: a buried part can be missed that way',
  'the-papers': 'the permits themselves',
  'the-file': 'the file itself',
  'the-file-may-grow': 'the file as it stands: more paper may turn up',
  presumption: 'the rule presumes it; nobody saw it',
  'replaced-not-changed': 'pipe does not change its material or size: it was replaced',
  'permit-and-inspection': 'the later permit and the inspection agree',
  'one-of-two-places': 'one of the two places where the ties meet',
  'edge-of-tellable': 'at the edge of what the ties can tell',
  'within-ties': 'within the error of the ties',
  'place-not-known': 'the distance is not known well enough',
  'within-uncertainty-of-both': 'no farther apart than the record and the tape are uncertain',
  'as-stated': 'as the permit states it: nobody has measured it',
  'reading-missing': 'a reading is missing',
}

const WORDS: { readonly [W in Certainty['word']]: string } = { firm: 'firm', likely: 'likely', open: 'open' }

export function basisWords(basis: Basis): string {
  if (typeof basis === 'string') return BASES[basis]
  const times =
    basis.onceIn >= 1e6 ? 'more than a million times' : `${basis.onceIn.toLocaleString('en-US')} times`
  return `measurement alone would put it that far off once in ${times}`
}

/** `likely: searched from the surface only …`; null where nothing was decided. */
export const certaintyWords = ({ word, basis }: Certainty): string | null =>
  basis === 'undecided' ? null : `${WORDS[word]}: ${basisWords(basis)}`
