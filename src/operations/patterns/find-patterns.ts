import { fisherExact, holmAdjusted } from '../../measure/fisher-exact.ts'
import type { Person } from '../../store/database/actor.ts'
import { transact } from '../../store/database/transact.ts'
import {
  type GroupCount,
  misreadsByForm,
  shortfallsByDecade,
  unrecordedByStreet,
} from '../../store/patterns.ts'
import type { OperationContext } from '../context.ts'

/** One group held against all the others together. */
export type PatternRow = {
  readonly group: string
  readonly hits: number
  readonly total: number
  /** The same among all other groups. */
  readonly elsewhereHits: number
  readonly elsewhereTotal: number
  /** Two-sided, by Fisher's exact test; and raised for how many groups were looked at (Holm). */
  readonly probability: number
  readonly adjusted: number
}

export type Pattern = {
  readonly name: 'shortfalls-by-decade' | 'unrecorded-work-by-street' | 'misreads-by-form'
  readonly asks: string
  readonly counts: string
  /** Surest first. */
  readonly rows: readonly PatternRow[]
  /** Groups that are too small to say anything of; they count among the others. */
  readonly tooFew: number
  readonly cautions: readonly string[]
}

/** Below this a share says nothing, and on a short street would point at a household. */
export const LEAST = 5

const CAUTIONS = [
  'Inspected parcels are not a random sample. Inspections come with sales and complaints, so a group may look ' +
    'worse than it is.',
  'A small probability means that chance alone rarely does this. It does not say why. Look at the parcels before ' +
    'you draw conclusions.',
  `Groups of fewer than ${LEAST} are not shown. In small groups one parcel changes the share a lot: read the counts.`,
  'With many groups, some small probabilities are expected by chance. The adjusted probability allows for that.',
] as const

/** Where differences gather in a county, with what they are held against. Nobody is named: no firm, installer or owner. */
export const findPatterns = (
  { database }: Pick<OperationContext, 'database'>,
  actor: Person,
): Promise<readonly Pattern[]> =>
  transact(database, actor, async (tx) => [
    pattern(
      'shortfalls-by-decade',
      'In which decades are systems smaller than the record or the code says?',
      'Inspected parcels by decade of the first approved permit. Counted: capacity or absorption below record or code.',
      await shortfallsByDecade(tx),
    ),
    pattern(
      'unrecorded-work-by-street',
      'On which streets is unrecorded work more common?',
      'Inspected parcels by street. Counted: a line replaced without a permit, or a component not on record.',
      await unrecordedByStreet(tx),
    ),
    pattern(
      'misreads-by-form',
      'On which forms are values misread more often?',
      'Confirmed values by the form they are on. Counted: values that a person had to correct.',
      await misreadsByForm(tx),
    ),
  ])

export function pattern(
  name: Pattern['name'],
  asks: string,
  counts: string,
  groups: readonly GroupCount[],
): Pattern {
  const [hits, total] = [sum(groups.map((it) => it.hits)), sum(groups.map((it) => it.total))]
  const shown = groups.flatMap(({ name: group, ...own }) =>
    group === null || own.total < LEAST ? [] : [{ group, ...own }],
  )
  const rows = shown.map((own) => {
    const [elsewhereHits, elsewhereTotal] = [hits - own.hits, total - own.total]
    const probability = fisherExact(
      own.hits,
      own.total - own.hits,
      elsewhereHits,
      elsewhereTotal - elsewhereHits,
    )
    return { ...own, elsewhereHits, elsewhereTotal, probability }
  })
  const adjusted = holmAdjusted(rows.map(({ probability }) => probability))
  return {
    name,
    asks,
    counts,
    rows: rows
      .map((row, index) => ({ ...row, adjusted: adjusted[index]! }))
      .sort((a, b) => a.probability - b.probability || a.group.localeCompare(b.group)),
    tooFew: groups.length - shown.length,
    cautions: CAUTIONS,
  }
}

const sum = (counts: readonly number[]): number => counts.reduce((all, count) => all + count, 0)
