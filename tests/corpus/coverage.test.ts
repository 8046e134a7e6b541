import { expect, test } from 'vitest'
import { yearIn } from '../../src/base/partial-date.ts'
import { SEARCH_OUTCOMES } from '../../src/catalog/choices.ts'
import { ABSORPTION_KINDS } from '../../src/catalog/kinds.ts'
import { readStories } from '../../src/cli/demonstration/read-stories.ts'
import { FIRMS } from '../../src/cli/demonstration/story.ts'
import { DISCREPANCY_KINDS, SEVERITIES } from '../../src/reconcile/kinds.ts'
import { VERDICTS } from '../../src/reconcile/outcome.ts'
import { STATUS_WORDS } from '../../src/reconcile/status.ts'
import { DECISION_ACTIONS } from '../../src/records/decision.ts'
import { PERMIT_ACTIONS, PERMIT_KINDS } from '../../src/records/permit.ts'

const stories = readStories()
const files = stories.flatMap(({ parcels }) => parcels)
const expectations = files.flatMap(({ expects, earlier }) => [expects, ...earlier])
const permits = files.flatMap((file) => file.permits.map(({ record }) => record))
const stated = permits.flatMap(({ components }) => components)
const found = files.flatMap((file) => file.findings.flatMap(({ record }) => record.components))

const covers = (what: string, wanted: readonly string[], there: Iterable<string>) =>
  test(`the stories cover every ${what}`, () => {
    expect(wanted.filter((one) => !new Set(there).has(one))).toEqual([])
  })

covers(
  'kind of discrepancy',
  DISCREPANCY_KINDS,
  expectations.flatMap((it) => it.discrepancies.map(({ kind }) => kind)),
)
covers(
  'severity',
  SEVERITIES,
  expectations.flatMap((it) => it.discrepancies.map(({ severity }) => severity)),
)
covers(
  'status',
  STATUS_WORDS,
  files.map(({ expects }) => expects.status),
)
covers(
  'verdict',
  VERDICTS,
  expectations.flatMap((it) => it.verdicts.map(({ verdict }) => verdict)),
)
covers(
  'kind of permit',
  PERMIT_KINDS,
  permits.map(({ kind }) => kind),
)
covers(
  'thing a permit does',
  PERMIT_ACTIONS,
  stated.map(({ action }) => action),
)
covers(
  'end of a search',
  SEARCH_OUTCOMES,
  found.map(({ outcome }) => outcome),
)
covers(
  'firm',
  Object.keys(FIRMS),
  files.flatMap((file) => file.findings.map(({ firm }) => firm)),
)
covers(
  'decision',
  DECISION_ACTIONS,
  files.flatMap((file) => file.decisions.map(({ action }) => action)),
)
covers(
  'material that tanks were made of',
  ['steel', 'concrete', 'concrete-block', 'fiberglass', 'polyethylene'],
  stated.flatMap(({ kind, material }) => (kind === 'tank' && material ? [material] : [])),
)
covers(
  'kind of part',
  [
    ...ABSORPTION_KINDS,
    'cesspool',
    'pump-chamber',
    'distribution-box',
    'outlet-baffle',
    'effluent-line',
    'well',
  ],
  stated.map(({ kind }) => kind),
)
covers(
  'way a parcel number ends',
  ['renumbered', 'split', 'merged'],
  files.flatMap(({ parcel }) => parcel.oldNumbers.map(({ kind }) => kind)),
)
covers(
  'decade from the 1950s to the 2020s',
  ['195', '196', '197', '198', '199', '200', '201', '202'],
  permits.map(({ approvedOn, issuedOn }) => String(yearIn((approvedOn ?? issuedOn)!)).slice(0, 3)),
)

test('some tank has a companion in series, and some parcel three pits', () => {
  const counts = (kind: string) =>
    permits.map(({ components }) => components.filter((it) => it.kind === kind).length)
  expect(Math.max(...counts('tank'))).toBeGreaterThanOrEqual(2)
  expect(Math.max(...counts('seepage-pit'))).toBeGreaterThanOrEqual(3)
})

test('the county is as large as promised, and no parcel or permit stands in it twice', () => {
  // Another file of a parcel is of another of its systems, and says of which.
  const first = files.filter(
    (file) => !file.system || files.find(({ parcel }) => parcel.number === file.parcel.number) === file,
  )
  const numbers = first.map(({ parcel }) => parcel.number)
  expect(numbers.length).toBeGreaterThanOrEqual(34)
  expect(numbers.filter((number, at) => numbers.indexOf(number) < at)).toEqual([])
  const papers = permits.map(({ number }) => number)
  expect(papers.filter((number, at) => papers.indexOf(number) < at)).toEqual([])
})

test('every key and every target of the stories leads to something', () => {
  const astray = files.flatMap(({ parcel, permits: own, findings, decisions }) => {
    const keys = own.flatMap(({ record }) => record.components.map(({ tag }) => `${record.number}/${tag}`))
    const named = findings.flatMap(({ record }) => record.components.flatMap(({ key }) => key ?? []))
    const decided = decisions
      .map(({ subject }) => subject)
      .filter((subject) => !/^(system$|found\/)/.test(subject))
    return [...named, ...decided]
      .filter((key) => !keys.includes(key))
      .map((key) => `${parcel.number}: ${key}`)
  })
  expect(astray).toEqual([])
})
