import { z } from 'zod'
import { citation } from './citation.ts'
import { day } from './day.ts'
import { JURISDICTION_KINDS } from './pack.ts'
import { GOVERNING_DATES, PARAMETER_NAMES, type ParameterName } from './parameters.ts'

const text = z.string().trim().min(1)
const PACK_ID = /^[a-z0-9]+(-[a-z0-9]+)*\/[a-z0-9]+(-[a-z0-9]+)*$/

export const packId = text.refine((id) => PACK_ID.test(id), {
  error: 'a pack is named <place>/<topic> in small letters, digits and hyphens',
})

/** An entry but for its value, whose shape hangs on the parameter. Open ends must be written, as null. */
export const entryFrame = z.strictObject({
  from: day.nullable(),
  until: day.nullable(),
  value: z.unknown(),
  citations: z.array(citation).nonempty().optional(),
  note: text.nullish().transform((value) => value ?? null),
  contradictions: z
    .array(z.strictObject({ says: text, citations: z.array(citation).nonempty() }))
    .default([]),
})

export const parameterFrame = z.strictObject({
  name: z.custom<ParameterName>((name) => PARAMETER_NAMES.some((it) => it === name), {
    error: ({ input }) => `"${String(input)}" is not a parameter: docs/rules.md lists the names there are`,
  }),
  governedBy: z.enum(GOVERNING_DATES),
  entries: z.array(entryFrame).nonempty(),
})

export const packFrame = z.strictObject({
  pack: packId,
  jurisdiction: z.strictObject({ kind: z.enum(JURISDICTION_KINDS), name: text }),
  title: text,
  invented: z.boolean().default(false),
  extends: z.array(packId).default([]),
  adoption: z
    .array(
      z.strictObject({ from: day.nullable(), until: day.nullable(), packs: z.array(packId), note: text }),
    )
    .default([]),
  parameters: z.array(parameterFrame).default([]),
})
