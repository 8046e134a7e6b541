import { yearIn } from '../../base/partial-date.ts'
import type { ReconcileInput } from '../../reconcile/case.ts'
import type { DiscrepancyKind } from '../../reconcile/kinds.ts'
import type { Reconciliation } from '../../reconcile/reconcile.ts'
import { statedValue } from '../../records/claim.ts'
import type { AnswerChange } from './compare-answers.ts'

/** A parcel that would have another answer. */
export type ParcelChanged = {
  readonly parcel: string
  readonly number: string
  readonly decade: number | null
  readonly bedrooms: number | null
  readonly changes: readonly AnswerChange[]
}

export type KindTally = {
  readonly kind: DiscrepancyKind
  readonly appears: number
  readonly vanishes: number
  readonly changes: number
}
export type GroupTally = { readonly looked: number; readonly changed: number }

/** What a trial came to. Groups count all parcels that were looked at, so that each share can be seen. */
export type TrialTally = {
  readonly looked: number
  readonly changed: number
  readonly byKind: readonly KindTally[]
  readonly byDecade: readonly (GroupTally & { readonly decade: number | null })[]
  readonly byBedrooms: readonly (GroupTally & { readonly bedrooms: number | null })[]
  /** In the order of their numbers; at most `MOST_LISTED` of them. */
  readonly parcels: readonly ParcelChanged[]
}

/** The list is for people to go through; the counts are of all. */
export const MOST_LISTED = 10_000

/** The decade of the first approved permit, and the bedrooms that the record states now. */
export function groupsOf(
  input: ReconcileInput,
  { asBuilt }: Reconciliation,
): Pick<ParcelChanged, 'decade' | 'bedrooms'> {
  const approved = input.permits
    .flatMap(({ record }) => (record.approvedOn === null ? [] : [record.approvedOn]))
    .sort()
  const [first] = approved
  return {
    decade: first === undefined ? null : Math.floor(yearIn(first) / 10) * 10,
    bedrooms: statedValue(asBuilt.bedrooms),
  }
}

export function tallying() {
  let [looked, changed] = [0, 0]
  const kinds = new Map<DiscrepancyKind, KindTally>()
  const decades = new Map<number | null, GroupTally>()
  const bedrooms = new Map<number | null, GroupTally>()
  const listed: ParcelChanged[] = []
  const count = (groups: Map<number | null, GroupTally>, key: number | null, other: boolean) => {
    const before = groups.get(key) ?? { looked: 0, changed: 0 }
    groups.set(key, { looked: before.looked + 1, changed: before.changed + (other ? 1 : 0) })
  }
  return {
    add: (parcel: ParcelChanged): void => {
      const other = parcel.changes.length > 0
      looked += 1
      count(decades, parcel.decade, other)
      count(bedrooms, parcel.bedrooms, other)
      if (!other) return
      changed += 1
      if (listed.length < MOST_LISTED) listed.push(parcel)
      for (const { kind, change } of parcel.changes) {
        const before = kinds.get(kind) ?? { kind, appears: 0, vanishes: 0, changes: 0 }
        kinds.set(kind, { ...before, [change]: before[change] + 1 })
      }
    },
    counts: () => ({ looked, changed }),
    tally: (): TrialTally => ({
      looked,
      changed,
      byKind: [...kinds.values()].sort((a, b) => a.kind.localeCompare(b.kind)),
      byDecade: inOrder(decades).map(([decade, group]) => ({ decade, ...group })),
      byBedrooms: inOrder(bedrooms).map(([stated, group]) => ({ bedrooms: stated, ...group })),
      parcels: listed.toSorted((a, b) => a.number.localeCompare(b.number)),
    }),
  }
}

/** Smallest first, and what has none at the end. */
const inOrder = (groups: ReadonlyMap<number | null, GroupTally>) =>
  [...groups].sort(([a], [b]) => (a ?? Number.POSITIVE_INFINITY) - (b ?? Number.POSITIVE_INFINITY))
