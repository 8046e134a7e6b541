import { abstract1997 } from './first-contact/abstract-1997.ts'
import { card1969 } from './first-contact/card-1969.ts'
import { letter1993 } from './first-contact/letter-1993.ts'
import { register1949 } from './first-contact/register-1949.ts'
import { slip1983 } from './first-contact/slip-1983.ts'
import { asBuilt2003 } from './held-out/as-built-2003.ts'
import { fieldNotes1990 } from './held-out/field-notes-1990.ts'
import { form2009 } from './held-out/form-2009.ts'
import { sheet1972 } from './held-out/sheet-1972.ts'
import { card1958 } from './layouts/card-1958.ts'
import { form1978 } from './layouts/form-1978.ts'
import { form1986 } from './layouts/form-1986.ts'
import { form2015 } from './layouts/form-2015.ts'
import { ledger1967 } from './layouts/ledger-1967.ts'
import { letter } from './layouts/letter.ts'
import { printout1999 } from './layouts/printout-1999.ts'
import { type Face, newPdf, Sheet, type Shown } from './sheet.ts'
import { type Era, makeTruth, type Truth } from './truth.ts'

type Layout = {
  readonly era: Era
  readonly face: Face
  readonly size: number
  readonly draw: (sheet: Sheet) => void
}

/** The forms that readings are tuned on. */
export const LAYOUTS = {
  'card-1958': { era: 1958, face: 'Courier', size: 10, draw: card1958 },
  'ledger-1967': { era: 1967, face: 'Courier', size: 10, draw: ledger1967 },
  'form-1978': { era: 1978, face: 'Courier', size: 9.5, draw: form1978 },
  'form-1986': { era: 1986, face: 'Helvetica', size: 10, draw: form1986 },
  'printout-1999': { era: 1999, face: 'Courier', size: 9, draw: printout1999 },
  'form-2015': { era: 2015, face: 'Helvetica', size: 10, draw: form2015 },
  letter: { era: 1978, face: 'Times-Roman', size: 11, draw: letter },
} as const satisfies Record<string, Layout>

/** Forms that were written after the reading and that it is not tuned on: what they reach is the honest figure. */
export const HELD_OUT = {
  'sheet-1972': { era: 1967, face: 'Courier', size: 10, draw: sheet1972 },
  'field-notes-1990': { era: 1986, face: 'Courier', size: 10, draw: fieldNotes1990 },
  'as-built-2003': { era: 1999, face: 'Helvetica', size: 10, draw: asBuilt2003 },
  'form-2009': { era: 2015, face: 'Times-Roman', size: 10, draw: form2009 },
} as const satisfies Record<string, Layout>
/** Forms that were written later still and met the reading as it was: what they reached then is in docs/reading.md. */
export const FIRST_CONTACT = {
  'register-1949': { era: 1958, face: 'Courier', size: 10, draw: register1949 },
  'card-1969': { era: 1967, face: 'Courier', size: 10, draw: card1969 },
  'letter-1993': { era: 1986, face: 'Times-Roman', size: 11, draw: letter1993 },
  'slip-1983': { era: 1978, face: 'Courier', size: 10, draw: slip1983 },
  'abstract-1997': { era: 1999, face: 'Times-Roman', size: 10, draw: abstract1997 },
} as const satisfies Record<string, Layout>

const ALL = { ...LAYOUTS, ...HELD_OUT, ...FIRST_CONTACT }
export type LayoutName = keyof typeof ALL

export type Paper = { readonly truth: Truth; readonly shown: Shown; readonly pages: readonly number[] }
export type MadeForm = { readonly pdf: Buffer; readonly papers: readonly Paper[] }

/** A text PDF with a permit a page, each in its layout. With no truth given, one is made from the seed. */
export async function makeForm(
  papers: readonly {
    readonly layout: LayoutName
    readonly seed: number
    readonly truth?: Truth
    /** The face that values are filled in with; the layout's own where left out. */
    readonly face?: Face
  }[],
): Promise<MadeForm> {
  const { pdf, bytes } = newPdf('LETTER')
  const made = papers.map(({ layout, seed, truth: given, face: filledIn }, index): Paper => {
    const { era, face, size, draw } = ALL[layout]
    if (index > 0) pdf.addPage()
    const truth = given ?? makeTruth(seed, era)
    const sheet = new Sheet(pdf, truth, filledIn ?? face, size)
    draw(sheet)
    return { truth, shown: sheet.shown, pages: [index + 1] }
  })
  pdf.end()
  return { pdf: await bytes, papers: made }
}
