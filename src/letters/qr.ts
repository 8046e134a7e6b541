import { encode } from 'uqr'

/** The quiet zone that ISO/IEC 18004 asks for around the symbol, modules. */
const QUIET = 4

/** A QR code (ISO/IEC 18004, error correction M) as SVG: one path, each row's dark runs as bars. */
export function qrSvg(text: string): string {
  const { data, size } = encode(text, { ecc: 'M', border: QUIET })
  const bars = data.flatMap((row, y) => {
    const runs: string[] = []
    for (let x = 0; x < size; x++) {
      if (!row[x] || row[x - 1]) continue
      let end = x
      while (row[end]) end++
      runs.push(`M${x} ${y}h${end - x}v1H${x}z`)
    }
    return runs
  })
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${size} ${size}" shape-rendering="crispEdges"><path fill="#fff" d="M0 0h${size}v${size}H0z"/><path d="${bars.join('')}"/></svg>`
}
