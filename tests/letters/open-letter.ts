import decodeQr from 'qr/decode.js'
import { loadPdfjs } from '../../src/scan/child/open-pdf.ts'
import { pagePicture } from '../../src/scan/child/page-picture.ts'

/** What another program than the one that made it finds in a PDF. */
export type OpenedLetter = {
  readonly pages: number
  /** Of each page, words as they stand, single spaces. */
  readonly text: readonly string[]
  readonly title: string
  readonly language: string
  readonly marked: boolean
  /** The part of ISO 14289 that the file claims to keep; null where it claims none. */
  readonly accessibilityPart: string | null
  /** Roles of the structure tree in reading order, page by page. */
  readonly roles: readonly string[]
  readonly alternatives: readonly string[]
  /** What the QR code on the first page says, read from the page's picture. */
  readonly readQr: () => Promise<string>
}

/** As pdfjs hands it out; its own type leaves `alt` out. */
type Tagged = {
  readonly role: string
  readonly alt?: string
  readonly children: readonly (Tagged | object)[]
}

export async function openLetter(pdf: Uint8Array): Promise<OpenedLetter> {
  const { getDocument } = await loadPdfjs()
  const document = await getDocument({ data: new Uint8Array(pdf), verbosity: 0 }).promise
  const numbers = Array.from({ length: document.numPages }, (_, at) => at + 1)
  const [text, roles, alternatives]: [string[], string[], string[]] = [[], [], []]
  for (const number of numbers) {
    const page = await document.getPage(number)
    const { items } = await page.getTextContent()
    const words = items.map((item) => ('str' in item ? item.str + (item.hasEOL ? ' ' : '') : ''))
    text.push(words.join('').replace(/\s+/g, ' '))
    const walk = (node: Tagged): void => {
      roles.push(node.role)
      if (node.alt) alternatives.push(node.alt)
      for (const child of node.children) if ('children' in child) walk(child)
    }
    const tree = await page.getStructTree()
    if (tree) walk(tree as Tagged)
  }
  const { info, metadata } = await document.getMetadata()
  const { Title, Language } = info as { Title: string; Language: string }
  return {
    pages: document.numPages,
    text,
    title: Title,
    language: Language,
    marked: (await document.getMarkInfo())?.Marked === true,
    accessibilityPart: (metadata?.get('pdfuaid:part') as string | null | undefined) ?? null,
    roles,
    alternatives,
    readQr: async () => {
      const { data, width, height } = await pagePicture(document, await document.getPage(1), 200, 1e8)
      const rgba = new Uint8Array(width * height * 4)
      for (const [at, gray] of data.entries()) rgba.set([gray, gray, gray, 255], at * 4)
      return decodeQr({ width, height, data: rgba })
    },
  }
}
