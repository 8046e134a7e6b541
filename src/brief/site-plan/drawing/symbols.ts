import type { ComponentKind } from '../../../catalog/kinds.ts'
import type { Mark } from '../mark.ts'
import { type Frame, r } from './frame.ts'

export const REC = '#0b4f8a'
export const FND = '#7a2e0e'
export const INK = '#263238'
export const SOFT = '#455a64'
export const inkOf = (by: Mark['by']): string => (by === 'recorded' ? REC : FND)
export const DASH = ' stroke-dasharray="5 4"'

/** Tanks and boxes are boxes, pits and wells rings, a well a ring with a hole, absorption bars, all else a lozenge; within 8 either way. */
function outline(kind: ComponentKind): string {
  switch (kind) {
    case 'tank':
    case 'pump-chamber':
    case 'distribution-box':
      return 'M-8 -6H8V6H-8Z'
    case 'seepage-pit':
    case 'cesspool':
      return 'M-8 0A8 8 0 1 0 8 0A8 8 0 1 0 -8 0Z'
    case 'well':
      return 'M-8 0A8 8 0 1 0 8 0A8 8 0 1 0 -8 0ZM-3 0A3 3 0 1 1 3 0A3 3 0 1 1 -3 0Z'
    case 'trench':
    case 'bed':
    case 'chambers':
    case 'mound':
    case 'drip-field':
      return 'M-10 -4H10V4H-10Z'
    default:
      return 'M0 -8L8 0L0 8L-8 0Z'
  }
}

/** Recorded: large, open, dashed. Found: small, filled. One over the other, both are seen. */
export function symbol(kind: ComponentKind, by: Mark['by'], x: number, y: number): string {
  const recorded = by === 'recorded'
  const size = recorded ? 1.35 : 0.8

  return `<path d="${outline(kind)}" transform="translate(${r(x)} ${r(y)}) scale(${size})" fill="${recorded ? '#ffffff' : FND}" fill-rule="evenodd" stroke="${inkOf(by)}" stroke-width="${recorded ? 1.5 : 2}"${recorded ? DASH : ''}/>`
}

/** The ground that holds the true place with the stated coverage; smaller than its symbol it is left out. */
export function groundOf({ by, region }: Mark, { at, scale }: Frame): string {
  if (region.lengthFt * scale < 18) return ''
  const path = region.ring.map(([x, y]) => at(x, y).map(r).join(' ')).join('L')
  return `<path d="M${path}Z" fill="${inkOf(by)}" fill-opacity="0.08" stroke="${inkOf(by)}" stroke-width="1"${by === 'recorded' ? DASH : ''}/>`
}
