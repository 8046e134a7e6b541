import type { Box } from '../../records/source.ts'
import type { PageWords, Word } from '../page-words.ts'
import type { LinkedValue } from './links.ts'

const PEOPLE = new Set(['owner', 'installer'])
/** From here on the words themselves are left out; where the model is less sure, they may be something that is wanted. */
const SURE = 0.8

/**
 * A page without the names of owners and installers, of which the record needs none: their words are left out, and of the
 * links that told them for what they are, the place is kept and not the text, so that nothing else is taken for it.
 */
export function withoutPeople(page: PageWords): PageWords {
  const values = page.links?.values ?? []
  const people = values.filter(({ field }) => PEOPLE.has(field))
  if (people.length === 0 || !page.links) return page
  const sure = people.filter(({ score }) => score >= SURE)
  const others = values.filter(({ field }) => !PEOPLE.has(field))
  const isName = (word: Word): boolean =>
    sure.some((name) => isOf(word, name)) && !others.some((other) => isOf(word, other))
  return {
    ...page,
    words: page.words.filter((word) => !isName(word)),
    secondWords: page.secondWords?.filter((word) => !isName(word)) ?? null,
    links: {
      ...page.links,
      values: values.map((value) => (PEOPLE.has(value.field) ? { ...value, text: '' } : value)),
    },
  }
}

/** Is a word one of a value's? What goes on in a next line has a box around more than its own words. */
function isOf({ box, text }: Word, value: LinkedValue): boolean {
  const isOneLine = value.box.h < 1.7 * box.h
  return liesIn(box, value.box) && (isOneLine || value.text.split(' ').includes(text))
}

/** Does most of a word lie in a box? */
function liesIn(word: Box, box: Box): boolean {
  const w = Math.min(word.x + word.w, box.x + box.w) - Math.max(word.x, box.x)
  const h = Math.min(word.y + word.h, box.y + box.h) - Math.max(word.y, box.y)
  return w > 0 && h > 0 && w * h > 0.5 * word.w * word.h
}
