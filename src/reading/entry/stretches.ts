import { printNumber } from '../../measure/print/number.ts'
import { isMeasured, type Measured } from './unusual.ts'

/** A part as far as it could be read: fields may be at fault, so nothing is taken for granted. */
type Part = { readonly [name: string]: unknown }
type Station = Extract<Measured, { readonly ft: number }> & { readonly halfStepFt?: number }
type FaultAt = (field: string, message: string, ...deeper: readonly PropertyKey[]) => void

/** A camera's counter and a tape along the ground agree within so much over the length of a line (common practice). */
const COUNTER_FT = 3

/**
 * Stretches and defects of a line lie one after another, none over the next, within the length that is stated; and an
 * inspection says from where its distances run. What lies between two stretches may be left out: it is told as unseen.
 */
export function faultsAlong(
  part: Part | null | undefined,
  fault: FaultAt,
  by: 'permit' | 'inspection',
): void {
  const [segments, defects] = [rowsOf(part?.segments), rowsOf(part?.defects)]
  if (segments.length + defects.length === 0) return
  if (by === 'inspection' && !part?.measuredFrom)
    fault('measuredFrom', 'say where the distances along the line are measured from')
  backwards('segments', segments, 'from', fault)
  backwards('defects', defects, 'at', fault)
  overlapping(segments, fault)
  const whole = stationIn(part?.length)
  if (whole === null) return
  const slack = by === 'inspection' ? COUNTER_FT : (whole.halfStepFt ?? 0)
  const beyond = (name: string, rows: readonly Part[], ends: readonly string[]): void => {
    for (const [at, row] of rows.entries()) {
      const end = ends.find((it) => (stationIn(row[it])?.ft ?? 0) > whole.ft + slack)
      if (end === undefined) continue
      const { asWritten } = stationIn(row[end])!
      fault(name, `${asWritten} lies beyond the line’s length, ${whole.asWritten}: check both`, at, end)
    }
  }
  beyond('segments', segments, ['from', 'to'])
  beyond('defects', defects, ['at', 'to'])
}

function backwards(name: string, rows: readonly Part[], first: string, fault: FaultAt): void {
  for (const [at, row] of rows.entries()) {
    const [from, to] = [stationIn(row[first]), stationIn(row.to)]
    if (from && to && to.ft <= from.ft)
      fault(name, `${to.asWritten} is not beyond ${from.asWritten}: write the nearer end first`, at, 'to')
  }
}

function overlapping(rows: readonly Part[], fault: FaultAt): void {
  const placed = rows
    .flatMap((row, at) => {
      const [from, to] = [stationIn(row.from), stationIn(row.to)]
      return from && to && to.ft > from.ft ? [{ at, from, to }] : []
    })
    .sort((a, b) => a.from.ft - b.from.ft)
  for (const [index, { at, from }] of placed.entries()) {
    const before = placed[index - 1]
    const over = before ? before.to.ft - from.ft : 0
    if (before && over > (before.to.halfStepFt ?? 0) + (from.halfStepFt ?? 0) + 1e-9)
      fault(
        'segments',
        `lies ${printNumber(Number(over.toFixed(1)))} ft over the stretch that ends at ${before.to.asWritten}: check both`,
        at,
        'from',
      )
  }
}

const rowsOf = (value: unknown): readonly Part[] =>
  Array.isArray(value)
    ? value.map((row) => (typeof row === 'object' && row !== null ? (row as Part) : {}))
    : []

const stationIn = (value: unknown): Station | null =>
  isMeasured(value) && 'ft' in value ? (value as Station) : null
