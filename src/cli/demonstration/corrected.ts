import { z } from 'zod'
import { belongsToComponent, CORRECTABLE, correctionValue } from '../../reading/entry/correction.ts'
import { line } from '../../reading/entry/fields.ts'

/** What a reviewer takes a permit to say from now on: one field, written as people write it. */
export const corrected = z
  .strictObject({
    permit: line(60),
    /** Tag of the component on that permit; left out for a value of the whole system. */
    component: line(60).optional(),
    field: z.enum(CORRECTABLE),
    value: z.unknown(),
  })
  .transform((typed, context) => {
    const { component, field, value } = typed
    const fault = (path: string, message: string) => {
      context.addIssue({ code: 'custom', path: [path], message })
      return z.NEVER
    }
    if (belongsToComponent(field) !== (component !== undefined))
      return fault(
        'field',
        `${field} belongs to ${component === undefined ? 'a component' : 'the whole system'}`,
      )
    const read = correctionValue(field, value, [])
    if (!read.ok) return fault('value', read.error.map(({ message }) => message).join('; '))
    return { ...typed, written: value, value: read.value }
  })
