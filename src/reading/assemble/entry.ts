import type { ComponentDraft, EntryDraft, ProposedField } from '../proposal.ts'

/** Fields put together into a permit entry, by their pointers. */
export function entryFrom(fields: readonly ProposedField[]): EntryDraft {
  const entry: { [key: string]: unknown; components: ComponentDraft[] } = { components: [] }
  for (const { pointer, value } of fields) {
    const keys = pointer.split('/').slice(1)
    let at: Record<string, unknown> = entry
    keys.forEach((key, index) => {
      if (index === keys.length - 1) at[key] = value
      else {
        at[key] ??= {}
        at = at[key] as Record<string, unknown>
      }
    })
  }
  return entry as EntryDraft
}

/** Pointers that the permit entry or the as-built can't do without, and that no field gives. */
export function missingFrom(entry: EntryDraft, hasParcel: boolean): string[] {
  const missing: string[] = []
  if (entry.number === undefined) missing.push('/number')
  if (entry.kind === undefined) missing.push('/kind')
  if (entry.approvedOn === undefined) missing.push('/approvedOn')
  if (!hasParcel) missing.push('/parcelNumber')
  if (entry.components.length === 0) missing.push('/components')
  entry.components.forEach(({ tie }, index) => {
    if (!tie) return
    if (tie.a === undefined) missing.push(`/components/${index}/tie/a`)
    if (tie.b === undefined) missing.push(`/components/${index}/tie/b`)
  })
  const tied = entry.components.some(({ tie }) => tie)
  if (tied && entry.reference?.a === undefined) missing.push('/reference/a')
  if (tied && entry.reference?.b === undefined) missing.push('/reference/b')
  return missing
}
