import type { ProposedPermit } from '../reading/proposal.ts'
import type { Tx } from './database/database.ts'

export const DOCUMENT_STATES = [
  'received',
  'reading',
  'proposed',
  'confirmed',
  'set-aside',
  'failed',
] as const
export type DocumentState = (typeof DOCUMENT_STATES)[number]

/** A paper as it came in. */
export type Document = {
  readonly id: string
  readonly parcel: string | null
  readonly contentHash: string
  readonly mediaType: string
  readonly fileName: string | null
  readonly bytes: number
  readonly pages: number | null
  readonly state: DocumentState
  /** Why it was set aside or could not be read, in words. */
  readonly reason: string | null
  /** What was read from it, proposed and not yet confirmed: one for each permit that it seems to hold. */
  readonly proposals: readonly ProposedPermit[]
  readonly revision: number
  readonly receivedBy: string
  readonly receivedAt: Date
}

const COLUMNS = [
  'id',
  'parcel',
  'content_hash as contentHash',
  'media_type as mediaType',
  'file_name as fileName',
  'bytes',
  'pages',
  'state',
  'reason',
  'proposals',
  'revision',
  'received_by as receivedBy',
  'received_at as receivedAt',
] as const

type Row = Omit<Document, 'proposals'> & { readonly proposals: unknown }
const asDocument = (row: Row): Document => ({ ...row, proposals: row.proposals as ProposedPermit[] })

export async function documentById(tx: Tx, county: string, id: string): Promise<Document | undefined> {
  const row = await tx
    .selectFrom('document')
    .select(COLUMNS)
    .where('county', '=', county)
    .where('id', '=', id)
    .executeTakeFirst()
  return row && asDocument(row)
}

export async function lockDocument(tx: Tx, county: string, id: string): Promise<Document | undefined> {
  const row = await tx
    .selectFrom('document')
    .select(COLUMNS)
    .where('county', '=', county)
    .where('id', '=', id)
    .forUpdate()
    .executeTakeFirst()
  return row && asDocument(row)
}

/** Those that were handed in for the parcel, in the order they came. */
export async function documentsOf(tx: Tx, county: string, parcel: string): Promise<readonly Document[]> {
  const rows = await tx
    .selectFrom('document')
    .select(COLUMNS)
    .where('county', '=', county)
    .where('parcel', '=', parcel)
    .orderBy('id')
    .execute()
  return rows.map(asDocument)
}
