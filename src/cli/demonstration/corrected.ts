import { z } from 'zod'
import { line } from '../../reading/entry/fields.ts'
import { measureEntries } from '../../reading/entry/measures.ts'
import { lengthEntry } from '../../reading/entry/quantity.ts'

const systemFields = {
  bedrooms: z.number().int().min(0).max(50),
  designFlowGpd: z.number().positive(),
  percRateMpi: z.number().positive(),
  soilTexture: line(80),
}
const measures = measureEntries(lengthEntry)

/** What a reviewer takes a permit to say from now on: one field, written as people write it. */
export const corrected = z
  .strictObject({
    permit: line(60),
    /** Tag of the component on that permit; left out for a value of the whole system. */
    component: line(60).optional(),
    field: z.enum(
      Object.keys({ ...measures, ...systemFields }) as (keyof typeof measures | keyof typeof systemFields)[],
    ),
    value: z.unknown(),
  })
  .transform((typed, context) => {
    const { component, field, value } = typed
    const schema: z.ZodType | undefined =
      component === undefined ? schemaOf(systemFields, field) : schemaOf(measures, field)
    const read = schema?.safeParse(value)
    if (read?.success) return { ...typed, typed: value, value: read.data }
    const message = read?.error.issues.map((issue) => issue.message).join('; ')
    context.addIssue({
      code: 'custom',
      path: [read ? 'value' : 'field'],
      message:
        message ?? `${field} belongs to ${component === undefined ? 'a component' : 'the whole system'}`,
    })
    return z.NEVER
  })

const schemaOf = (shape: Readonly<Record<string, z.ZodType>>, field: string): z.ZodType | undefined =>
  shape[field]
