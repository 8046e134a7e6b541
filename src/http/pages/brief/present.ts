import type { InspectionBrief } from '../../../brief/inspection-brief.ts'
import type { Sureness } from '../../../brief/recorded.ts'
import { doubtOf, doubtWords } from '../../../words/gaps.ts'
import { dayInWords } from '../words/dates.ts'
import { capital } from '../words/plain.ts'
import { permitInWords } from '../words/sources.ts'

export type BriefLine = {
  readonly what: string
  readonly says: string
  readonly sure: string
  readonly from: string
}
export type BriefPart = {
  readonly title: string
  readonly lines: readonly BriefLine[]
  /** What is usual and not on record. */
  readonly usual: readonly string[]
}

const SURE: { readonly [S in Sureness]: string } = {
  confirmed: '',
  corrected: 'corrected by a reviewer',
  unreadable: 'cannot be read',
  contradictory: 'the permits contradict each other',
}

/** The record part by part, with what is usual beside it and marked as such. */
export function presentBriefParts({ recorded, expected }: InspectionBrief): readonly BriefPart[] {
  const keys = [...new Set([null, ...[...recorded, ...expected].map(({ component }) => component)])]
  return keys
    .map((key) => ({
      title: key === null ? 'The system' : capital(tagOf(key)),
      lines: recorded
        .filter(({ component }) => component === key)
        .map(({ what, says, sureness, origins }) => ({
          what: capital(what),
          says,
          sure: SURE[sureness],
          from: origins.map(({ permit }) => permit.number).join(', '),
        })),
      usual: expected.filter(({ component }) => component === key).map(({ says }) => capital(says)),
    }))
    .filter(({ lines, usual }) => lines.length + usual.length > 0)
}

/** A component is known by its name on the permit that put it in. */
const tagOf = (key: string): string => key.slice(key.indexOf('/') + 1)

/** The permits that the brief rests on, and reasons not to rely on them. */
export function presentFile({
  permits,
  unapproved,
  contradictions,
  asOf,
}: InspectionBrief): readonly string[] {
  return [
    permits.length === 0
      ? `No permit was approved by ${dayInWords(asOf)}.`
      : `Built under ${permits.map(permitInWords).join('; ')}.`,
    ...(unapproved.length > 0
      ? [
          `On file without final approval: ${unapproved.map(({ number }) => number).join(', ')}. What they show may not have been built.`,
        ]
      : []),
    ...contradictions.map((it) => `The permits contradict each other: ${doubtWords(doubtOf(it))}.`),
  ]
}
