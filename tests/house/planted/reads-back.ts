import type { EntryIssue } from '../../../src/reading/entry/issues.ts'
import { ours } from '../../../src/words/ours.ts'
import { questionWords } from '../../../src/words/questions.ts'

/** Each of these asks a sentence of ours what it means: the test of the house has to see every one. */
const issue = { pointer: '', message: 'is missing: write a length' } as EntryIssue
const { message } = issue
const question = questionWords('tank-size')
const fault = ours`The tank is too small.`
const cut = issue.message.replace(/^is /, '').trim()
const other: string = String(process.argv[2])

export const PLANTED = [
  issue.message.startsWith('is'),
  /^is/.test(message),
  questionWords('tank-size').includes('tank'),
  fault.match(/small/) !== null,
  message === 'gone',
  other.includes('of a nominal size'),
  /give or take/.test(cut),
  other === 'is missing: write a length',
]

/** And these do not: another's words, a library's, a slug, an empty text. */
export const NOT_PLANTED = [
  new Error('x').message.includes('x'),
  other.startsWith('ab'),
  other === 'too-close-to-call',
  message === '',
  question.length > 3,
]
