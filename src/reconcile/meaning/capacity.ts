import { the } from '../../records/naming.ts'
import type { Outcome } from '../outcome.ts'
import { isRemembered, type MeaningOf, sentence } from './meaning.ts'

export const capacityBelowRecord: MeaningOf = ({ because, subject }) => ({
  severity: 'review',
  sentences: {
    firm: sentence(`${because}. Say so in the report, and keep the readings: a reviewer will look at them`),
    reviewer: sentence(`${because}. Either the record is wrong or the tank is not the one permitted`),
    agent: sentence(
      `${the(subject.label)} measures smaller than the county's record says. The county has to look at it`,
    ),
  },
  next: {
    who: 'reviewer',
    what: 'correct the record, ask for a permit for the tank that is there, or accept with a reason',
  },
})

export const capacityAboveRecord: MeaningOf = ({ because, subject }) => ({
  severity: 'review',
  sentences: {
    firm: sentence(`${because}. A larger tank than recorded may have been put in without a permit`),
    reviewer: sentence(`${because}. A larger tank may mean a replacement that is not on file`),
    agent: sentence(
      `${the(subject.label)} measures larger than the county's record says. That may be good news, but the record does not show it`,
    ),
  },
  next: { who: 'reviewer', what: 'look for the paper of a replacement, or correct the record' },
})

/** Short of its own day's code is a question; short of today's alone is how older systems are. */
export const capacityBelowCode: MeaningOf = (outcome) => {
  const { because, facet, subject } = outcome
  return facet === 'today'
    ? {
        severity: 'note',
        sentences: {
          firm: sentence(
            `${because}. That alone asks nothing of the owner; tell them before they add bedrooms`,
          ),
          reviewer: sentence(`${because}. It counts when the use changes or the tank is replaced`),
          agent: sentence(
            `${the(subject.label)} is smaller than a new one would have to be today. That by itself asks nothing of the owner`,
          ),
        },
        next: { who: 'nobody', what: 'nothing, until the use changes or the tank is replaced' },
      }
    : {
        severity: 'review',
        sentences: {
          firm: sentence(`${because}. The tank was short of the code on the day it was permitted`),
          reviewer: sentence(`${because}. Look whether it was permitted so, with a variance, or built short`),
          agent: sentence(
            `${the(subject.label)} is smaller than the code ${asked(outcome)} when it was permitted. The county has to look at it`,
          ),
        },
        next: { who: 'reviewer', what: 'decide whether the tank may stay, and on what terms' },
      }
}

/** An agent can't look a rule up: where nobody else has either, the sentence says so. */
const asked = (outcome: Outcome): string =>
  isRemembered(outcome) ? 'is thought to have asked (nobody has read it yet)' : 'asked'

/** Falling short of today's code alone asks nothing of anybody, so neither does not being sure of it. */
export const measurementUnclear: MeaningOf = ({ check, because, facet, wouldSettle }) => {
  const remedy = wouldSettle?.what ?? 'measure again with a better method'
  if (facet === 'today') {
    return {
      severity: 'note',
      sentences: {
        firm: sentence(`${because}. Nothing hangs on it now; if you are there again, ${remedy}`),
        reviewer: sentence(`${because}. It counts when the use changes or the tank is replaced`),
        agent:
          'Whether the tank is as large as a new one would have to be today is too close to call. That by itself asks nothing of the owner.',
      },
      next: { who: 'nobody', what: 'nothing, until the use changes or the tank is replaced' },
    }
  }
  return {
    severity: 'review',
    sentences: {
      firm: sentence(`${because}. To settle it, ${remedy}`),
      reviewer: sentence(
        `${because}. Ask the firm to ${remedy}${wouldSettle ? ` (${wouldSettle.why})` : ''}`,
      ),
      agent: `One measurement has to be taken again before the county can say whether the tank ${check === 'capacity-against-code' ? 'was as large as the code asked when it was permitted' : 'agrees with its record'}.`,
    },
    next: { who: 'firm', what: remedy },
  }
}

export const absorptionBelowCode: MeaningOf = (outcome) => {
  const { because, facet } = outcome
  return facet === 'today'
    ? {
        severity: 'note',
        sentences: {
          firm: sentence(
            `${because}. That alone asks nothing of the owner; tell them before they add bedrooms`,
          ),
          reviewer: sentence(`${because}. It counts when the use changes or the absorption area is replaced`),
          agent:
            'The absorption area is smaller than a new one would have to be today. That by itself asks nothing of the owner.',
        },
        next: { who: 'nobody', what: 'nothing, until the use changes or the absorption area is replaced' },
      }
    : {
        severity: 'review',
        sentences: {
          firm: sentence(`${because}. The absorption area was short of the code on the day it was permitted`),
          reviewer: sentence(`${because}. Look whether it was permitted so or built short`),
          agent: `The absorption area is smaller than the code ${asked(outcome)} when it was permitted. The county has to look at it.`,
        },
        next: { who: 'reviewer', what: 'decide whether the absorption area may stay, and on what terms' },
      }
}

export const bedroomsAboveDesign: MeaningOf = ({ because }) => ({
  severity: 'review',
  sentences: {
    firm: sentence(
      `${because}. Say so in the report: more people may use the system than it was designed for`,
    ),
    reviewer: sentence(
      `${because}. Look whether the added bedrooms were permitted and what the system can carry`,
    ),
    agent:
      'The house has more bedrooms than its septic system was designed for. The county has to look at it.',
  },
  next: { who: 'reviewer', what: 'decide whether the bedrooms need a permit or the system an enlargement' },
})
