import { describe, expect, test } from 'vitest'
import { canonicalText } from '../../../../src/base/canonical.ts'
import { must } from '../../../../src/base/result.ts'
import { readStories } from '../../../../src/cli/demonstration/read-stories.ts'
import { FIRMS } from '../../../../src/cli/demonstration/story.ts'
import { loadRuleBook } from '../../../../src/files/rule-packs.ts'
import type { InspectionFile } from '../../../../src/http/inspection/file.ts'
import { formOf } from '../../../../src/http/inspection/form/from-record.ts'
import { rulesText } from '../../../../src/http/inspection/server/file.ts'
import { reconcile } from '../../../../src/reconcile/reconcile.ts'
import type { FiledPermit } from '../../../../src/records/permit.ts'
import { bundledReckoning } from './bundle.ts'

/**
 * What the phone says while the lid is open is what the service says once it is sent, to the byte: for every inspection of
 * every story, through JSON as it travels, by the bundle as it is served, with one county's rules instead of all.
 */
const book = must(await loadRuleBook())
const reckoning = await bundledReckoning()
const rules = JSON.parse(rulesText(book, 'quillback').text)
const inspections = readStories().flatMap(({ slug, parcels }) =>
  parcels.flatMap((parcel) =>
    parcel.findings.map(
      (inspection, index) => [`${slug}, inspection ${index + 1}`, parcel, inspection] as const,
    ),
  ),
)

const filed = (permits: (typeof inspections)[number][1]['permits']): readonly FiledPermit[] =>
  permits.map(({ record }) => ({
    id: record.number,
    revision: 1,
    record,
    sources: { '': { kind: 'typed', by: 'records clerk', on: record.issuedOn ?? record.approvedOn! } },
  }))

describe('the phone and the service', () => {
  test('there are inspections to compare', () => expect(inspections.length).toBeGreaterThan(40))

  test.each(inspections)('%s', (_, parcel, inspection) => {
    const asOf = inspection.submittedOn
    const given = { county: 'quillback', asOf, permits: filed(parcel.permits), corrections: [] }
    const [findings, firm] = ['inspection 1', FIRMS[inspection.firm]]
    const service = reconcile({
      ...given,
      book,
      findings: { id: findings, firm, submittedOn: asOf, record: inspection.record },
    })
    const traveled: InspectionFile['given'] = JSON.parse(JSON.stringify({ ...given, firm }))
    const typed = formOf(inspection.record, [])
    const { record } = reckoning.readForm(JSON.parse(JSON.stringify(typed)))
    const phone = reckoning.reckon({ ...traveled, book: reckoning.bookOf(rules), findings }, record!)
    expect(canonicalText(phone)).toBe(canonicalText(service))
  })
})
