import { isBy } from '../../base/partial-date.ts'
import { SYSTEM } from '../../records/part.ts'
import { countsUntil } from '../../rules/apply/transfer-window.ts'
import { firm, open, required, sourceOf } from '../about.ts'
import { check } from '../check.ts'
import { known, lacking } from '../fact.ts'

/** An inspection goes stale when its window for a transfer has run out, or when work was approved after it. */
export const findingsAge = check({
  id: 'findings-age',
  raises: ['findings-stale', 'record-unclear'],
  subjects: ({ findings }) => (findings ? ['system'] : []),
  about: () => SYSTEM,
  facts: { findings: (_, { findings }) => (findings ? known(findings) : lacking({ gap: 'no-inspection' })) },
  rules: { window: { name: 'transfer.inspection-window-days', on: (_, { asOf }) => asOf, optional: true } },
  decide({ findings }, { window }, _, { asOf, permits }) {
    const { inspectedOn } = findings.record
    const since = permits.flatMap(({ record: { number, approvedOn } }) =>
      approvedOn !== null && isBy(approvedOn, asOf) !== false && isBy(approvedOn, inspectedOn) === false
        ? [{ number, approvedOn }]
        : [],
    )
    const unclear = permits.find(
      ({ record: { approvedOn } }) => approvedOn !== null && isBy(approvedOn, inspectedOn) === null,
    )
    if (since.length === 0 && unclear?.record.approvedOn) {
      const part = { ...SYSTEM, label: `the work under permit ${unclear.record.number}` }
      return {
        verdict: 'cannot-tell',
        raises: 'record-unclear',
        reason: { is: 'unclear', doubt: { gap: 'approved-when', part, permits: [unclear.record.number] } },
        certainty: open('undecided'),
      }
    }
    if (since.length > 0) {
      return {
        verdict: 'differs',
        raises: 'findings-stale',
        reason: { is: 'work-since', inspectedOn, permits: since },
        certainty: firm('by-dates'),
      }
    }
    const until = window ? countsUntil(window.value, inspectedOn) : null
    const over = until !== null && asOf > until
    return {
      verdict: over ? 'differs' : 'agrees',
      raises: over ? 'findings-stale' : null,
      reason: { is: 'counts', inspectedOn, until, over, source: window && sourceOf(window) },
      certainty: firm('by-dates'),
      exhibits: window && until !== null ? [required('counts-until', { day: until }, window)] : [],
    }
  },
})
