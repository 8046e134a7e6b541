import type { PDFPageProxy } from 'pdfjs-dist'
import type { Word } from '../../reading/page-words.ts'
import { charAdvances } from './char-advances.ts'

type Annotation = {
  readonly subtype?: string
  readonly fieldType?: string
  readonly fieldValue?: unknown
  readonly checkBox?: boolean
  readonly radioButton?: boolean
  readonly exportValue?: string
  readonly buttonValue?: string
  readonly contentsObj?: { readonly str?: string }
  readonly rect?: readonly number[]
  readonly hidden?: boolean
}

/** How a ticked and an unticked box of a form that was filled in on a screen are written among the words. */
const TICKED = '[X]'
const UNTICKED = '[ ]'

/** What was typed into the fields of a fillable form: it lies beside the page's text, not in it. */
export async function widgetWords(page: PDFPageProxy): Promise<Word[]> {
  const viewport = page.getViewport({ scale: 1 })
  const annotations = (await page.getAnnotations({ intent: 'display' })) as readonly Annotation[]
  return annotations.flatMap((annotation) => {
    const text = textOf(annotation)
    if (text === null || !annotation.rect || annotation.hidden === true) return []
    const [x1, y1, x2, y2] = viewport.convertToViewportRectangle([...annotation.rect]) as number[]
    const [left, right] = [Math.min(x1!, x2!), Math.max(x1!, x2!)]
    const [top, bottom] = [Math.min(y1!, y2!), Math.max(y1!, y2!)]
    const lines = text.split(/\r\n|\r|\n/)
    const lineHeight = Math.min((bottom - top) / lines.length, 14)
    return lines.flatMap((line, index) => {
      const advances = charAdvances(line)
      const em = Math.min(lineHeight * 0.8, (right - left) / (advances.at(-1) || 1))
      const y = lines.length === 1 ? (top + bottom - lineHeight) / 2 : top + index * lineHeight
      const words =
        line === TICKED || line === UNTICKED ? [{ 0: line, index: 0 }] : [...line.matchAll(/\S+/g)]
      return words.map((match) => ({
        text: match[0],
        box: {
          x: (left + advances[match.index]! * em) / viewport.width,
          y: y / viewport.height,
          w: ((advances[match.index + match[0].length]! - advances[match.index]!) * em) / viewport.width,
          h: lineHeight / viewport.height,
        },
        confidence: 1,
      }))
    })
  })
}

function textOf(annotation: Annotation): string | null {
  if (annotation.subtype === 'FreeText') return annotation.contentsObj?.str || null
  if (annotation.subtype !== 'Widget') return null
  if (annotation.checkBox === true)
    return annotation.fieldValue && annotation.fieldValue !== 'Off' ? TICKED : UNTICKED
  if (annotation.radioButton === true)
    return annotation.fieldValue === annotation.buttonValue ? TICKED : UNTICKED
  const { fieldValue } = annotation
  if (Array.isArray(fieldValue))
    return fieldValue.filter((value) => typeof value === 'string').join(', ') || null
  return typeof fieldValue === 'string' && fieldValue.trim() !== '' ? fieldValue : null
}
