import { ok } from '../../base/result.ts'
import { belongsToComponent, type Correctable, correctionValue } from '../../reading/entry/correction.ts'
import type { EntryIssue } from '../../reading/entry/issues.ts'
import type { ReconcileInput } from '../../reconcile/case.ts'
import { asBuiltOn } from '../../records/fold.ts'
import type { CorrectionDecided } from '../../store/decisions.ts'
import { type Answer, invalid } from '../refusal.ts'

/** A correction as a reviewer writes it. */
export type CorrectionAsked = {
  /** The permit whose value it corrects. */
  readonly permit: string
  /** Key of the component in the as-built; null for a value of the whole system. */
  readonly component: string | null
  readonly field: Correctable
  readonly value: unknown
}

/** Reads a correction against the file it corrects; every fault at once, pointers into the body. */
export function readCorrection(
  { permit, component, field, value }: CorrectionAsked,
  { permits, corrections, asOf, system }: ReconcileInput,
): Answer<CorrectionDecided> {
  const asBuilt = asBuiltOn(permits, corrections, asOf, system?.serves)
  const issues: EntryIssue[] = []
  const fault = (pointer: string, message: string) =>
    issues.push({ pointer: `/correction/${pointer}`, message })
  if (!permits.some(({ id }) => id === permit)) {
    fault('permit', 'is not a permit in the file of this parcel')
  } else if (!asBuilt.permits.some(({ id }) => id === permit)) {
    fault('permit', 'has no final approval, so it builds nothing: enter the approval before its values')
  }
  if (!belongsToComponent(field) && component !== null) {
    fault('component', `${field} is a value of the whole system: leave out the component`)
  }
  if (belongsToComponent(field) && !asBuilt.components.some(({ key }) => key === component)) {
    const keys = asBuilt.components.map(({ key }) => key).join(', ')
    fault(
      'component',
      `${field} is a value of a component: write one of these keys: ${keys || 'none on record'}`,
    )
  }
  const kind = asBuilt.components.find(({ key }) => key === component)?.kind
  const read = correctionValue(field, value, ['correction', 'value'], kind)
  if (!read.ok) issues.push(...read.error)
  if (!read.ok || issues.length > 0) return invalid(...issues)
  return ok({ permit, component, field, value: read.value, written: value })
}
