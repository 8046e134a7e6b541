import { expect, test } from 'vitest'
import { proposePermits } from '../../src/reading/propose.ts'
import { UNREAD_REASONS } from '../../src/scan/outcome.ts'
import { readDocument } from '../../src/scan/read-document.ts'
import { type Dice, dice } from '../forms/dice.ts'
import { makeForm } from '../forms/make.ts'
import { QUILLBACK } from '../forms/quillback.ts'
import { onePage, withScripts, words } from './broken-pdfs.ts'

/** `PDF_MUTATIONS=3000` for a long run; `PDF_MUTATIONS_SEED` to begin elsewhere. */
const COUNT = Number(process.env.PDF_MUTATIONS ?? 16)
const SEED = Number(process.env.PDF_MUTATIONS_SEED ?? 1)
const AT_ONCE = 2
const LIMITS = { openMs: 10_000, pageMs: 10_000, memoryBytes: 1024 * 1024 * 1024 }

/** Tokens that steer a reader of PDFs (ISO 32000-2, 7.2 to 7.5); one put for another leads it astray. */
const TOKENS = [
  'obj',
  'endobj',
  'stream',
  'endstream',
  '/Length',
  '/Kids',
  '/Count',
  '/Filter',
  '/FlateDecode',
  'xref',
  ' R',
  '<<',
  '>>',
]

const KINDS = ['bytes', 'cut', 'doubled', 'dropped', 'number', 'token'] as const
type Mutated = { readonly kind: (typeof KINDS)[number]; readonly pdf: Buffer }

function mutated(pdf: Buffer, roll: Dice): Mutated {
  const kind = roll.pick(KINDS)
  const [from, length] = [roll.whole(0, pdf.length - 1), roll.whole(1, 400)]
  const part = pdf.subarray(from, from + length)
  switch (kind) {
    case 'bytes': {
      const copy = Buffer.from(pdf)
      for (let at = roll.whole(1, 40); at > 0; at--) copy[roll.whole(0, copy.length - 1)] = roll.whole(0, 255)
      return { kind, pdf: copy }
    }
    case 'cut':
      return { kind, pdf: pdf.subarray(0, from) }
    case 'doubled':
      return { kind, pdf: Buffer.concat([pdf.subarray(0, from), part, pdf.subarray(from)]) }
    case 'dropped':
      return { kind, pdf: Buffer.concat([pdf.subarray(0, from), pdf.subarray(from + length)]) }
    case 'number':
      return {
        kind,
        pdf: replaced(pdf, /\d+/g, () => String(roll.pick([0, -1, 7, 65_536, 2 ** 31, 1e12])), roll),
      }
    case 'token':
      return {
        kind,
        pdf: replaced(
          pdf,
          /obj|stream|\/(?:Length|Kids|Count|Filter)|xref| R|<<|>>/g,
          () => roll.pick(TOKENS),
          roll,
        ),
      }
  }
}

function replaced(pdf: Buffer, pattern: RegExp, by: () => string, roll: Dice): Buffer {
  const text = pdf.toString('latin1')
  const chosen = roll.pick([...text.matchAll(pattern)])
  return Buffer.from(
    text.slice(0, chosen.index) + by() + text.slice(chosen.index + chosen[0].length),
    'latin1',
  )
}

test(
  `${COUNT} PDFs changed by chance each get an answer, and the service stays well`,
  async () => {
    const whole = [
      (await makeForm([{ layout: 'form-1978', seed: 5 }])).pdf,
      (await makeForm([{ layout: 'printout-1999', seed: 6 }])).pdf,
      withScripts(),
      onePage(words('PERMIT NO. 1978-014')),
    ]
    const outcomes = new Map<string, number>()
    const before = process.memoryUsage().rss
    let next = 0
    await Promise.all(
      Array.from({ length: AT_ONCE }, async () => {
        while (next < COUNT) {
          const seed = SEED + next++
          const roll = dice(seed * 7919)
          const { kind, pdf } = mutated(roll.pick(whole), roll)
          const from = Date.now()
          const reading = await readDocument(pdf, LIMITS, { pictures: 'leave', to: 3 }).catch((cause) => {
            throw new Error(`the PDF of seed ${seed} (${kind}) got no answer`, { cause })
          })
          outcomes.set(reading.outcome, (outcomes.get(reading.outcome) ?? 0) + 1)
          expect(Date.now() - from, `seed ${seed} (${kind})`).toBeLessThan(45_000)
          if (reading.outcome !== 'read')
            expect(reading.says, `seed ${seed} (${kind})`).toMatch(/^[A-Z].*\.$/)
          for (const page of reading.pages) {
            if (page.state === 'unread') expect(UNREAD_REASONS).toContain(page.why)
            else expect(proposePermits([page.words], QUILLBACK), `seed ${seed} (${kind})`).toHaveLength(1)
          }
        }
      }),
    )
    expect([...outcomes.values()].reduce((sum, count) => sum + count, 0)).toBe(COUNT)
    expect(process.memoryUsage().rss - before).toBeLessThan(400 * 1024 * 1024)
    expect(await readDocument(whole.at(-1)!)).toMatchObject({ outcome: 'read' })
  },
  Math.max(60_000, COUNT * 3000),
)
