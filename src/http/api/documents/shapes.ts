import { z } from 'zod'
import type { DocumentRead } from '../../../operations/documents/read-document.ts'
import { DOCUMENT_STATES, type Document } from '../../../store/documents.ts'
import { hash, id, instant } from '../shapes/basics.ts'

const told = {
  id,
  parcel: id.nullable(),
  contentHash: hash.meta({ description: 'SHA-256 of the bytes as received' }),
  mediaType: z.string(),
  fileName: z.string().nullable(),
  bytes: z.number(),
  pages: z.number().nullable(),
  permits: z.number().meta({ description: 'How many permits were found in it' }),
  state: z.enum(DOCUMENT_STATES).meta({
    description:
      '`set-aside`: it cannot be read automatically, is kept, and a person can type what it says; `confirmed`: a person ' +
      'has confirmed or corrected what was read',
  }),
  reason: z.string().nullable().meta({ description: 'Why it was set aside or could not be read' }),
  revision: z.number(),
  receivedAt: instant,
}

export const documentInList = z
  .object(told)
  .meta({ id: 'DocumentInList', description: 'An uploaded document' })

export const presentDocumentInList = (it: Document): z.output<typeof documentInList> => ({
  id: it.id,
  parcel: it.parcel,
  contentHash: it.contentHash,
  mediaType: it.mediaType,
  fileName: it.fileName,
  bytes: it.bytes,
  pages: it.pages,
  permits: it.permits.length,
  state: it.state,
  reason: it.reason,
  revision: it.revision,
  receivedAt: it.receivedAt.toISOString(),
})

export const document = z
  .object({
    ...told,
    transcriptions: z.array(z.object({ id, confirmedBy: id, confirmedAt: instant })),
  })
  .meta({
    id: 'Document',
    description: 'A document and who confirmed it; its text and what was read from it are lists of their own',
  })

export const pageText = z
  .object({ page: z.number(), widthPt: z.number(), heightPt: z.number(), text: z.string() })
  .meta({ id: 'PageText', description: 'What was read on a page' })

export const presentDocument = ({
  document: it,
  transcriptions,
}: DocumentRead): z.output<typeof document> => ({
  ...presentDocumentInList(it),
  transcriptions: transcriptions.map((made) => ({
    id: made.id,
    confirmedBy: made.confirmedBy,
    confirmedAt: made.confirmedAt.toISOString(),
  })),
})
