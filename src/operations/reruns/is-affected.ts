import { canonicalText } from '../../base/canonical.ts'
import type { ReconcileInput } from '../../reconcile/case.ts'
import { reconcile } from '../../reconcile/reconcile.ts'
import type { RuleBook } from '../../rules/book.ts'
import type { ParameterName } from '../../rules/parameters.ts'
import type { LastAnswer } from '../../store/many-parcels.ts'
import type { InputsNamed } from '../../store/reconciliations.ts'
import { ruleBookHash } from '../../store/rule-books.ts'
import { ENGINE } from '../reconciliation/engine.ts'
import { nameInputs } from '../reconciliation/gather-input.ts'
import { notingUse, parametersChanged } from './parameters-changed.ts'

/** Finds a state of the rules that an earlier answer rests on, by its hash. */
export type BookFinder = (hash: string) => Promise<RuleBook | undefined>

/**
 * Whether a parcel's answer could be another one now. It could not where its papers, corrections and inspection are those that
 * its newest answer names by hash, the day is not past the last on which that holds, the program is the same version,
 * and none of the rules that the answer asks for has changed.
 */
export async function isAffected(
  county: string,
  input: ReconcileInput,
  last: LastAnswer | undefined,
  bookBy: BookFinder,
): Promise<boolean> {
  if (!last) return input.permits.length > 0 || input.findings !== null
  if (last.engine !== ENGINE) return true
  if (last.goodUntil !== null && last.goodUntil < input.asOf) return true
  if (filePart(last.inputs) !== filePart(nameInputs(county, input))) return true
  if (last.inputs.ruleBook === ruleBookHash(input.book)) return false
  const before = await bookBy(last.inputs.ruleBook)
  if (!before) return true
  const changed = changedBetween(before, input.book, input.county)
  if (changed.size === 0) return false
  const { book, used } = notingUse(input.book, input.county)
  reconcile({ ...input, book })
  return [...changed].some((name) => used.has(name))
}

const filePart = ({ place, permits, corrections, findings }: InputsNamed): string =>
  canonicalText({ place, permits, corrections, findings })

const known = new WeakMap<RuleBook, WeakMap<RuleBook, Map<string, ReadonlySet<ParameterName>>>>()

/** Asked for every parcel of a county, and always the same. */
function changedBetween(before: RuleBook, now: RuleBook, place: string): ReadonlySet<ParameterName> {
  const byNow = known.get(before) ?? new WeakMap<RuleBook, Map<string, ReadonlySet<ParameterName>>>()
  known.set(before, byNow)
  const byPlace = byNow.get(now) ?? new Map<string, ReadonlySet<ParameterName>>()
  byNow.set(now, byPlace)
  const found = byPlace.get(place) ?? parametersChanged(before, now, place)
  byPlace.set(place, found)
  return found
}

/** Reads each state of the rules once. */
export function rememberingBooks(find: BookFinder): BookFinder {
  const books = new Map<string, Promise<RuleBook | undefined>>()
  return (hash) => {
    const book = books.get(hash) ?? find(hash)
    books.set(hash, book)
    return book
  }
}
