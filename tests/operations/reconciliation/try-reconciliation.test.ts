import { expect, test } from 'vitest'
import { tryReconciliation } from '../../../src/operations/reconciliation/try-reconciliation.ts'
import { findingsEntry } from '../../../src/reading/entry/findings.ts'
import { permitEntry } from '../../../src/reading/entry/permit.ts'
import { book } from '../../reconcile/asked.ts'

const clock = () => new Date('2026-11-30T12:00:00Z')
const tried = (issuedOn: string, inspectedOn: string) =>
  tryReconciliation(
    { book, clock },
    {
      rules: 'quillback',
      asOf: null,
      permits: [permitEntry.parse({ number: '1', kind: 'new', issuedOn })],
      findings: findingsEntry.parse({ inspectedOn }),
    },
  )

test('a trial takes no date of the future, and offers the century before', () => {
  expect(tried('5/9/27', '2026-12-01')).toMatchObject({
    ok: false,
    error: {
      issues: [
        {
          pointer: '/permits/0/issuedOn',
          message: '2027-05-09 is in the future: today is 2026-11-30. If 1927 is meant, write 1927-05-09',
        },
        { pointer: '/findings/inspectedOn' },
      ],
    },
  })
  expect(tried('9/77', '2026-11-30').ok).toBe(true)
})
