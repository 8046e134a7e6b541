import { WALLS } from '../../catalog/choices.ts'
import type { ProposedField } from '../proposal.ts'

const wallsIn = (words: string): (typeof WALLS)[number][] => {
  const text = words.toLowerCase().replace(/\b(?:back|behind)\b/g, 'rear')
  return WALLS.filter((wall) => new RegExp(`\\b${wall}\\b`).test(text))
}

/** Both corners of one wall: `rear left corner` and `rear right corner` are the ends of the rear wall. */
export function wallField(fields: readonly ProposedField[]): ProposedField[] {
  const a = fields.find(({ pointer }) => pointer === '/reference/a')
  const b = fields.find(({ pointer }) => pointer === '/reference/b')
  if (!a || !b) return []
  const shared = wallsIn(String(a.value)).filter((wall) => wallsIn(String(b.value)).includes(wall))
  const [wall, ...more] = shared
  if (wall === undefined || more.length > 0) return []
  const confidence = Math.min(a.confidence, b.confidence) * 0.98
  return [{ ...a, pointer: '/reference/wall', value: wall, words: `${a.words}; ${b.words}`, confidence }]
}
