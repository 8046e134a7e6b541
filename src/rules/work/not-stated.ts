/** Why a rule gives no figure: a fact it needs is missing, it is silent there, or it calls the soil unsuitable. */
export type NotStated = {
  readonly reason:
    | 'needs-bedrooms'
    | 'needs-flow'
    | 'needs-reading'
    | 'beyond-table'
    | 'unsuitable'
    | 'no-such-row'
  readonly says: string
}
