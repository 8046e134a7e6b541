import { capital, plain } from '../../words/plain.ts'
import { ALL_FIELDS } from './asked.ts'
import { WAY_WORDS } from './fields.ts'
import { filled, type Typed } from './typed.ts'

/** Fields that are asked as one thing: a length with how it was taken, both ties, a place with its radius. */
export const questionOf = (field: string): string => {
  const [first = '', second] = field.split('.')
  return first === 'reference' && second !== undefined ? `${first}.${second}` : first
}

/** What was typed, question by question. */
export function byQuestion(typed: Typed): ReadonlyMap<string, Typed> {
  const questions = new Map<string, Record<string, string>>()
  for (const [field, text] of Object.entries(filled(typed))) {
    const question = questionOf(field)
    questions.set(question, { ...questions.get(question), [field]: text })
  }
  return questions
}

const OTHER_WORDS: { readonly [question: string]: string } = {
  outcome: 'Was it found?',
  kind: 'What it is',
  searchedBy: 'How it was searched for',
  searchedWithin: 'How far around',
  notReachedBecause: 'Why it was not reached',
  tie: 'Ties',
  fix: 'Place by satellite',
  inspectedOn: 'Day of the inspection',
  occupancy: 'Is it lived in?',
  people: 'People living there',
  bedroomsCounted: 'Bedrooms',
  lastPumpedOn: 'Last pumped',
  'reference.a': 'Corner A',
  'reference.b': 'Corner B',
  'reference.wall': 'Which wall',
  'reference.baseline': 'From A to B',
  'reference.bearingDeg': 'Compass from A to B',
}

export const questionWords = (question: string): string =>
  OTHER_WORDS[question] ?? ALL_FIELDS.get(question)?.label ?? capital(plain(question))

/** An answer in a line, for lists of differences: `7'-10" (tape, inside)`. */
export function answerWords(question: string, typed: Typed | undefined): string | null {
  if (!typed) return null
  if (question === 'searchedBy') {
    return Object.keys(typed)
      .map((field) => plain(field.slice('searchedBy.'.length)))
      .join(', ')
  }
  if (question === 'tie') {
    const said = (corner: 'a' | 'b') => withWay(typed[`tie.${corner}`], typed[`tie.${corner}.how`])
    const side = typed['tie.side']
      ? `, ${typed['tie.side'] === 'away' ? 'away from the house' : 'on the house side'}`
      : ''
    return `A ${said('a')}, B ${said('b')}${side}`
  }
  if (question === 'fix')
    return `${typed['fix.lat']}, ${typed['fix.lon']} within ${typed['fix.radiusFt'] ?? '?'} ft`
  const text = typed[question]
  const side = typed[`${question}.side`]
  const way = typed[`${question}.how`]
  if (side) return withWay(side === 'at' ? 'at the invert' : `${text ?? '?'} ${side} the invert`, way)
  const field = ALL_FIELDS.get(question)
  const chosen =
    field && 'choices' in field ? field.choices.find(({ value }) => value === text)?.says : undefined
  return way ? withWay(text, way) : (chosen ?? (text === undefined ? null : plain(text)))
}

const withWay = (text: string | undefined, way: string | undefined): string =>
  `${text ?? '?'}${way ? ` (${WAY_WORDS[way as keyof typeof WAY_WORDS] ?? way})` : ''}`
