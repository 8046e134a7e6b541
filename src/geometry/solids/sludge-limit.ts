import { err, ok, type Result } from '../../base/result.ts'
import { printSignificant as n } from '../../measure/print/number.ts'
import { type Worked, worked } from '../../measure/step.ts'

type Row = { readonly gal: number; readonly liquidDepthFt: number; readonly inches: number }

/**
 * The sludge limit, inches, for a tank by nominal gallons and liquid depth. The table is law or guidance and is not
 * interpolated: a tank between its sizes or depths takes, of the entries around it, the one that calls for pumping
 * soonest (the largest distance). A tank outside the table is refused: the table says nothing of it.
 */
export function sludgeLimit(
  rows: readonly Row[],
  gal: number | null,
  liquidDepthFt: number | null,
): Result<Worked<number>, string> {
  if (gal === null) return err('the nominal capacity of the tank')
  if (liquidDepthFt === null) return err('the liquid depth')
  const sizes = around(
    rows.map((row) => row.gal),
    gal,
  )
  const depths = around(
    rows.map((row) => row.liquidDepthFt),
    liquidDepthFt,
  )
  const found = rows.filter((row) => sizes.includes(row.gal) && depths.includes(row.liquidDepthFt))
  if (sizes.length === 0 || depths.length === 0 || found.length < sizes.length * depths.length)
    return err(`a table that covers ${n(gal)} gal at a liquid depth of ${n(liquidDepthFt, 3)} ft`)
  const inches = Math.max(...found.map((row) => row.inches))
  const entries = found.map((row) => `${n(row.gal)} gal, ${n(row.liquidDepthFt)} ft: ${n(row.inches)} in`)
  return ok(
    worked(inches, () => [
      {
        says: 'Least distance from sludge to outlet device for this tank',
        formula:
          found.length === 1 ? 'the entry for the tank' : 'of the entries around it, the largest distance',
        numbers: entries.join('; '),
        result: `${n(inches)} in`,
      },
    ]),
  )
}

/** The value itself where it stands in the list, else its two neighbors; none where it lies outside. */
function around(values: readonly number[], wanted: number): readonly number[] {
  // A depth of 3.9999 ft, from inches, is the table's 4 ft.
  const same = values.find((value) => Math.abs(value - wanted) < 1e-6 * value)
  if (same !== undefined) return [same]
  const below = values.filter((value) => value < wanted)
  const beyond = values.filter((value) => value > wanted)
  return below.length === 0 || beyond.length === 0 ? [] : [Math.max(...below), Math.min(...beyond)]
}
