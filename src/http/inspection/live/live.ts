import { isVessel } from '../../../catalog/kinds.ts'
import { printGalWithU } from '../../../measure/print/gallons.ts'
import { foundCapacity } from '../../../reconcile/facts/capacity.ts'
import type { Severity } from '../../../reconcile/kinds.ts'
import type { Outcome } from '../../../reconcile/outcome.ts'
import type { Discrepancy, Reconciliation } from '../../../reconcile/reconcile.ts'
import type { FindingsRecord } from '../../../records/findings.ts'
import { partFound } from '../../../records/part.ts'
import { remeasureWords, settleWhy } from '../../../words/acts.ts'
import { discrepancyWords } from '../../../words/follow-up.ts'
import { reasonWords } from '../../../words/reasons.ts'
import { filled, type PartForm, type Typed } from '../form/typed.ts'
import type { Wanted } from '../sheet/sheet.ts'

export type Difference = { readonly severity: Severity; readonly says: string }

/** What the numbers of one step come to, while the lid is still open. */
export type Live = {
  /** `1,016 ± 38 gal`, to the outlet invert. */
  readonly holds: string | null
  readonly differences: readonly Difference[]
  /** What was asked and agrees. */
  readonly agrees: readonly string[]
  /** Too rough to tell: the one measurement to take again. */
  readonly again: { readonly what: string; readonly why: string } | null
  /** Not measured yet, and would decide most. */
  readonly next: Pick<Wanted, 'what' | 'how' | 'settles'> | null
}

/** What the inspection so far comes to for one component. */
export function livePart(
  { outcomes, discrepancies }: Reconciliation,
  record: FindingsRecord,
  part: PartForm,
  wanted: readonly Wanted[],
): Live {
  const own = ({ subject }: Outcome): boolean =>
    subject.key === part.key || subject.key === `found/${part.label}`
  const found = record.components.find(({ label }) => label === part.label)
  const capacity =
    found?.outcome === 'found' && isVessel(found.kind) ? foundCapacity(found, '', partFound(found)) : null
  const mine = outcomes.filter(own)
  return {
    holds: capacity?.state === 'known' ? printGalWithU(capacity.value.gal) : null,
    differences: inTurn(discrepancies.filter(({ outcome }) => own(outcome))),
    agrees: found?.outcome === 'found' ? agreeing(mine) : [],
    again: tooRough(mine),
    next: found?.outcome === 'found' ? nextWanted(wanted, part.key, part.typed) : null,
  }
}

/** What is asked once for the whole system: the bedrooms, and what the rest comes to together. */
export function liveSystem(
  { outcomes, discrepancies }: Reconciliation,
  start: Typed,
  wanted: readonly Wanted[],
): Live {
  const own = ({ subject }: Outcome): boolean => subject.key === 'system'
  return {
    holds: null,
    differences: inTurn(discrepancies.filter(({ outcome }) => own(outcome))),
    agrees: agreeing(outcomes.filter(own)),
    again: tooRough(outcomes.filter(own)),
    next: nextWanted(wanted, null, start),
  }
}

export const allDifferences = ({ discrepancies }: Reconciliation): readonly Difference[] =>
  inTurn(discrepancies)

/** What was found comes first; what is still to be done, while the inspection goes on, after it. */
const inTurn = (all: readonly Discrepancy[]): readonly Difference[] => {
  const left = ({ kind }: Discrepancy): boolean => kind === 'inspection-incomplete'
  return [...all.filter((it) => !left(it)), ...all.filter(left)].map(difference)
}

const difference = (it: Discrepancy): Difference => ({
  severity: it.severity,
  says: discrepancyWords(it, 'firm'),
})

const agreeing = (outcomes: readonly Outcome[]): readonly string[] =>
  outcomes.flatMap((it) => (it.verdict === 'agrees' || it.verdict === 'suffices' ? [reasonWords(it)] : []))

/** What would settle an open question by itself comes before what would only help. */
function tooRough(outcomes: readonly Outcome[]): Live['again'] {
  const open = outcomes.flatMap(({ verdict, wouldSettle }) =>
    wouldSettle && (verdict === 'cannot-tell' || verdict === 'too-close-to-call') ? [wouldSettle] : [],
  )
  const best = open.find(({ settles }) => settles) ?? open[0]
  return best ? { what: remeasureWords(best.measurement), why: settleWhy(best) } : null
}

function nextWanted(wanted: readonly Wanted[], key: string | null, typed: Typed): Live['next'] {
  const said = filled(typed)
  const has = (field: string): boolean => said[field] !== undefined || said[`${field}.a`] !== undefined
  const next = wanted.find((it) => it.key === key && !has(it.field))
  return next ? { what: next.what, how: next.how, settles: next.settles } : null
}
