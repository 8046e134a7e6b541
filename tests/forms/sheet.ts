import { fileURLToPath } from 'node:url'
import PDFDocument from 'pdfkit'
import type { Truth } from './truth.ts'

/** Worn type, dot matrix and two hands: free fonts (OFL, Apache) as their packages bring them. */
export const DRAWN_FACES = {
  Typewriter: 'special-elite',
  'Dot matrix': 'vt323',
  'Printed hand': 'patrick-hand',
  'Running hand': 'shadows-into-light',
} as const

export type Face =
  | keyof typeof DRAWN_FACES
  | 'Courier'
  | 'Courier-Bold'
  | 'Helvetica'
  | 'Helvetica-Bold'
  | 'Times-Roman'
  | 'Times-Bold'
type Style = {
  readonly face?: Face
  readonly size?: number
  readonly width?: number
  readonly lineGap?: number
}

/** Pointers of the truth that a form shows; a form need not ask for everything. */
export type Shown = ReadonlySet<string>

/** A page to draw a form on, in points from the top left; remembers which values of the truth it has shown. */
export class Sheet {
  readonly pdf: PDFKit.PDFDocument
  readonly shown = new Set<string>()
  truth: Truth
  private face: Face
  private size: number

  constructor(pdf: PDFKit.PDFDocument, truth: Truth, face: Face, size: number) {
    this.pdf = pdf
    this.truth = truth
    this.face = face
    this.size = size
  }

  text(words: string, x: number, y: number, style: Style = {}): void {
    this.pdf
      .font(style.face ?? this.face)
      .fontSize(style.size ?? this.size)
      .text(words, x, y, {
        lineBreak: style.width !== undefined,
        ...(style.width ? { width: style.width } : {}),
        lineGap: style.lineGap ?? 0,
      })
  }

  /** The value at a pointer of the truth, as text; '' where the truth has none. Counts as shown. */
  value(pointer: string): string {
    const value = at(this.truth, pointer)
    if (value === null || value === undefined) return ''
    this.shown.add(pointer)
    return String(value)
  }

  has(pointer: string): boolean {
    const value = at(this.truth, pointer)
    return value !== null && value !== undefined
  }

  box(x: number, y: number, w: number, h: number): void {
    this.pdf.lineWidth(0.7).rect(x, y, w, h).stroke()
  }

  rule(x0: number, y: number, x1: number): void {
    this.pdf.lineWidth(0.5).moveTo(x0, y).lineTo(x1, y).stroke()
  }

  /** Index of the first component of a kind, -1 where there is none. */
  find(...kinds: readonly string[]): number {
    return (this.truth.entry.components ?? []).findIndex(({ kind }) => kinds.includes(kind))
  }
}

/** `/parcelNumber` and `/address` are the paper's, all else is the permit entry's. */
export function at(truth: Truth, pointer: string): unknown {
  if (pointer === '/parcelNumber') return truth.parcelNumber
  if (pointer === '/address') return truth.address
  let value: unknown = truth.entry
  for (const key of pointer.split('/').slice(1)) value = (value as Record<string, unknown> | undefined)?.[key]
  return value
}

/** A PDF document that comes out the same, byte for byte, whenever it is made. */
export function newPdf(size: 'LETTER' | [number, number]): {
  pdf: PDFKit.PDFDocument
  bytes: Promise<Buffer>
} {
  const pdf = new PDFDocument({
    size,
    margin: 36,
    autoFirstPage: true,
    info: { CreationDate: new Date(0), Title: 'Synthetic permit' },
  })
  for (const [face, name] of Object.entries(DRAWN_FACES))
    pdf.registerFont(
      face,
      fileURLToPath(import.meta.resolve(`@fontsource/${name}/files/${name}-latin-400-normal.woff`)),
    )
  const chunks: Buffer[] = []
  const bytes = new Promise<Buffer>((resolve, reject) => {
    pdf.on('data', (chunk: Buffer) => chunks.push(chunk))
    pdf.on('end', () => resolve(Buffer.concat(chunks)))
    pdf.on('error', reject)
  })
  return { pdf, bytes }
}
