import type { PlainDate } from '../../src/base/plain-date.ts'
import { must } from '../../src/base/result.ts'
import { inspectionBrief } from '../../src/brief/inspection-brief.ts'
import { sitePlan } from '../../src/brief/site-plan/plan.ts'
import { loadRuleBook } from '../../src/files/rule-packs.ts'
import { printBrief } from '../../src/letters/content/brief.ts'
import { printDay } from '../../src/letters/content/day.ts'
import { LETTER_TITLES, type LetterFrame, type LetterKind } from '../../src/letters/content/frame.ts'
import { printableThroughout } from '../../src/letters/content/printable.ts'
import { type ReportFacts, report } from '../../src/letters/content/report.ts'
import { ROOMS, type StatusLetterFacts, statusLetter } from '../../src/letters/content/status-letter.ts'
import type { Sheet } from '../../src/letters/press/sheet.ts'
import { qrSvg } from '../../src/letters/qr.ts'
import { layOut, type ReconcileInput } from '../../src/reconcile/case.ts'
import { reconcile } from '../../src/reconcile/reconcile.ts'
import { statusOf } from '../../src/reconcile/status.ts'
import { asBuiltOn } from '../../src/records/fold.ts'
import { parcelOfTwelve } from '../bench/parcel-of-twelve.ts'

/** Letters without a database: what the county would send about a parcel of twelve components. */

export const book = must(await loadRuleBook())
export const twelve: ReconcileInput = { ...parcelOfTwelve, book }
export const CODE = 'H7KQ-3MXR-9CWT-4FJD'
export const CHECK = `https://records.quillback.example/letters/${CODE}`

export const frameOf = (kind: LetterKind, over: Partial<LetterFrame> = {}): LetterFrame => ({
  kind,
  language: 'en',
  title: LETTER_TITLES[kind],
  number: '2026-00017',
  county: 'Quillback County',
  parcel: { number: '07-0412-0031', address: '14 Heron Hollow Rd' },
  issuedOn: '2026-06-01' as PlainDate,
  asOf: '2026-06-01' as PlainDate,
  issued: printDay('2026-06-01' as PlainDate),
  asOfInWords: printDay('2026-06-01' as PlainDate),
  code: CODE,
  checkAddress: CHECK,
  checkSvg: { svg: qrSvg(CHECK) },
  ...over,
})

export function factsOf(input: ReconcileInput): StatusLetterFacts {
  const { asBuilt, ...answer } = reconcile(input)
  const standing = answer.discrepancies.map((discrepancy) => ({
    id: discrepancy.key,
    discrepancy,
    decided: null,
  }))
  const status = statusOf({
    hasApprovedPermit: asBuilt.permits.length > 0,
    hasInspection: input.findings !== null,
    decidedBefore: false,
    standing,
  })
  return {
    status,
    files: [{ system: null, file: { answer, permits: asBuilt.permits, on: asBuilt.on } }] as const,
    standing,
  }
}

const ready = (content: object): unknown => printableThroughout(content)

export function statusSheet(facts: StatusLetterFacts, frame = frameOf('status')): Sheet {
  const [first, ...tighter] = ROOMS.map((room) => ready(statusLetter(frame, facts, room)))
  return { kind: 'status', contents: [first, ...tighter], mostPages: 1 }
}

export function reportSheet(
  input: ReconcileInput,
  audience: 'firm' | 'reviewer' = 'reviewer',
  photos: ReportFacts['photos'] = { shown: [], all: 0 },
): Sheet {
  const content = report(frameOf('report'), {
    audience,
    reconciliation: reconcile(input),
    plan: sitePlan(layOut(input)),
    decisions: [],
    photos,
    firm: 'Marsh Road Septic Inspections',
    fingerprints: [{ what: 'Answer, SHA-256', value: 'c0ffee'.repeat(10) }],
  })
  return { kind: 'report', contents: [ready(content)], mostPages: null }
}

export function briefSheet(input: ReconcileInput): Sheet {
  const { components } = asBuiltOn(input.permits, input.corrections, input.asOf)
  const content = printBrief(frameOf('brief'), { brief: inspectionBrief(input), components })
  return { kind: 'brief', contents: [ready(content)], mostPages: null }
}
