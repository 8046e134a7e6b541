import type { EntryIssue } from '../../../reading/entry/issues.ts'
import type { ProposedPermit } from '../../../reading/proposal.ts'
import { leftOut, seenName } from './fields.ts'
import type { FormRead } from './read-form.ts'
import { surenessOf } from './sureness.ts'
import { type Typed, typedFromProposal } from './typed.ts'

/** What is wrong, by field; under `form` what belongs to none. */
export type Faults = Readonly<Record<string, string>>

/** The operation's faults, each beside its field and in words for somebody who sees a form. */
export function faultsOf(issues: readonly EntryIssue[], { nameAt }: FormRead): Faults {
  const faults: Record<string, string> = {}
  for (const issue of issues) {
    const within = issue.pointer.replace(/^\/permits\/0(\/entry)?/, '')
    const name = within === '/parcel' ? within : (nameAt(within) ?? 'form')
    faults[name] ??= said(name, issue)
  }
  return faults
}

function said(name: string, { message, kind }: EntryIssue): string {
  if (name === '/parcel' && kind === 'nothing') return 'Enter the parcel of this permit.'
  if (kind === 'choice') return 'Choose one from the list.'
  if (kind === 'nothing') return 'This is required. Enter what the document says.'
  return `${message.charAt(0).toUpperCase()}${message.slice(1)}.`.replace(/\.\.$/, '.')
}

/** Values to check that are as they were read, and that nobody has marked as checked. */
export function unseenFaults(typed: Typed, proposal: ProposedPermit | null): Faults {
  const proposed = typedFromProposal(proposal)
  const all = [...(proposal?.fields ?? []), ...(proposal?.parcelNumber ? [proposal.parcelNumber] : [])]
  return Object.fromEntries(
    all.flatMap((field) => {
      const name = field.pointer === '/parcelNumber' ? '/parcel' : field.pointer
      const part = /^\/components\/(\d+)\//.exec(name)?.[1]
      const isOut = part !== undefined && typed[leftOut(Number(part))] !== undefined
      const stands = (typed[name]?.trim() ?? '') === (proposed[name] ?? '').trim()
      if (surenessOf(field) !== 'check' || !stands || isOut || typed[seenName(name)] !== undefined) return []
      return [[name, 'Check this against the scan. Then mark the box or correct the value.']]
    }),
  )
}
