import { z } from 'zod'
import { FOUND_HOW, type ProposedField, type ProposedPermit, SEEN_BY } from '../../../reading/proposal.ts'
import { box } from '../shapes/source.ts'

const value = z.union([z.string(), z.number()])

const field = z
  .object({
    pointer: z
      .string()
      .meta({ description: 'Into the permit entry (RFC 6901)', examples: ['/components/0/capacity'] }),
    value: value.meta({ description: 'As the permit entry takes it' }),
    words: z.string().meta({ description: 'As written on the page' }),
    page: z.number(),
    box,
    confidence: z.number().meta({ description: 'How likely such readings are right, 0 to 1' }),
    general: z
      .object({ confidence: z.number(), seenBy: z.enum(SEEN_BY) })
      .optional()
      .meta({ description: 'The same before the county’s own confirmed documents moved it' }),
    how: z.enum(FOUND_HOW),
    why: z
      .object({ words: z.string(), box })
      .nullable()
      .meta({ description: 'The words that say what it is, null where only its form and its neighbors do' }),
    readAlike: z.boolean().nullable().meta({ description: 'Two independent readers gave the same' }),
    doubts: z.array(z.object({ kind: z.string(), says: z.string(), readings: z.array(value) })),
  })
  .meta({
    id: 'ProposedField',
    description: 'A value read from a document; a proposal until a person confirms it',
  })

export const proposal = z
  .object({
    place: z.number().meta({ description: 'From 0: as `proposal` of a transcription names it' }),
    pages: z.array(z.number()),
    fields: z.array(field),
    unsure: z.array(field).meta({
      description:
        'Read with too little confidence to propose: the field stays empty, and this is where to look',
    }),
    entry: z.record(z.string(), z.unknown()).meta({
      description: 'The fields together; a complete permit entry once `missing` is filled in',
    }),
    parcelNumber: field.nullable(),
    address: field.nullable(),
    missing: z.array(z.string()).meta({ description: 'Required fields that the document does not give' }),
    family: z.string().nullable().meta({ description: 'The form layout it was read with' }),
  })
  .meta({ id: 'ProposedPermit', description: 'One permit as read from the document' })

const presentField = ({ general, ...it }: ProposedField): z.output<typeof field> => ({
  ...it,
  ...(general ? { general: { ...general } } : {}),
  box: { ...it.box },
  // Proposals kept from before this was told have none.
  why: it.why ? { words: it.why.words, box: { ...it.why.box } } : null,
  doubts: it.doubts.map(({ kind, says, readings }) => ({ kind, says, readings: [...readings] })),
})

export const presentProposal = ([place, it]: readonly [number, ProposedPermit]): z.output<
  typeof proposal
> => ({
  place,
  pages: [...it.pages],
  fields: it.fields.map(presentField),
  unsure: it.unsure.map(presentField),
  entry: { ...it.entry },
  parcelNumber: it.parcelNumber && presentField(it.parcelNumber),
  address: it.address && presentField(it.address),
  missing: [...it.missing],
  family: it.family,
})
