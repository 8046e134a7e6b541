import type { Compartments } from '../values/compartments.ts'

/**
 * Least number of compartments. A row's condition counts only where the fact is known; `unsure` says that an unknown
 * fact could ask for more.
 */
export function requiredCompartments(
  rule: Compartments,
  tank: { readonly bedrooms: number | null; readonly gal: number | null },
): { readonly minimum: number; readonly unsure: boolean } {
  let [minimum, most] = [0, 0]
  for (const row of rule.rows) {
    const met = (from: number | null, fact: number | null): boolean | null =>
      from === null ? true : fact === null ? null : fact >= from
    const [bedrooms, gal] = [met(row.bedroomsFrom, tank.bedrooms), met(row.galFrom, tank.gal)]
    if (bedrooms === false || gal === false) continue
    most = Math.max(most, row.minimum)
    if (bedrooms && gal) minimum = Math.max(minimum, row.minimum)
  }
  return { minimum, unsure: most > minimum }
}
