import { z } from 'zod'
import type { PermitConfirmed, Transcribed } from '../../../operations/documents/confirm-transcription.ts'
import { line } from '../../../reading/entry/fields.ts'
import { permit, presentPermit } from '../permits/shapes.ts'
import { id } from '../shapes/basics.ts'
import { consequence, presentConsequence } from '../shapes/changes.ts'
import { permitBody, permitExample } from '../shapes/entries.ts'
import { systemAskedFor } from '../shapes/system.ts'
import { documentInList, presentDocumentInList } from './shapes.ts'

const fraction = z.number().min(0).max(1)

const placeOnPaper = z.strictObject({
  page: z.int('write a whole number').min(1).max(10_000),
  box: z.strictObject({ x: fraction, y: fraction, w: fraction, h: fraction }).nullish(),
  words: line(500),
})

const pointer = z
  .string()
  .max(200)
  .regex(/^(\/[^/]+)+$/, 'a JSON Pointer into the entry, such as /components/0/capacity')
  .refine(
    (text) => text.isWellFormed() && !text.includes('\u0000'),
    'contains characters that cannot be stored',
  )

export const transcriptionBody = z
  .strictObject({
    permits: z
      .array(
        z.strictObject({
          parcel: line(80).meta({ description: 'The parcel it belongs to, by number or id' }),
          system: systemAskedFor.optional(),
          proposal: z.int('write a whole number').min(0).max(1_000).nullish().meta({
            description: 'The proposal it was made from, counted from 0; leave out if all of it was typed',
          }),
          entry: permitBody,
          sources: z.record(pointer, placeOnPaper).default({}).meta({
            description: 'Where on the document a value is, for values that a person placed',
          }),
        }),
      )
      .min(1, 'confirm at least one permit')
      .max(50),
    more: z.boolean().optional().meta({
      description: 'Other permits of the document are still to come: it stays `proposed`',
    }),
  })
  .meta({
    id: 'TranscriptionEntry',
    description:
      'What a person confirms or corrects. An unchanged value keeps the place and confidence of the reading; a ' +
      'corrected one keeps the place.',
    examples: [
      {
        permits: [
          {
            parcel: '07-0412-0031',
            proposal: 0,
            entry: permitExample,
            sources: {
              '/components/0/capacity': {
                page: 1,
                box: { x: 0.41, y: 0.32, w: 0.12, h: 0.02 },
                words: '1,000 GAL',
              },
            },
          },
        ],
      },
    ],
  })

export const permitsConfirmed = ({
  permits,
}: z.output<typeof transcriptionBody>): readonly PermitConfirmed[] =>
  permits.map(({ parcel, system, proposal, entry, sources }) => ({
    parcel,
    system,
    proposal: proposal ?? null,
    record: entry,
    places: Object.fromEntries(
      Object.entries(sources).map(([at, { page, box, words }]) => [at, { page, box: box ?? null, words }]),
    ),
  }))

export const transcribed = z
  .object({
    transcription: id,
    document: documentInList,
    permits: z.array(permit),
    consequences: z.array(z.object({ parcel: z.object({ id, number: z.string() }), consequence })),
  })
  .meta({ id: 'Transcription', description: 'The new permits and what they changed' })

export const presentTranscribed = (it: Transcribed): z.output<typeof transcribed> => ({
  transcription: it.transcription,
  document: presentDocumentInList(it.document),
  permits: it.permits.map(presentPermit),
  consequences: it.reconciled.map((run) => ({
    parcel: { id: run.parcel.id, number: run.parcel.number },
    consequence: presentConsequence(run),
  })),
})
