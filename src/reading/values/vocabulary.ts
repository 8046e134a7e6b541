import type { Found } from './found.ts'
import { lettersApart } from './near-word.ts'
import { MATERIAL_SPELLINGS, SHAPE_SPELLINGS, WORK_SPELLINGS } from './spellings.ts'

/** Every permit is one to construct or install; these words alone hardly tell new work from a repair. */
const GENERAL_WORK = /^(?:to\s+)?(?:construct|install|installation|construction permit)$/i

type Listed = 'material' | 'work' | 'shape'

/** Letters and figures only, small: `Cast-Iron` is `castiron`. */
const squeezed = (text: string): string => text.toLowerCase().replace(/[^a-z0-9]/g, '')

const listOf = (table: Partial<Record<string, string>>): ReadonlyMap<string, string> =>
  new Map(
    Object.entries(table).flatMap(([value, spellings]) =>
      (spellings ?? '').split('|').map((written) => [squeezed(written), value] as const),
    ),
  )
const LISTS: Record<Listed, ReadonlyMap<string, string>> = {
  material: listOf(MATERIAL_SPELLINGS),
  shape: listOf(SHAPE_SPELLINGS),
  work: listOf(WORK_SPELLINGS),
}
/** No spelling has more words than this. */
const MOST_WORDS = 5
/** Misread letters that a spelling of this length may have and still be known. */
const forgiven = (length: number): number => (length < 5 ? 0 : length < 9 ? 1 : length < 15 ? 2 : 3)

/** Words of a closed list in a text (materials, kinds of work, shapes), in order; the longest spelling first. */
export function findSense(text: string, is: Listed, misread: boolean): Found<string>[] {
  const words = [...text.matchAll(/[A-Za-z0-9.&'’]+/g)].map((match) => ({
    at: match.index,
    end: match.index + match[0].length,
  }))
  const found: Found<string>[] = []
  for (let from = 0; from < words.length; ) {
    const hit = hitAt(text, words, from, LISTS[is], misread)
    if (hit) found.push(hit.found)
    from += hit ? hit.words : 1
  }
  return found
}

function hitAt(
  text: string,
  words: readonly { readonly at: number; readonly end: number }[],
  from: number,
  list: ReadonlyMap<string, string>,
  misread: boolean,
): { readonly found: Found<string>; readonly words: number } | null {
  for (const allowMisread of misread ? [false, true] : [false])
    for (let count = Math.min(MOST_WORDS, words.length - from); count > 0; count--) {
      const [start, end] = [words[from]!.at, words[from + count - 1]!.end]
      const known = spelled(squeezed(text.slice(start, end)), list, allowMisread)
      if (!known) continue
      const fit = (GENERAL_WORK.test(text.slice(start, end)) ? 0.6 : 1) * known.likeness
      return { found: { start, end, value: known.value, fit, doubts: [] }, words: count }
    }
  return null
}

function spelled(
  read: string,
  list: ReadonlyMap<string, string>,
  misread: boolean,
): { readonly value: string; readonly likeness: number } | null {
  const exact = list.get(read) ?? (read.endsWith('s') ? list.get(read.slice(0, -1)) : undefined)
  if (exact !== undefined) return { value: exact, likeness: 1 }
  if (!misread || read.length < 5) return null
  let best: { value: string; errors: number; length: number } | null = null
  for (const [spelling, value] of list) {
    if (Math.abs(spelling.length - read.length) > 2) continue
    const errors = lettersApart(read, spelling)
    if (errors <= forgiven(spelling.length) && (!best || errors < best.errors))
      best = { value, errors, length: spelling.length }
  }
  return best && { value: best.value, likeness: 1 - best.errors / (best.length + 1) }
}

const TEXTURE =
  /\b(?:(?:very|coarse|medium|fine|gravelly|stony|cobbly|sandy|silty|clayey|heavy|light|loamy|silt|clay|sand|red|brown|yellow|dark|till|glacial|and|w\/?)[\s-]+){0,3}(?:sandy[\s-]clay[\s-]loam|silty[\s-]clay[\s-]loam|sandy[\s-]loam|silt[\s-]loam|clay[\s-]loam|loamy[\s-]sand|loam|sand|silt|clay|gravel|hardpan|till|muck|peat)\b/i

/** Soil textures in a text; the words of the field's classes with what stands before them (`gravelly sandy loam`). */
export function findSoil(text: string): Found<string>[] {
  const match = TEXTURE.exec(text)
  if (!match) return []
  const value = match[0].trim().replace(/\s+/g, ' ').toLowerCase()
  return [{ start: match.index, end: match.index + match[0].length, value, fit: 1, doubts: [] }]
}
