import { z } from 'zod'
import { DOCUMENT_STATES, type Document } from '../../../store/documents.ts'
import { hash, id, instant } from '../shapes/basics.ts'

const told = {
  id,
  parcel: id.nullable(),
  contentHash: hash.meta({ description: 'SHA-256 of the bytes as they came in' }),
  mediaType: z.string(),
  fileName: z.string().nullable(),
  bytes: z.number(),
  pages: z.number().nullable(),
  state: z.enum(DOCUMENT_STATES).meta({
    description:
      '`set-aside`: it can’t be read by itself, is kept, and a person can type what it says; `confirmed`: a person ' +
      'has confirmed or mended what was read',
  }),
  reason: z.string().nullable().meta({ description: 'Why it was set aside or could not be read' }),
  revision: z.number(),
  receivedAt: instant,
}

export const documentInList = z
  .object(told)
  .meta({ id: 'DocumentInList', description: 'A paper as it came in' })

export const presentDocumentInList = (it: Document): z.output<typeof documentInList> => ({
  id: it.id,
  parcel: it.parcel,
  contentHash: it.contentHash,
  mediaType: it.mediaType,
  fileName: it.fileName,
  bytes: it.bytes,
  pages: it.pages,
  state: it.state,
  reason: it.reason,
  revision: it.revision,
  receivedAt: it.receivedAt.toISOString(),
})
