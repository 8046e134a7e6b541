/** Why a rule gives no figure: a fact it needs is missing, it is silent there, or it calls the soil unsuitable. */
export type NotStated = {
  readonly reason:
    | 'needs-bedrooms'
    | 'needs-flow'
    | 'needs-perc-rate'
    | 'needs-soil'
    | 'needs-gravel-depth'
    | 'pits-only'
    | 'beyond-table'
    | 'unsuitable'
    | 'no-rate'
    | 'no-such-soil'
    | 'no-such-pair'
    | 'which-row'
  /** The rule's own name for its table. */
  readonly table: string
  /** What it was asked with and says nothing of: so many bedrooms, gpd or min/in, a soil, a pair of things. */
  readonly given: number | string | null
  /** What it has rows for instead. */
  readonly among: readonly string[]
}

export const notStated = (
  reason: NotStated['reason'],
  table: string,
  given: NotStated['given'] = null,
  among: readonly string[] = [],
): NotStated => ({ reason, table, given, among })
