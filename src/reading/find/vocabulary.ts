import { atomsIn } from '../lexicon/atoms.ts'
import type { Sense } from '../lexicon/sense.ts'
import type { Found } from '../values/found.ts'

/** Every permit is one to construct or install; these words alone hardly tell new work from a repair. */
const GENERAL_WORK = /^(?:to\s+)?(?:construct|install|installation|construction permit)$/i

type Listed = 'material' | 'work' | 'shape'

/** Words of a closed list in a text (materials, kinds of work, shapes), in order; longest spelling first. */
export const findSense = (text: string, is: Listed, misread: boolean): Found<string>[] =>
  atomsIn(text, misread).flatMap((atom) => {
    const value = atom.senses.map((sense) => listed(sense, is)).find((known) => known !== undefined)
    if (value === undefined) return []
    const fit = GENERAL_WORK.test(text.slice(atom.start, atom.end)) ? 0.6 : 1
    return [{ start: atom.start, end: atom.end, value, fit: fit * atom.likeness, doubts: [] }]
  })

function listed(sense: Sense, is: Listed): string | undefined {
  if (sense.is !== is) return undefined
  switch (sense.is) {
    case 'material':
      return sense.material
    case 'shape':
      return sense.shape
    case 'work':
      return sense.kind
  }
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
