/** One reconciliation of a parcel of twelve components, against parsing and printing the same input and output as JSON. */
import { must } from '../../src/base/result.ts'
import { loadRuleBook } from '../../src/files/rule-packs.ts'
import { reconcile } from '../../src/reconcile/reconcile.ts'
import { parcelOfTwelve } from './parcel-of-twelve.ts'
import { sideBySide } from './side-by-side.ts'

const book = must(await loadRuleBook())
const input = { ...parcelOfTwelve, book }
const inputText = JSON.stringify(parcelOfTwelve)
const outputText = JSON.stringify(reconcile(input))

const { ours, limit, ratio } = sideBySide(
  () => JSON.stringify(reconcile(input)),
  () => JSON.stringify(JSON.parse(inputText)).length + JSON.stringify(JSON.parse(outputText)).length,
)
console.log(
  JSON.stringify({
    what: 'reconciliation of a parcel of 12 components, steps and result printed',
    value: `${(ours / 1000).toFixed(0)} µs`,
    limit: `JSON of the same input (${inputText.length} B) and output (${outputText.length} B): ${(limit / 1000).toFixed(0)} µs`,
    ratio: Number(ratio.toFixed(2)),
    aim: 3,
  }),
)
