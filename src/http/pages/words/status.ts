import type { StatusWord } from '../../../reconcile/status.ts'

/** The parcel's one word as it heads a page. */
export const STATUS_HEAD: { readonly [W in StatusWord]: string } = {
  'no-record': 'No record',
  'not-inspected': 'Not inspected',
  agrees: 'Agrees',
  'under-review': 'Under review',
  'action-needed': 'Action needed',
  settled: 'Settled',
  'out-of-date': 'Out of date',
}
