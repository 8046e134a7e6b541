import type { LetterKind } from '../../../letters/content/frame.ts'
import { LETTERS_FOR } from '../../../operations/letters/issue-letter.ts'
import type { Role } from '../../../store/database/actor.ts'
import type { Letter } from '../../../store/letters.ts'

export type LetterLine = Pick<Letter, 'id' | 'kind' | 'number' | 'issuedOn' | 'word' | 'code'> & {
  /** Why the county withdrew it; null while it has not. */
  readonly withdrawn: string | null
}

export type LettersShown = {
  readonly lines: readonly LetterLine[]
  /** What the reader may get. */
  readonly offers: readonly LetterKind[]
  /** The newest that was there when the page was made: a form that is sent twice makes one letter. */
  readonly newest: string
}

export const presentLetters = (letters: readonly Letter[], role: Role): LettersShown => ({
  lines: letters.map(({ id, kind, number, issuedOn, word, code, withdrawn }) => ({
    id,
    kind,
    number,
    issuedOn,
    word,
    code,
    withdrawn: withdrawn?.reason ?? null,
  })),
  offers: LETTERS_FOR[role],
  newest: letters[0]?.id ?? '',
})
