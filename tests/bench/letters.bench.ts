/**
 * Letters a second: printing through the press's own process, sealing, and the printing alone in this process as the
 * limit; each kind on the parcel of twelve components.
 */
import { createHash, createPrivateKey } from 'node:crypto'
import { openPress } from '../../src/letters/press/press.ts'
import type { Sheet } from '../../src/letters/press/sheet.ts'
import { openTypesetter } from '../../src/letters/press/typeset.ts'
import { newKeyPem } from '../../src/letters/signing/key-source.ts'
import { openSigner } from '../../src/letters/signing/signer.ts'
import { briefSheet, factsOf, reportSheet, statusSheet, twelve } from '../letters/samples.ts'

/** In turn, so that a busy machine slows both. */
const ROUNDS = 9
const press = openPress()
const signer = await openSigner(createPrivateKey(newKeyPem()))

/** Every letter has its own number, so that nothing remembered is printed. */
const numbered = (sheet: Sheet, number: number): Sheet => {
  const [first, ...tighter] = sheet.contents.map((content) => {
    const { frame } = content as { frame: object }
    return { ...(content as object), frame: { ...frame, number: `2026-${number}` } }
  })
  return { ...sheet, contents: [first, ...tighter] }
}

let number = 10_000
async function timed(work: (sheet: Sheet) => unknown, sheet: Sheet, count: number): Promise<number> {
  const from = performance.now()
  for (let at = 0; at < count; at++) await work(numbered(sheet, number++))
  return (performance.now() - from) / count
}

const median = (values: readonly number[]): number => values.toSorted((a, b) => a - b)[values.length >> 1]!

const seal = async (pdf: Buffer): Promise<string> =>
  signer.sign({
    form: 'asfound-letter-1',
    kind: 'status',
    language: 'en',
    number: '2026-00001',
    county: { id: 'quillback', name: 'Quillback County' },
    parcel: { number: '07-0412-0031', address: null },
    issuedOn: '2026-06-01',
    asOf: '2026-06-01',
    status: 'resolved',
    check: 'https://records.quillback.example/letters/H7KQ-3MXR-9CWT-4FJD',
    pdfSha256: createHash('sha256').update(pdf).digest('hex'),
    reconciliation: null,
  })

/** The usual letter, which fits at once, and the one of twelve components, which is set anew until it fits. */
const few = { ...factsOf(twelve), standing: [], status: { ...factsOf(twelve).status, outstanding: [] } }
const sheets: readonly (readonly [string, Sheet, number])[] = [
  ['status letter', statusSheet(few), 12],
  ['status letter of a full parcel, set until it fits a page', statusSheet(factsOf(twelve)), 4],
  ['brief', briefSheet(twelve), 4],
  ['report', reportSheet(twelve), 2],
]
const typesetter = openTypesetter()
const whole = async (sheet: Sheet): Promise<string> => seal((await press.print(sheet)).pdf)
for (const [what, sheet, count] of sheets) {
  await timed(whole, sheet, count)
  await timed(typesetter.print, sheet, count)
  const rounds: { ours: number; limit: number }[] = []
  for (let round = 0; round < ROUNDS; round++) {
    rounds.push({
      ours: await timed(whole, sheet, count),
      limit: await timed(typesetter.print, sheet, count),
    })
  }
  const [ours, limit] = [median(rounds.map((it) => it.ours)), median(rounds.map((it) => it.limit))]
  console.log(
    JSON.stringify({
      what: `${what}, printed in the press's own process and sealed`,
      value: `${(1_000 / ours).toFixed(1)} a second`,
      limit: `printing alone, in this process: ${(1_000 / limit).toFixed(1)} a second`,
      ratio: Number(median(rounds.map((it) => it.ours / it.limit)).toFixed(2)),
      aim: 1.3,
    }),
  )
}
press.close()
