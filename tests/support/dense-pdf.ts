/** A PDF written by hand, with as many pages as there are, each of lines of text; quicker to make than by a library. */
export function typedPdf(pages: readonly (readonly string[])[]): Buffer {
  const objects: string[] = []
  const add = (body: string): number => objects.push(body)
  add('<< /Type /Catalog /Pages 2 0 R >>')
  add('')
  add('<< /Type /Font /Subtype /Type1 /BaseFont /Helvetica >>')
  const kids = pages.map((lines) => {
    const text = lines.map((line) => `(${line.replaceAll(/[\\()]/g, '\\$&')}) Tj T*`).join('\n')
    const stream = `BT /F1 ${Math.max(3, Math.min(11, Math.floor(700 / lines.length)))} Tf ${Math.max(3, Math.floor(740 / lines.length))} TL 30 770 Td\n${text}\nET`
    const content = add(`<< /Length ${stream.length} >>\nstream\n${stream}\nendstream`)
    return add(
      `<< /Type /Page /Parent 2 0 R /MediaBox [0 0 612 792] /Contents ${content} 0 R /Resources << /Font << /F1 3 0 R >> >> >>`,
    )
  })
  objects[1] = `<< /Type /Pages /Count ${kids.length} /Kids [${kids.map((id) => `${id} 0 R`).join(' ')}] >>`
  let whole = '%PDF-1.4\n'
  const offsets = objects.map((body, index) => {
    const at = whole.length
    whole += `${index + 1} 0 obj\n${body}\nendobj\n`
    return at
  })
  const start = whole.length
  const rows = offsets.map((at) => `${String(at).padStart(10, '0')} 00000 n \n`).join('')
  whole += `xref\n0 ${objects.length + 1}\n0000000000 65535 f \n${rows}trailer\n<< /Size ${objects.length + 1} /Root 1 0 R >>\nstartxref\n${start}\n%%EOF\n`
  return Buffer.from(whole, 'latin1')
}

/** A permit as it is typed, one to a page. */
export const typedPermit = (number: number): readonly string[] => [
  'SEPTIC SYSTEM PERMIT',
  `PERMIT NO. ${1000 + number}`,
  `Parcel No. 07-04${String(10 + (number % 80)).padStart(2, '0')}-00${String(10 + (number % 90))}`,
  'Date Issued: June 4, 1974',
  'Bedrooms: 3',
  'Septic tank capacity: 1,000 gal concrete, two compartments',
  'Length 8 ft 6 in  Width 4 ft 10 in  Liquid depth 4 ft 0 in',
  'Absorption trenches: 4 lines of 75 ft, width 24 in',
  'Distance to well 110 ft. Distance to house 22 ft.',
  ...Array.from(
    { length: 12 },
    (_, line) => `Remarks line ${line}: gravel 12 in under pipe, cover 18 in, tank ${line} ft`,
  ),
]

/** One page with more on it than a page has. */
export const densePage = (words: number): readonly string[] =>
  Array.from({ length: Math.ceil(words / 20) }, (_, line) =>
    Array.from({ length: 20 }, (_, word) => `w${(line * 20 + word) % 997}`).join(' '),
  )
