import { type MeaningOf, sentence } from './meaning.ts'

export const recordAbsent: MeaningOf = ({ because }) => ({
  severity: 'review',
  sentences: {
    firm: sentence(`${because}. Measure and tie in all you find: your findings will be the only record`),
    reviewer: sentence(
      `${because}. Search under old numbers and addresses before relying on the findings alone`,
    ),
    agent: 'The county has no record of a septic system on this parcel.',
  },
  next: {
    who: 'reviewer',
    what: 'search the file under old numbers, then decide what the findings may stand for',
  },
})

/** A permit that was never approved is clear enough: it builds nothing. */
const neverApproved: MeaningOf = ({ because }) => ({
  severity: 'review',
  sentences: {
    firm: sentence(`${because}. Measure and tie in all you find`),
    reviewer: sentence(`${because}. Look for the approval, or have it seen what was built`),
    agent:
      'The county has a permit for this parcel that was never approved, so it does not show that a system was built.',
  },
  next: { who: 'reviewer', what: 'look for the final approval, or ask for an inspection' },
})

export const recordUnclear: MeaningOf = (outcome) =>
  outcome.check === 'record-presence' ? neverApproved(outcome) : unclear(outcome)

const unclear: MeaningOf = ({ because }) => ({
  severity: 'review',
  sentences: {
    firm: sentence(`${because}. A measurement on the spot can settle it`),
    reviewer: sentence(`${because}. Look at the papers side by side and correct the record`),
    agent:
      "The county's papers for this parcel do not agree with each other, or can't be read. The county has to look at them.",
  },
  next: { who: 'reviewer', what: 'look at the papers and correct the record' },
})

export const findingsStale: MeaningOf = ({ because }) => ({
  severity: 'review',
  sentences: {
    firm: sentence(`${because}. A new inspection is needed for a transfer`),
    reviewer: sentence(`${because}. Ask for a new inspection before relying on the findings`),
    agent: /^work was approved/.test(because)
      ? 'Work was approved after the last inspection, which no longer describes the system. A new inspection is needed.'
      : 'The last inspection is too old to count for a transfer. A new inspection is needed.',
  },
  next: { who: 'owner', what: 'have the system inspected again' },
})
