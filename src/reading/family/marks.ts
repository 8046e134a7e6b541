import type { PageWords } from '../page-words.ts'
import { plain } from './alike.ts'
import type { Laid } from './field-places.ts'
import { seenAt } from './recognize.ts'
import type { Mark } from './taught-form.ts'

/** The share of the papers on which a word stands at one place, from which it is print and not filled in. */
const PRINTED_ON = 0.7

/** The printed words of a form: those of the reference that most of the papers have at the same place. */
export function marksOf(reference: PageWords, laid: readonly Pick<Laid, 'page' | 'onto'>[]): readonly Mark[] {
  const onReference = laid.map(({ page, onto }) =>
    page.words.map((word) => ({ ...word, box: onto(word.box) })),
  )
  const least = Math.max(2, Math.ceil(PRINTED_ON * laid.length))
  return reference.words.flatMap((word): Mark[] => {
    const text = plain(word.text)
    if (text.length < 2 || !/[a-z]/.test(text)) return []
    const mark = { text: word.text.slice(0, 60), box: word.box }
    const seen = onReference.filter((words) => seenAt(mark, mark.box, words, reference)).length
    return seen >= least ? [mark] : []
  })
}
