import { z } from 'zod'
import type { PermitRef } from '../../../records/as-built.ts'
import { PERMIT_KINDS } from '../../../records/permit.ts'
import type { Source } from '../../../records/source.ts'
import { id, partialDay } from './basics.ts'

export const permitRef = z
  .object({
    id: z.string(),
    revision: z.number(),
    number: z.string(),
    kind: z.enum(PERMIT_KINDS),
    issuedOn: partialDay.nullable(),
    approvedOn: partialDay.nullable(),
  })
  .meta({ id: 'PermitReference', description: 'A permit, at the revision that was read' })

export const presentPermitRef = (ref: PermitRef): z.output<typeof permitRef> => ({ ...ref })

export const box = z
  .object({ x: z.number(), y: z.number(), w: z.number(), h: z.number() })
  .meta({ id: 'Box', description: 'In fractions of the page’s width and height, origin at the top left' })

export const source = z
  .discriminatedUnion('kind', [
    z.object({ kind: z.literal('typed'), by: z.string(), on: z.string() }),
    z.object({
      kind: z.literal('document'),
      document: z.string(),
      page: z.number(),
      box: box.nullable(),
      words: z.string(),
      confidence: z.number().nullable(),
      confirmedBy: z.string(),
    }),
    z.object({ kind: z.literal('imported'), import: z.string(), line: z.number() }),
    z.object({ kind: z.literal('correction'), decision: id, by: z.string() }),
  ])
  .meta({ id: 'Source', description: 'Where a value came from' })

export const presentSource = (from: Source): z.output<typeof source> =>
  from.kind === 'document' ? { ...from, box: from.box && { ...from.box } } : { ...from }

export const origin = z
  .object({ permit: permitRef, pointer: z.string(), source })
  .meta({ id: 'Origin', description: 'The document, the place on it, and how it was read' })
