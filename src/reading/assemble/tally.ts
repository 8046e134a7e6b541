import type { EntryDraft, ProposedField, ProposedPermit } from '../proposal.ts'
import { sameValue } from './choose.ts'
import { askAt, stepOf, type Tally } from './own-shares.ts'

/** What makes a component says nothing of how well its values were read; an address is kept as the county's list has it. */
const UNCOUNTED = /\/(?:tag|action)$|^\/components\/\d+\/kind$|^\/reference\/wall$/

/**
 * Which of a proposal's readings were confirmed as they were read: those that stand in the permit entered, in other words
 * of the same value too. Confidences count as they were before the county's own confirmations moved them; of proposals that were made
 * before those were kept, nothing counts.
 */
export function tallyOf(
  { fields, entry: proposed, parcelNumber }: ProposedPermit,
  entry: EntryDraft,
  parcel: string | null,
): Tally[] {
  const tallies = new Map<string, Tally>()
  const count = (field: ProposedField, isConfirmed: boolean): void => {
    if (!field.general) return
    const { seenBy: witness, confidence } = field.general
    const step = stepOf(confidence)
    const ask = askAt(field.pointer)
    const name = `${witness} ${step} ${ask}`
    const known = tallies.get(name) ?? { witness, step, ask, confirmed: 0, changed: 0 }
    tallies.set(name, {
      ...known,
      confirmed: known.confirmed + Number(isConfirmed),
      changed: known.changed + Number(!isConfirmed),
    })
  }
  for (const field of fields) {
    if (UNCOUNTED.test(field.pointer)) continue
    const value = valueIn(entry, inEntry(field.pointer, proposed, entry))
    count(field, value !== undefined && sameValue(value, field.value))
  }
  if (parcelNumber && parcel !== null) count(parcelNumber, sameValue(parcel, parcelNumber.value))
  return [...tallies.values()]
}

/** The tallies of several permits as one list. */
export const together = (tallies: readonly Tally[]): Tally[] =>
  [...Map.groupBy(tallies, ({ witness, step, ask }) => `${witness} ${step} ${ask}`).values()].map((own) => ({
    ...own[0]!,
    confirmed: own.reduce((sum, { confirmed }) => sum + confirmed, 0),
    changed: own.reduce((sum, { changed }) => sum + changed, 0),
  }))

/** Components are told apart by their names: one taken out moves no other. */
function inEntry(pointer: string, proposed: EntryDraft, entry: EntryDraft): readonly string[] {
  const keys = pointer.split('/').slice(1)
  if (keys[0] !== 'components') return keys
  const tag = proposed.components[Number(keys[1])]?.tag
  return [
    'components',
    String(entry.components.findIndex((component) => component.tag === tag)),
    ...keys.slice(2),
  ]
}

function valueIn(entry: EntryDraft, keys: readonly string[]): string | number | undefined {
  const value = keys.reduce<unknown>(
    (at, key) => (typeof at === 'object' && at !== null ? (at as Record<string, unknown>)[key] : undefined),
    entry,
  )
  return typeof value === 'string' || typeof value === 'number' ? value : undefined
}
