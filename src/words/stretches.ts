import { printLength } from '../measure/print/length.ts'
import type { ShownStretch } from '../reconcile/thing.ts'
import { MATERIAL_NOUNS } from './nouns.ts'

/** `31 to 60 ft`, `from 31 ft on` where nobody says how long the line is. */
export const spanWords = ({ from, to }: Pick<ShownStretch, 'from' | 'to'>): string =>
  to === null ? `from ${feet(from)} on` : `${feet(from).replace(/ ft$/, '')} to ${feet(to)}`

/** `31 to 60 ft PVC, 4 in`. */
export const stretchWords = ({ material, sizeFt, ...span }: ShownStretch): string =>
  [
    `${spanWords(span)}${material === null ? '' : ` ${MATERIAL_NOUNS[material]}`}`,
    ...(sizeFt === null ? [] : [printLength(sizeFt)]),
  ].join(', ')

/** Stations are told in feet, as a counter shows them: to a tenth. */
const feet = (ft: number): string => `${Number(ft.toFixed(1))} ft`
