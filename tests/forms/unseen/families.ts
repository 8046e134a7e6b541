import { dice } from '../dice.ts'
import type { Paper } from '../make.ts'
import { type Face, newPdf, Sheet } from '../sheet.ts'
import { type Era, makeTruth } from '../truth.ts'
import { certificate1981 } from './certificate-1981.ts'
import type { Desk } from './desk.ts'
import { docket1954 } from './docket-1954.ts'
import { film1966 } from './film-1966.ts'
import { ledger1961 } from './ledger-1961.ts'
import { plan1994 } from './plan-1994.ts'
import { questions1973 } from './questions-1973.ts'
import { repair1988 } from './repair-1988.ts'
import { report2008 } from './report-2008.ts'

type Family = {
  readonly draw: (desk: Desk) => void
  readonly era: Era
  readonly size: 'LETTER' | [number, number]
  readonly permits: number
  readonly faces: readonly Face[]
  readonly points: number
}

/**
 * Layouts that no reading was ever trained on or tuned to: drawn by code of its own before the model was trained. They
 * measure first contact, so nothing may be changed after looking at what is read of them.
 */
export const UNSEEN = {
  'docket-1954': {
    draw: docket1954,
    era: 1958,
    size: 'LETTER',
    permits: 6,
    faces: ['Courier', 'Typewriter'],
    points: 10,
  },
  'ledger-1961': {
    draw: ledger1961,
    era: 1958,
    size: [792, 612],
    permits: 9,
    faces: ['Courier', 'Typewriter'],
    points: 8,
  },
  'film-1966': {
    draw: film1966,
    era: 1967,
    size: [792, 396],
    permits: 2,
    faces: ['Courier', 'Typewriter'],
    points: 8.5,
  },
  'questions-1973': {
    draw: questions1973,
    era: 1978,
    size: 'LETTER',
    permits: 1,
    faces: ['Courier', 'Typewriter'],
    points: 10,
  },
  'certificate-1981': {
    draw: certificate1981,
    era: 1978,
    size: 'LETTER',
    permits: 1,
    faces: ['Courier', 'Typewriter'],
    points: 10,
  },
  'repair-1988': {
    draw: repair1988,
    era: 1986,
    size: 'LETTER',
    permits: 1,
    faces: ['Courier', 'Dot matrix'],
    points: 10,
  },
  'plan-1994': {
    draw: plan1994,
    era: 1986,
    size: 'LETTER',
    permits: 1,
    faces: ['Helvetica', 'Courier'],
    points: 9,
  },
  'report-2008': {
    draw: report2008,
    era: 2015,
    size: 'LETTER',
    permits: 1,
    faces: ['Helvetica', 'Times-Roman'],
    points: 9,
  },
} as const satisfies Record<string, Family>
export type FamilyName = keyof typeof UNSEEN
export const FAMILIES = Object.keys(UNSEEN) as FamilyName[]

/** One page of a family from a seed, as a PDF with its own text, and what each of its permits says. */
export async function unseenPage(name: FamilyName, seed: number): Promise<{ pdf: Buffer; papers: Paper[] }> {
  const { draw, era, size, permits, faces, points }: Family = UNSEEN[name]
  const roll = dice(seed * 9973 + name.length * 131 + name.charCodeAt(0))
  const { pdf, bytes } = newPdf(size)
  const face = roll.pick(faces)
  const sheets = Array.from(
    { length: permits },
    (_, nth) => new Sheet(pdf, makeTruth(seed * 64 + nth + 11, era), face, points),
  )
  draw({ sheets, roll, face })
  pdf.end()
  return { pdf: await bytes, papers: sheets.map(({ truth, shown }) => ({ truth, shown, pages: [1] })) }
}
