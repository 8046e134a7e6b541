/** Small PDFs that are wrong in one way each, written out by hand (ISO 32000-2, clauses 7.3 and 7.5). */
export function pdfOf(objects: readonly string[], root = 1): Buffer {
  let text = '%PDF-1.7\n'
  const offsets = objects.map((body, index) => {
    const at = text.length
    text += `${index + 1} 0 obj\n${body}\nendobj\n`
    return at
  })
  const start = text.length
  text += `xref\n0 ${objects.length + 1}\n0000000000 65535 f \n`
  for (const offset of offsets) text += `${String(offset).padStart(10, '0')} 00000 n \n`
  text += `trailer\n<< /Size ${objects.length + 1} /Root ${root} 0 R >>\nstartxref\n${start}\n%%EOF\n`
  return Buffer.from(text, 'latin1')
}

const stream = (dictionary: string, data: string): string =>
  `<< ${dictionary} /Length ${data.length} >>\nstream\n${data}\nendstream`
const CATALOG = '<< /Type /Catalog /Pages 2 0 R >>'
const FONT = '<< /Type /Font /Subtype /Type1 /BaseFont /Helvetica >>'

/** One page that says `text`; `more` goes into its dictionary, `objects` follow from number 6. */
export const onePage = (content: string, more = '', objects: readonly string[] = [], catalog = ''): Buffer =>
  pdfOf([
    `<< /Type /Catalog /Pages 2 0 R ${catalog} >>`,
    '<< /Type /Pages /Kids [3 0 R] /Count 1 >>',
    `<< /Type /Page /Parent 2 0 R /MediaBox [0 0 612 792] /Contents 4 0 R /Resources << /Font << /F1 5 0 R >> ${more} >> >>`,
    stream('', content),
    FONT,
    ...objects,
  ])

export const words = (text: string): string => `BT /F1 12 Tf 72 700 Td (${text}) Tj ET`

export const noPages = (): Buffer => pdfOf([CATALOG, '<< /Type /Pages /Kids [] /Count 0 >>'])

/** A tree of pages that leads back to itself. */
export const cyclic = (): Buffer =>
  pdfOf([
    CATALOG,
    '<< /Type /Pages /Kids [3 0 R] /Count 1 >>',
    '<< /Type /Pages /Kids [2 0 R] /Parent 2 0 R /Count 1 >>',
  ])

export const manyPages = (count: number): Buffer =>
  pdfOf([
    CATALOG,
    `<< /Type /Pages /Kids [${Array.from({ length: count }, (_, index) => `${index + 4} 0 R`).join(' ')}] /Count ${count} >>`,
    stream('', words('PERMIT NO. 1978-014')),
    ...Array.from(
      { length: count },
      () =>
        '<< /Type /Page /Parent 2 0 R /MediaBox [0 0 612 792] /Contents 3 0 R /Resources << /Font << /F1 << /Type /Font /Subtype /Type1 /BaseFont /Helvetica >> >> >> >>',
    ),
  ])

/** Forms within forms, each drawing the next ten times: ten to the power of `depth` drawings. */
export function nestedForms(depth: number): Buffer {
  const forms = Array.from({ length: depth }, (_, level) =>
    stream(
      `/Type /XObject /Subtype /Form /BBox [0 0 612 792] /Resources << /Font << /F1 5 0 R >> ${level + 1 < depth ? `/XObject << /X ${level + 7} 0 R >>` : ''} >>`,
      level + 1 < depth ? '/X Do '.repeat(10) : words('PERMIT'),
    ),
  )
  return onePage('/X Do', '/XObject << /X 6 0 R >>', forms)
}

/** A form that draws itself. */
export const selfDrawing = (): Buffer =>
  onePage('/X Do', '/XObject << /X 6 0 R >>', [
    stream(
      '/Type /XObject /Subtype /Form /BBox [0 0 612 792] /Resources << /XObject << /X 6 0 R >> >>',
      '/X Do',
    ),
  ])

/** Scripts that would run when a careless reader opens it. */
export const withScripts = (): Buffer =>
  onePage(
    words('PERMIT NO. 1978-014'),
    '',
    [],
    '/OpenAction << /S /JavaScript /JS (app.alert\\(1\\); while\\(true\\){}) >> /AA << /WC << /S /JavaScript /JS (while\\(true\\){}) >> >>',
  )

/** A picture of a size that unpacks to many gigabytes. */
export const pictureBomb = (side: number): Buffer =>
  onePage(`q 612 0 0 792 0 0 cm /I Do Q`, '/XObject << /I 6 0 R >>', [
    stream(
      `/Type /XObject /Subtype /Image /Width ${side} /Height ${side} /ColorSpace /DeviceRGB /BitsPerComponent 8 /Filter /RunLengthDecode`,
      '\u0080',
    ),
  ])

/** Strokes without end: `count` curves in one content stream. */
export const manyPaths = (count: number): Buffer =>
  onePage(`${'0 0 m 100 200 300 400 500 600 c S '.repeat(count)}${words('PERMIT')}`)

/** Pages of which only those named draw more than any reader has time for; the others say their number. */
export function someEndless(count: number, endless: readonly number[]): Buffer {
  const depth = 9
  const forms = Array.from({ length: depth }, (_, level) =>
    stream(
      `/Type /XObject /Subtype /Form /BBox [0 0 612 792] /Resources << ${level + 1 < depth ? `/XObject << /X ${level + 5} 0 R >>` : ''} >>`,
      level + 1 < depth ? '/X Do '.repeat(10) : '0 0 m 9 9 l S',
    ),
  )
  const first = 4 + depth
  const kids = Array.from({ length: count }, (_, index) => `${first + 2 * index} 0 R`).join(' ')
  return pdfOf([
    CATALOG,
    `<< /Type /Pages /Kids [${kids}] /Count ${count} >>`,
    FONT,
    ...forms,
    ...Array.from({ length: count }, (_, index) => [
      `<< /Type /Page /Parent 2 0 R /MediaBox [0 0 612 792] /Contents ${first + 2 * index + 1} 0 R /Resources << /Font << /F1 3 0 R >> /XObject << /X 4 0 R >> >> >>`,
      stream('', endless.includes(index + 1) ? '/X Do' : words(`PAGE ${index + 1}`)),
    ]).flat(),
  ])
}

/** Arrays within arrays, `depth` deep, where the page's contents are asked for. */
export const deepArrays = (depth: number): Buffer =>
  pdfOf([
    CATALOG,
    '<< /Type /Pages /Kids [3 0 R] /Count 1 >>',
    `<< /Type /Page /Parent 2 0 R /MediaBox [0 0 612 792] /Contents ${'['.repeat(depth)}4 0 R${']'.repeat(depth)} >>`,
    stream('', words('PERMIT')),
  ])

/** A page whose boxes make it larger than any paper. */
export const endlessPaper = (): Buffer =>
  Buffer.from(
    onePage('q 1e9 0 0 1e9 0 0 cm /I Do Q', '/XObject << /I 6 0 R >>', [
      stream(
        '/Type /XObject /Subtype /Image /Width 1 /Height 1 /ColorSpace /DeviceGray /BitsPerComponent 8',
        '0',
      ),
    ])
      .toString('latin1')
      .replace('[0 0 612 792]', '[0 0 1e9 1e9]'),
    'latin1',
  )
