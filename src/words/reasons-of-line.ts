import type { ReasonOf } from '../reconcile/reason.ts'
import type { ChangedStretch } from '../reconcile/reason-of-line.ts'
import { DEFECT_NOUNS, MATERIAL_NOUNS, START_NOUNS } from './nouns.ts'
import { figure } from './quantity.ts'
import { listed } from './sentence.ts'
import { spanWords, stretchWords } from './stretches.ts'

/** A line that is not alike from end to end: which stretch of it is other pipe than the record's, and what nobody saw. */
export function stretchesWords(
  name: string,
  { start, changed, found, unseen }: ReasonOf<'stretches'>,
): string {
  const since = start === null ? '' : ` from ${START_NOUNS[start]}`
  const gap = unseen.length === 0 ? '' : `; the inspection says nothing of ${listed(unseen.map(spanWords))}`
  if (changed.length === 0)
    return `${name} is as recorded, stretch by stretch${since}: ${listed(found.map(stretchWords))}${gap}`
  return `${name}: ${changed.map((it) => changeWords(it, since)).join('; ')}; no approved permit shows the change${gap}`
}

function changeWords({ material, size, ...span }: ChangedStretch, since: string): string {
  const what = [
    ...(material
      ? [
          `the record has ${MATERIAL_NOUNS[material.recorded]}, the inspection found ${MATERIAL_NOUNS[material.found]}`,
        ]
      : []),
    ...(size
      ? [`the record has ${figure(size.recorded)} pipe, the inspection found ${figure(size.found)}`]
      : []),
  ]
  return `${spanWords(span)}${since} ${what.join(' and ')}`
}

/** What a camera saw wrong, and where to dig for it. */
export function defectWords(name: string, { seen, start, at, to, material }: ReasonOf<'defect'>): string {
  const where = to === null ? `${Number(at.toFixed(1))} ft` : spanWords({ from: at, to })
  const since = start === null ? '' : ` from ${START_NOUNS[start]}`
  const pipe = material === null ? '' : `, in ${MATERIAL_NOUNS[material]}`
  return `a camera saw ${DEFECT_NOUNS[seen]} in ${name} at ${where}${since}${pipe}`
}
