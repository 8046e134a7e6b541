import { isOrAre, the } from '../../records/naming.ts'
import { type MeaningOf, sentence } from './meaning.ts'

export const levelHigh: MeaningOf = ({ because }) => ({
  severity: 'action',
  sentences: {
    firm: sentence(
      `${because}. The outlet or what lies beyond it does not take the flow: look before it is pumped`,
    ),
    reviewer: sentence(`${because}. The outlet is blocked, or the absorption area does not take the flow`),
    agent:
      'The liquid stands too high: something beyond the tank does not take the flow. It has to be put right.',
  },
  next: { who: 'owner', what: 'have the outlet and the absorption area looked at by a licensed installer' },
})

export const levelLow: MeaningOf = ({ because }) => ({
  severity: 'action',
  sentences: {
    firm: sentence(
      `${because}. Ask when it was last pumped; if not lately, it leaks. Keep clear of the edges of a tank that leaks`,
    ),
    reviewer: sentence(`${because}. Unless it was pumped shortly before, it leaks below its outlet`),
    agent: 'The liquid stands too low: unless the tank was pumped lately, it leaks. It has to be put right.',
  },
  next: { who: 'owner', what: 'have the tank tested for leaks, and repaired or replaced under a permit' },
})

/** Due under a rule whose own text was read: it obliges. Under practice or a rule at second hand: advice on record. */
export const solidsHigh: MeaningOf = ({ because, citations }) => {
  const obliges = citations.length > 0 && citations.every(({ verified }) => verified === 'read')
  return {
    severity: obliges ? 'action' : 'note',
    sentences: {
      firm: sentence(`${because}. Tell the owner to have it pumped`),
      reviewer: sentence(
        obliges
          ? `${because}. Pumping is due under that rule`
          : `${because}. Nobody has read that rule in its own text, so pumping is advised and not required`,
      ),
      agent: obliges
        ? 'The tank is due to be pumped.'
        : 'The tank should be pumped soon. That is advice; nobody has to follow it.',
    },
    next: obliges
      ? { who: 'owner', what: 'have the tank pumped by a licensed hauler' }
      : { who: 'nobody', what: 'nothing required: pumping is advised' },
  }
}

export const conditionPoor: MeaningOf = ({ because, subject, facet, verdict }) => {
  const lid = facet === 'cover'
  const age = facet === 'age'
  const [, failing] = /^[^:]*\b(?:is|are) (leaking|broken|collapsed|blocked)(?::|$)/.exec(because) ?? []
  return {
    severity: lid || (failing && verdict === 'differs') ? 'action' : 'review',
    sentences: {
      firm: lid
        ? sentence(`${because}. Secure it before you leave`)
        : sentence(`${because}. Keep people off it, and never go into it`),
      reviewer: sentence(
        age ? `${because}. The presumption can be answered by an inspection or a certificate` : because,
      ),
      agent: lid
        ? sentence(`The cover of ${the(subject.label)} is not secured. Keep children away until it is`)
        : age
          ? sentence(
              `${the(subject.label)} is older than the county's rule presumes a steel tank to last. The county has to look at it`,
            )
          : sentence(
              failing
                ? `${the(subject.label)} ${isOrAre(subject.label)} ${failing} and must be repaired or replaced`
                : `${the(subject.label)} ${isOrAre(subject.label)} in poor condition and must be looked at`,
            ),
    },
    next: lid
      ? { who: 'owner', what: 'have the cover secured at once' }
      : age
        ? { who: 'reviewer', what: 'decide whether the tank has to be tested or replaced' }
        : { who: 'owner', what: `have ${the(subject.label)} repaired or replaced by a licensed installer` },
  }
}
