import type { Picture } from './picture.ts'

const INK = 150

/** Widest run of columns without ink between two places of a line, in points; the line's own middle part only. */
export function widestGap(
  { data, width }: Picture,
  band: { readonly y: number; readonly h: number },
  from: number,
  to: number,
): number {
  // Rules above and below the line and the feet of the line above must not fill the gap.
  const top = Math.max(0, Math.round(band.y + band.h * 0.2))
  const bottom = Math.round(band.y + band.h * 0.8)
  let [widest, run] = [0, 0]
  for (let x = Math.max(0, Math.round(from)); x <= Math.round(to); x++) {
    let inked = 0
    for (let y = top; y < bottom; y++) if (data[y * width + x]! < INK) inked += 1
    // One dark point is a speck.
    run = inked <= 1 ? run + 1 : 0
    if (run > widest) widest = run
  }
  return widest
}
