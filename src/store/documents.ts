import { sql } from 'kysely'
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
  /** The pages of each permit that it seems to hold, in the order of the proposals. */
  readonly permits: readonly (readonly number[])[]
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
  'revision',
  'received_by as receivedBy',
  'received_at as receivedAt',
] as const

/** What it holds is as large as the paper is long: only where each permit lies is read with it. */
const PERMITS = sql<Document['permits']>`jsonb_path_query_array(proposals, '$[*].pages')`.as('permits')

export async function documentById(tx: Tx, county: string, id: string): Promise<Document | undefined> {
  return tx
    .selectFrom('document')
    .select([...COLUMNS, PERMITS])
    .where('county', '=', county)
    .where('id', '=', id)
    .executeTakeFirst()
}

export async function lockDocument(tx: Tx, county: string, id: string): Promise<Document | undefined> {
  return tx
    .selectFrom('document')
    .select([...COLUMNS, PERMITS])
    .where('county', '=', county)
    .where('id', '=', id)
    .forUpdate()
    .executeTakeFirst()
}

/** Those of its proposals that are asked for, by their places from 0; none for a place that it has not. */
export async function proposalsAt(
  tx: Tx,
  county: string,
  id: string,
  places: readonly number[],
): Promise<ReadonlyMap<number, ProposedPermit>> {
  const { rows } = await sql<{ place: number; proposal: ProposedPermit }>`
    select at.place, proposals -> at.place as proposal
    from document cross join unnest(${[...places]}::int[]) as at (place)
    where county = ${county} and id = ${id} and at.place between 0 and jsonb_array_length(proposals) - 1
    order by at.place`.execute(tx)
  return new Map(rows.map(({ place, proposal }) => [place, proposal]))
}

/** Those that were submitted for the parcel, in the order they came. */
export async function documentsOf(tx: Tx, county: string, parcel: string): Promise<readonly Document[]> {
  return tx
    .selectFrom('document')
    .select([...COLUMNS, PERMITS])
    .where('county', '=', county)
    .where('parcel', '=', parcel)
    .orderBy('id')
    .execute()
}

/** In the order they came, from after `after`; of one state where one is asked for. */
export async function documentsAfter(
  tx: Tx,
  county: string,
  state: DocumentState | undefined,
  after: string | undefined,
  most: number,
): Promise<readonly Document[]> {
  let query = tx
    .selectFrom('document')
    .select([...COLUMNS, PERMITS])
    .where('county', '=', county)
  if (state) query = query.where('state', '=', state)
  if (after) query = query.where('id', '>', after)
  return query.orderBy('id').limit(most).execute()
}

/** One of the same bytes that was taken in and could be read, if there is one. */
export async function documentWithContent(
  tx: Tx,
  county: string,
  contentHash: string,
): Promise<Document | undefined> {
  return tx
    .selectFrom('document')
    .select([...COLUMNS, PERMITS])
    .where('county', '=', county)
    .where('content_hash', '=', contentHash)
    .where('state', '!=', 'failed')
    .orderBy('id')
    .limit(1)
    .executeTakeFirst()
}

type Taken = Pick<
  Document,
  'id' | 'parcel' | 'contentHash' | 'mediaType' | 'fileName' | 'bytes' | 'receivedBy' | 'receivedAt'
>

export async function insertDocument(tx: Tx, county: string, taken: Taken): Promise<void> {
  await tx
    .insertInto('document')
    .values({
      county,
      id: taken.id,
      parcel: taken.parcel,
      content_hash: taken.contentHash,
      media_type: taken.mediaType,
      file_name: taken.fileName,
      bytes: taken.bytes,
      pages: null,
      state: 'received',
      reason: null,
      received_by: taken.receivedBy,
      received_at: taken.receivedAt,
    })
    .execute()
}

type Progressed = Partial<Pick<Document, 'parcel' | 'pages' | 'state' | 'reason'>> & {
  /** Each as JSON. */
  readonly proposals?: readonly string[]
}

const arrayOf = (proposals: readonly string[]): string => `[${proposals.join(',')}]`

/** Changes what is known of it and counts its revision up. */
export async function changeDocument(
  tx: Tx,
  county: string,
  id: string,
  { proposals, ...columns }: Progressed,
): Promise<void> {
  await tx
    .updateTable('document')
    .set((eb) => ({
      ...columns,
      ...(proposals ? { proposals: arrayOf(proposals) } : {}),
      revision: eb('revision', '+', 1),
    }))
    .where('county', '=', county)
    .where('id', '=', id)
    .execute()
}

/** Puts other proposals in place of those it has; false, and nothing changed, where they say the same. */
export async function proposeOtherwise(
  tx: Tx,
  county: string,
  id: string,
  proposals: readonly string[],
): Promise<boolean> {
  const made = sql`${arrayOf(proposals)}::jsonb`
  const { numUpdatedRows } = await tx
    .updateTable('document')
    .set((eb) => ({ proposals: sql<never>`${made}`, revision: eb('revision', '+', 1) }))
    .where('county', '=', county)
    .where('id', '=', id)
    .where(sql<boolean>`proposals is distinct from ${made}`)
    .executeTakeFirst()
  return numUpdatedRows > 0n
}
