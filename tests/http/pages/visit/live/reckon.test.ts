import { describe, expect, test } from 'vitest'
import { must } from '../../../../../src/base/result.ts'
import { readStories } from '../../../../../src/cli/demonstration/read-stories.ts'
import { FIRMS } from '../../../../../src/cli/demonstration/story.ts'
import { loadRuleBook } from '../../../../../src/files/rule-packs.ts'
import type { VisitFile } from '../../../../../src/http/pages/visit/file.ts'
import { formOf } from '../../../../../src/http/pages/visit/form/from-record.ts'
import { rulesText } from '../../../../../src/http/pages/visit/server/file.ts'
import { reconcile } from '../../../../../src/reconcile/reconcile.ts'
import type { FiledPermit } from '../../../../../src/records/permit.ts'
import { canonicalText } from '../../../../../src/store/canonical.ts'
import { bundledFloors } from './bundle.ts'

/**
 * What the phone says while the lid is open is what the service says once it is sent, to the byte: for every visit of
 * every story, through JSON as it travels, by the bundle as it is served, with one county's rules instead of all.
 */
const book = must(await loadRuleBook())
const floors = await bundledFloors()
const rules = JSON.parse(rulesText(book, 'quillback').text)
const visits = readStories().flatMap(({ slug, parcels }) =>
  parcels.flatMap((parcel) =>
    parcel.findings.map((visit, index) => [`${slug}, visit ${index + 1}`, parcel, visit] as const),
  ),
)

const filed = (permits: (typeof visits)[number][1]['permits']): readonly FiledPermit[] =>
  permits.map(({ record }) => ({
    id: record.number,
    revision: 1,
    record,
    sources: { '': { kind: 'typed', by: 'records clerk', on: record.issuedOn ?? record.approvedOn! } },
  }))

describe('the phone and the service', () => {
  test('there are visits to compare', () => expect(visits.length).toBeGreaterThan(40))

  test.each(visits)('%s', (_, parcel, visit) => {
    const asOf = visit.submittedOn
    const given = { county: 'quillback', asOf, permits: filed(parcel.permits), corrections: [] }
    const [findings, firm] = ['visit 1', FIRMS[visit.firm]]
    const service = reconcile({
      ...given,
      book,
      findings: { id: findings, firm, submittedOn: asOf, record: visit.record },
    })
    const traveled: VisitFile['given'] = JSON.parse(JSON.stringify({ ...given, firm }))
    const typed = formOf(visit.record, [])
    const { record } = floors.readForm(JSON.parse(JSON.stringify(typed)))
    const phone = floors.reckon({ ...traveled, book: floors.bookOf(rules), findings }, record!)
    expect(canonicalText(phone)).toBe(canonicalText(service))
  })
})
