import type { ComponentKind } from '../../records/component.ts'
import { isLine } from '../../records/component.ts'
import { isOrAre, the, wasOrWere } from '../../records/naming.ts'
import { type MeaningOf, sentence } from './meaning.ts'

/** Without its outlet baffle a tank sends solids to the absorption area, which does not recover from them. */
const HURTS_WHEN_MISSING = new Set(['outlet-baffle', 'inlet-baffle', 'access-opening'])

export const componentMissing: MeaningOf = ({ because, subject, certainty }) => {
  const hurts = HURTS_WHEN_MISSING.has(subject.kind)
  return {
    severity: hurts ? 'action' : 'review',
    sentences: {
      firm: sentence(`${because}. State how you searched; a reviewer will ask`),
      reviewer: sentence(
        certainty.word === 'firm'
          ? `${because}. The place itself was laid open or looked into`
          : `${because}. Weigh how it was searched for before calling it gone`,
      ),
      agent: hurts
        ? sentence(
            `${the(subject.label)} ${isOrAre(subject.label)} missing and must be put back before the system can be relied on`,
          )
        : sentence(
            `${the(subject.label)} ${isOrAre(subject.label)} on the county's record but ${wasOrWere(subject.label)} not found. The county has to look at it`,
          ),
    },
    next: hurts
      ? { who: 'owner', what: `have ${the(subject.label)} put back by a licensed installer` }
      : { who: 'reviewer', what: 'correct the record, or ask for another search' },
  }
}

export const componentNotOnRecord: MeaningOf = ({ because, subject }) => {
  const kind = subject.kind as ComponentKind
  const matters =
    [
      'tank',
      'cesspool',
      'pump-chamber',
      'seepage-pit',
      'trench',
      'bed',
      'chambers',
      'mound',
      'drip-field',
      // What keeps its distance from it can only be held against it once it is known.
      'well',
    ].includes(kind) || isLine(kind)
  return {
    severity: matters ? 'review' : 'note',
    sentences: {
      firm: sentence(`${because}. Tie it to two house corners while it is open`),
      reviewer: sentence(
        `${because}. Look for paper under an old number or address; it may be work without a permit`,
      ),
      agent: matters
        ? 'Something was found that the county has no record of. The county has to look at it.'
        : 'A small part was found that the county has no record of. Nothing is needed.',
    },
    next: matters
      ? { who: 'reviewer', what: 'find its paper, or require a permit for it' }
      : { who: 'nobody', what: 'nothing: it is noted' },
  }
}

export const lineReplaced: MeaningOf = ({ because }) => ({
  severity: 'note',
  sentences: {
    firm: sentence(`${because}. Nothing is open`),
    reviewer: sentence(`${because}. The file explains what was found`),
    agent: 'A line was replaced under a permit. Nothing is open.',
  },
  next: { who: 'nobody', what: 'nothing: it is history' },
})

export const lineReplacedWithoutPermit: MeaningOf = ({ because }) => ({
  severity: 'review',
  sentences: {
    firm: sentence(`${because}. Say where the new pipe begins and ends if the camera showed it`),
    reviewer: sentence(`${because}. A repair was made without paper, or its permit is missing from the file`),
    agent: 'A line was replaced, and the county has no permit for that work. The county has to look at it.',
  },
  next: { who: 'reviewer', what: 'find the permit, or require one for the work done' },
})

export const materialDiffers: MeaningOf = ({ because, subject }) => ({
  severity: 'review',
  sentences: {
    firm: sentence(`${because}. A photograph of it will help`),
    reviewer: sentence(`${because}. Either the record is wrong or the part was replaced`),
    agent: sentence(
      `${the(subject.label)} ${isOrAre(subject.label)} not of the material that the county's record shows. The county has to look at it`,
    ),
  },
  next: { who: 'reviewer', what: 'correct the record, or look for the paper of a replacement' },
})

export const typeDiffers: MeaningOf = ({ because, subject }) => ({
  severity: 'review',
  sentences: {
    firm: sentence(`${because}. A photograph of it will help`),
    reviewer: sentence(`${because}. Either the record is wrong or something else was built`),
    agent: sentence(
      `${the(subject.label)} ${isOrAre(subject.label)} not of the type that the county's record shows. The county has to look at it`,
    ),
  },
  next: { who: 'reviewer', what: 'correct the record, or look for the paper of a replacement' },
})
