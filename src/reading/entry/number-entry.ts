import { z } from 'zod'
import { ok, type Result } from '../../base/result.ts'
import type { FieldOf } from '../../catalog/field.ts'
import { parseArea } from '../../measure/parse/area.ts'
import { parseCount } from '../../measure/parse/count.ts'
import { parseFlow } from '../../measure/parse/flow.ts'
import { type ParseIssue, refuse, withReadings } from '../../measure/parse/issue.ts'
import { parsePercRate } from '../../measure/parse/perc-rate.ts'

import { isWithin, unmarked } from './marked.ts'
import { type Asked, askAbout, issueOf } from './unusual.ts'

type NumberField = FieldOf<'whole'> | FieldOf<'number'>

/**
 * A number as a program sends it, or as a person types it: `3`, `"3"`, `"3 bedrooms"`, `"30 min/in"`. One beyond what is
 * plausible is asked about.
 */
export const numberEntry = (field: NumberField): z.ZodType<number, number | string> =>
  z.union([bounded(field), z.string().max(60)]).transform((typed, context) => {
    const { text, checked } = typeof typed === 'number' ? { text: typed, checked: false } : unmarked(typed)
    const value = typeof text === 'number' ? ok(text) : asNumber(field, text)
    const fault = value.ok ? faultOf(field, value.value, checked) : withReadings(value.error)
    if (fault === null && value.ok) return value.value
    context.addIssue({ ...issueOf(fault ?? ''), input: typed })
    return z.NEVER
  })

function bounded(field: NumberField): z.ZodNumber {
  const [least, most] = field.possible
  const open = 'open' in field ? field.open : undefined
  const number = field.value === 'whole' ? z.number().int('a whole number') : z.number()
  const from =
    open === 'least' ? number.gt(least, `more than ${least}`) : number.min(least, `at least ${least}`)
  return open === 'most' ? from.lt(most, `less than ${most}`) : from.max(most, `at most ${most}`)
}

function asNumber(field: NumberField, text: string): Result<number, ParseIssue> {
  if (/^\s*\d{1,9}\s*$/.test(text) && field.value === 'whole') return ok(Number(text))
  if (field.value === 'whole') return mapped(parseCount(text), ({ count }) => count)
  switch (field.unit) {
    case 'gpd':
      return mapped(parseFlow(text, { bare: 'gpd' }), ({ gpd }) => gpd)
    case 'sq ft':
      return mapped(parseArea(text, { bare: 'sq ft' }), ({ sqFt }) => sqFt)
    case 'min/in':
      return mapped(parsePercRate(text, { bare: 'min/in' }), ({ minPerIn }) => minPerIn)
    default:
      return /^\s*[-−]?\d+(?:\.\d+)?\s*$/.test(text)
        ? ok(Number(text.replace('−', '-')))
        : refuse(`"${text.trim()}" is not a number: write figures alone, as in ${field.example ?? 12}`)
  }
}

const mapped = <A, B>(read: Result<A, ParseIssue>, to: (value: A) => B): Result<B, ParseIssue> =>
  read.ok ? ok(to(read.value)) : read

function faultOf(field: NumberField, value: number, checked: boolean): string | Asked | null {
  const parsed = bounded(field).safeParse(value)
  if (!parsed.success) return parsed.error.issues[0]!.message
  if (field.plausible === undefined || checked || isWithin(field.plausible, value)) return null
  return askAbout(String(value), field.plausible, field.value === 'whole' ? '' : field.unit)
}
