import { counted, isNumber, sum } from './sentences.ts'

/**
 * How easy a Spanish text is, from 0 to 100: 206.835 − 62.3 · syllables/words − words/sentences.
 * F. Szigriszt Pazos, Sistemas predictivos de legibilidad del mensaje escrito, 1993. On the INFLESZ scale 55 to 65 is
 * normal, 65 to 80 fairly easy, above 80 very easy: I. M. Barrio-Cantalejo and others, Validación de la Escala INFLESZ,
 * Anales del Sistema Sanitario de Navarra 31, 2008 (both from memory).
 */
export function spanishEase(text: string): number {
  const { sentences, words } = counted(text)
  if (words.length === 0) return 100
  return 206.835 - 62.3 * (sum(words.map(spanishSyllables)) / words.length) - words.length / sentences
}

/** The least of `normal` on the INFLESZ scale: what the general public reads. */
export const SPANISH_NORMAL = 55

const STRONG = 'aeoáéíóú'

/**
 * One syllable for each vowel sound. Two strong vowels (a, e, o, and an accented í or ú) are two sounds; a weak one (i, u)
 * beside another vowel is part of it. The u of `que`, `qui`, `gue` and `gui` is silent. A number counts as three.
 */
export function spanishSyllables(word: string): number {
  if (isNumber(word)) return 3
  const bare = word
    .toLowerCase()
    .normalize('NFC')
    .replaceAll(/(?<=q)u|(?<=g)u(?=[eiéí])/g, '')
    .replaceAll(/y(?![aeiouáéíóúü])/g, 'i')
    .replaceAll(/h/g, '')
  const groups = bare.match(/[aeiouáéíóúü]+/g) ?? []
  const strong = (group: string) => [...group].filter((vowel) => STRONG.includes(vowel)).length
  return Math.max(1, sum(groups.map((group) => Math.max(1, strong(group)))))
}
