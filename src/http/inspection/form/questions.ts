import { fieldAt } from '../../../catalog/catalog.ts'
import type { ComponentKind } from '../../../catalog/kinds.ts'
import { choiceWords, METHOD_WORDS } from '../../../words/field-choices.ts'
import { fieldWords } from '../../../words/fields.ts'
import { filled, rowsIn, type Typed } from './typed.ts'

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

const placeOf = (question: string) => (fieldAt('component', question) ? 'component' : 'inspection')

export const questionWords = (question: string, kind?: ComponentKind): string => {
  const { ask, label } = fieldWords(placeOf(question), question, kind)
  return ask ?? label
}

/** An answer in a line, for lists of differences: `7'-10" (tape, inside)`. */
export function answerWords(question: string, typed: Typed | undefined): string | null {
  if (!typed) return null
  const field = fieldAt(placeOf(question), question)
  const text = typed[question]
  const way = typed[`${question}.how`]
  switch (field?.value) {
    case 'choices':
      return Object.keys(typed)
        .map((name) => choiceWords(field.choices, name.slice(question.length + 1)))
        .join(', ')
    case 'choice':
      return text === undefined ? null : choiceWords(field.choices, text)
    case 'level': {
      const side = typed[`${question}.side`]
      return withWay(side === 'at' ? 'at the invert' : `${text ?? '?'} ${side ?? ''} the invert`, way)
    }
    case 'group':
      return answerParts(typed, question, Object.keys(field.parts))
    case 'rows': {
      const rows = rowsIn(typed, question).map((row) =>
        answerParts(typed, `${question}.${row}`, Object.keys(field.parts)),
      )
      return rows.join('; ')
    }
    default:
      return way ? withWay(text, way) : (text ?? null)
  }
}

const answerParts = (typed: Typed, at: string, parts: readonly string[]): string =>
  parts
    .filter((part) => typed[`${at}.${part}`] !== undefined)
    .map(
      (part) =>
        `${fieldWords(placeOf(at.split('.')[0]!), `${at}.${part}`).label} ${answerIn(typed, `${at}.${part}`)}`,
    )
    .join(', ')

const answerIn = (typed: Typed, name: string): string =>
  answerWords(name, Object.fromEntries(Object.entries(typed).filter(([key]) => key.startsWith(name)))) ?? '?'

const withWay = (text: string | undefined, way: string | undefined): string =>
  `${text ?? '?'}${way ? ` (${METHOD_WORDS[way as keyof typeof METHOD_WORDS] ?? way})` : ''}`
