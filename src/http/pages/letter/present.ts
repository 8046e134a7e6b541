import { LETTER_TITLES, type LetterKind } from '../../../letters/content/frame.ts'
import { LETTERS_FOR } from '../../../operations/letters/issue-letter.ts'
import type { Role } from '../../../store/database/actor.ts'
import type { Letter } from '../../../store/letters.ts'
import { VOICES } from '../../../words/agent/status.ts'

export type LetterLine = {
  readonly id: string
  readonly title: string
  readonly number: string
  readonly issuedOn: string
  readonly word: string
  readonly code: string
  readonly withdrawn: string | null
}

export type LettersShown = {
  readonly lines: readonly LetterLine[]
  /** What the reader may have made. */
  readonly offers: readonly { readonly kind: LetterKind; readonly title: string }[]
  /** The newest that was there when the page was made: a form that is sent twice makes one letter. */
  readonly newest: string
}

export const presentLetters = (letters: readonly Letter[], role: Role): LettersShown => ({
  lines: letters.map(({ id, kind, number, issuedOn, word, code, withdrawn }) => ({
    id,
    title: LETTER_TITLES[kind],
    number,
    issuedOn,
    word: VOICES.en.word[word],
    code,
    withdrawn: withdrawn?.reason ?? null,
  })),
  offers: LETTERS_FOR[role].map((kind) => ({ kind, title: LETTER_TITLES[kind] })),
  newest: letters[0]?.id ?? '',
})
