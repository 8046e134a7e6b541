import type { NotStated } from '../rules/apply/not-stated.ts'

/** Why a rule gives no figure, as a clause. */
export function silenceWords({ reason, table, given, among }: NotStated): string {
  switch (reason) {
    case 'needs-bedrooms':
      return `${table} goes by the number of bedrooms, which is not known`
    case 'needs-flow':
      return `${table} goes by the daily design flow, which is not known`
    case 'needs-perc-rate':
      return `${table} goes by a percolation rate above zero, which is not known`
    case 'needs-soil':
      return `${table} goes by the soil, which is not known${given === null ? '' : ` (at ${given})`}`
    case 'needs-gravel-depth':
      return `${table} goes by the depth of gravel below the pipe, which is not known`
    case 'pits-only':
      return `${table} is for seepage pits only`
    case 'beyond-table':
      return `${table} has no row for ${given}`
    case 'unsuitable':
      return `${table} calls ${given} unsuitable`
    case 'no-rate':
      return `${table} gives area per bedroom and no application rate`
    case 'no-such-soil':
      return `${table} has no soil “${given}”; it has ${among.join(', ')}`
    case 'which-row':
      return `${table} goes by what it is, which is not known: ${given}`
    case 'no-such-pair':
      return `${table} has no row for ${given}${among.length === 0 ? '' : `, only for ${among.join(', ')}`}`
  }
}
