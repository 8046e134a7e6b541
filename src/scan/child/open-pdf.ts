import { type FileHandle, open } from 'node:fs/promises'
import { createRequire } from 'node:module'
import { dirname, join } from 'node:path'
import { pathToFileURL } from 'node:url'
import type { PDFDocumentProxy } from 'pdfjs-dist'

type Pdfjs = typeof import('pdfjs-dist')

/** pdf-parse pins one pdfjs and the canvas that goes with it; a second copy of either breaks both. */
const fromHere = createRequire(import.meta.url)
const fromParser = createRequire(fromHere.resolve('pdf-parse'))
const pdfjsEntry = fromParser.resolve('pdfjs-dist/legacy/build/pdf.mjs')
const pdfjsFolder = dirname(dirname(dirname(pdfjsEntry)))

export const loadPdfjs = async (): Promise<Pdfjs> =>
  (await import(pathToFileURL(pdfjsEntry).href)) as unknown as Pdfjs

/** Larger files are read in ranges as they are needed, so that 500 MB never lie in memory at once. */
const IN_MEMORY_BYTES = 16 * 1024 * 1024
/** Larger pictures are skipped by pdfjs; the page then says that something on it was left out. */
export const MAX_IMAGE_PIXELS = 1e8

export type Opened =
  | {
      readonly ok: true
      readonly pdf: PDFDocumentProxy
      readonly notes: readonly string[]
      readonly hasImages: boolean
      readonly hasFields: boolean
    }
  | { readonly ok: false; readonly why: 'not-a-pdf' | 'encrypted' | 'truncated' | 'damaged' }

/** How much pdfjs says aloud on the console: nothing, or also what it left out. */
export type Verbosity = 0 | 1

export async function openPdf(path: string, verbosity: Verbosity = 0): Promise<Opened> {
  const file = await open(path, 'r')
  const { size } = await file.stat()
  const { hasHeader, hasEnd } = await ends(file, size)
  const whole = size > IN_MEMORY_BYTES || !hasHeader ? undefined : await file.readFile()
  // Only a file that is read in ranges is needed any longer.
  if (whole || !hasHeader) await file.close()
  if (!hasHeader) return { ok: false, why: 'not-a-pdf' }
  const pdfjs = await loadPdfjs()
  // The dictionary of a picture is a stream's and so never packed away (ISO 32000-2 7.5.7): its name is in plain sight.
  const hasImages = whole === undefined || names(whole, '/Image') || whole.includes('/Im#')
  // A page's dictionary may be packed away; where nothing is packed, what it does not name it has not.
  const hasFields =
    whole === undefined || ['/Annots', '/ObjStm', '/A#', '/#'].some((it) => whole.includes(it))
  const notes = hasEnd ? [] : ['The end of this file is missing; what could be recovered was read.']
  try {
    const source = whole
      ? { data: new Uint8Array(whole) }
      : { range: ranges(pdfjs, file, size), disableAutoFetch: true, disableStream: true }
    return { ok: true, pdf: await load(pdfjs, source, verbosity), notes, hasImages, hasFields }
  } catch (error) {
    if ((error as Error).name === 'PasswordException') return { ok: false, why: 'encrypted' }
    if (error instanceof RangeError || /allocation/i.test((error as Error).message)) throw error
    const repaired = whole && withTrailer(whole)
    if (repaired) {
      const pdf = await load(pdfjs, { data: repaired }, verbosity).catch(() => undefined)
      if (pdf) return { ok: true, pdf, notes, hasImages, hasFields }
    }
    return { ok: false, why: hasEnd ? 'damaged' : 'truncated' }
  }
}

/** Is a name there whole? `/ImageB` of an old procedure set is no picture. */
function names(whole: Buffer, name: string): boolean {
  for (let at = whole.indexOf(name); at >= 0; at = whole.indexOf(name, at + 1)) {
    const after = whole[at + name.length]
    if (after === undefined || !/[A-Za-z0-9]/.test(String.fromCharCode(after))) return true
  }
  return false
}

const load = (pdfjs: Pdfjs, source: object, verbosity: Verbosity): Promise<PDFDocumentProxy> =>
  pdfjs.getDocument({
    ...source,
    isEvalSupported: false,
    enableXfa: false,
    useSystemFonts: false,
    disableFontFace: true,
    maxImageSize: MAX_IMAGE_PIXELS,
    verbosity,
    cMapUrl: `${join(pdfjsFolder, 'cmaps')}/`,
    cMapPacked: true,
    standardFontDataUrl: `${join(pdfjsFolder, 'standard_fonts')}/`,
    wasmUrl: `${join(pdfjsFolder, 'wasm')}/`,
    iccUrl: `${join(pdfjsFolder, 'iccs')}/`,
  }).promise

/** A file cut short has lost the pointer to its catalog; the catalog itself is often still there to be found. */
function withTrailer(whole: Buffer): Uint8Array | undefined {
  const text = whole.toString('latin1')
  const catalog = [...text.matchAll(/(\d+) (\d+) obj\s*<<(?:(?!endobj)[\s\S])*?\/Type\s*\/Catalog\b/g)].at(-1)
  if (!catalog) return undefined
  const trailer = `\nendobj\ntrailer\n<< /Root ${catalog[1]} ${catalog[2]} R >>\nstartxref\n0\n%%EOF\n`
  return new Uint8Array(Buffer.concat([whole, Buffer.from(trailer)]))
}

/** ISO 32000-2 7.5.2 and annex I: readers accept the header within the first 1,024 bytes, the end mark likewise. */
async function ends(file: FileHandle, size: number): Promise<{ hasHeader: boolean; hasEnd: boolean }> {
  const span = Math.min(1024, size)
  const { buffer: head } = await file.read(Buffer.alloc(span), 0, span, 0)
  const { buffer: tail } = await file.read(Buffer.alloc(span), 0, span, size - span)
  return { hasHeader: head.includes('%PDF-'), hasEnd: tail.includes('%%EOF') }
}

function ranges(pdfjs: Pdfjs, file: FileHandle, size: number) {
  const transport = new pdfjs.PDFDataRangeTransport(size, null)
  transport.requestDataRange = (begin: number, end: number): void => {
    const length = end - begin
    void file
      .read(Buffer.alloc(length), 0, length, begin)
      .then(({ buffer }) => transport.onDataRange(begin, new Uint8Array(buffer)))
  }
  return transport
}
