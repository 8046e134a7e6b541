import { isOrAre, itOrThem, the } from '../../records/naming.ts'
import type { Outcome } from '../outcome.ts'
import { isRemembered, type Meaning, type MeaningOf, sentence } from './meaning.ts'

const MATTERS = new Set([
  'tank',
  'pump-chamber',
  'cesspool',
  'seepage-pit',
  'trench',
  'bed',
  'chambers',
  'mound',
  'drip-field',
  'well',
])

export const positionDiffers: MeaningOf = ({ because, subject }) => ({
  severity: MATTERS.has(subject.kind) ? 'review' : 'note',
  sentences: {
    firm: sentence(`${because}. Check which corners the ties run from before you leave`),
    reviewer: sentence(`${because}. The record's ties are wrong, or this is not the thing they meant`),
    agent: sentence(
      `${the(subject.label)} ${isOrAre(subject.label)} not where the county's record puts ${itOrThem(subject.label)}. The county has to look at it`,
    ),
  },
  next: { who: 'reviewer', what: 'correct the ties on record, or ask whether there are two of them' },
})

export const setbackShort: MeaningOf = (outcome) =>
  short(
    outcome,
    isRemembered(outcome) ? 'a rule that nobody has read yet is thought to allow' : 'the rule allows',
  )

const short = ({ because, subject }: Outcome, allows: string): Meaning => ({
  severity: 'action',
  sentences: {
    firm: sentence(`${because}. Tell the owner to have the water tested`),
    reviewer: sentence(`${because}. Look for a variance, and have the well tested`),
    agent: sentence(
      `${the(subject.label)} ${isOrAre(subject.label)} closer to the well than ${allows}. The well water has to be tested`,
    ),
  },
  next: {
    who: 'owner',
    what: "have the water tested, and wait for the county's word on the distance",
  },
})
