import type { Doubt, EntryDraft, ProposedField } from '../proposal.ts'
import { confusedReadings } from '../values/corrected.ts'
import { amountOf } from './amount.ts'
import type { Amounts, Relation } from './relation.ts'
import { relationsFor } from './relations.ts'

/** A value that breaks a relation is right about half as often as it would be. From the bench of synthetic papers. */
const BROKEN = 0.6
const MOST_READINGS = 4

/** `extra`: amounts that the paper states and the record has no place for, such as a loading rate. */
export type ExtraAmounts = ReadonlyMap<string, number>

/** Doubts for values that can't all be true together, each with the readings, one figure away, that would pass. */
export function crossChecked(
  fields: readonly ProposedField[],
  entry: EntryDraft,
  extra: ExtraAmounts,
): ProposedField[] {
  const known = new Map(fields.map((field) => [field.pointer, field.value]))
  const amounts =
    (changed?: { readonly pointer: string; readonly value: string | number }): Amounts =>
    (pointer) => {
      if (changed?.pointer === pointer) return amountOf(changed.value)
      const value = known.get(pointer)
      // One line where the paper gives no number of them.
      if (value === undefined) return extra.get(pointer) ?? (pointer.endsWith('/count') ? 1 : null)
      return amountOf(value)
    }
  const relations = relationsFor(entry)
  const broken = relations.filter(({ holds }) => holds(amounts()) === false)
  return fields.map((field) => {
    const own = broken.filter(({ pointers }) => pointers.includes(field.pointer))
    if (own.length === 0) return field
    const doubts = own.map(
      (relation): Doubt => ({
        kind: relation.kind,
        says: relation.says,
        readings: passing(field, relations, (value) => amounts({ pointer: field.pointer, value })),
      }),
    )
    // Of several values that clash, the one that a likely misreading would correct is the likelier culprit.
    const mendable = doubts.some(({ readings }) => readings.length > 0)
    return {
      ...field,
      confidence: field.confidence * (mendable ? BROKEN : 0.5 + BROKEN / 2),
      doubts: [...field.doubts, ...doubts],
    }
  })
}

/** Readings of a value, one usual confusion away, with which every relation it stands in holds. */
function passing(
  field: ProposedField,
  relations: readonly Relation[],
  amounts: (value: string | number) => Amounts,
): (string | number)[] {
  const own = relations.filter(({ pointers }) => pointers.includes(field.pointer))
  return confusedReadings(String(field.value))
    .map((reading) => (typeof field.value === 'number' ? Number(reading) : reading))
    .filter(
      (reading) => amountOf(reading) !== null && own.every(({ holds }) => holds(amounts(reading)) !== false),
    )
    .sort((a, b) => roundness(b) - roundness(a))
    .slice(0, MOST_READINGS)
}

/** Stated sizes are round: the reading with more noughts at its end is the likelier. */
const roundness = (reading: string | number): number =>
  /0*$/.exec(String(reading).replace(/\D+$/, ''))![0].length
