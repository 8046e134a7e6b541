import type { FindingsRecord } from '../../../records/findings.ts'
import type { InspectionForm } from '../form/typed.ts'
import type { InspectionSheet } from '../sheet/sheet.ts'
import { stepsOf } from '../sheet/steps.ts'
import { allDifferences, type Difference, type Live, livePart, liveSystem } from './live.ts'
import { NOTHING_YET } from './nothing-yet.ts'
import { type ReckonWith, reckon } from './reckon.ts'

export type LiveStep = {
  readonly live: Live
  readonly differences: readonly Difference[]
  /** By the name of its step, what each vessel holds. */
  readonly holds: { readonly [step: string]: string }
}

/** What an inspection comes to, for one step of it and as a whole. Nothing while something in it can't be read. */
export function liveOf(
  sheet: Pick<InspectionSheet, 'parts' | 'wanted'>,
  form: InspectionForm,
  step: string,
  record: FindingsRecord | null,
  given: ReckonWith,
): LiveStep {
  if (record === null) return { live: NOTHING_YET, differences: [], holds: {} }
  const reckoned = reckon(given, record)
  const parts = stepsOf(sheet, form).flatMap((it) => (it.is === 'part' ? [it.part] : []))
  const lives = new Map(parts.map((part) => [part.id, livePart(reckoned, record, part, sheet.wanted)]))
  return {
    live: lives.get(step) ?? liveSystem(reckoned, form.start, sheet.wanted),
    differences: allDifferences(reckoned),
    holds: Object.fromEntries([...lives].flatMap(([id, { holds }]) => (holds === null ? [] : [[id, holds]]))),
  }
}
