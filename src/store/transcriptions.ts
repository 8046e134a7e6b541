import type { Tx } from './database/database.ts'

/** What a person made of the proposals: never changed; a second look is a second row. */
export type Transcription = {
  readonly id: string
  readonly document: string
  readonly body: unknown
  readonly confirmedBy: string
  readonly confirmedAt: Date
}

const COLUMNS = [
  'id',
  'document',
  'body',
  'confirmed_by as confirmedBy',
  'confirmed_at as confirmedAt',
] as const

export async function insertTranscription(tx: Tx, county: string, made: Transcription): Promise<void> {
  await tx
    .insertInto('transcription')
    .values({
      county,
      id: made.id,
      document: made.document,
      body: JSON.stringify(made.body),
      confirmed_by: made.confirmedBy,
      confirmed_at: made.confirmedAt,
    })
    .execute()
}

/** Oldest first. */
export async function transcriptionsOf(
  tx: Tx,
  county: string,
  document: string,
): Promise<readonly Transcription[]> {
  return tx
    .selectFrom('transcription')
    .select(COLUMNS)
    .where('county', '=', county)
    .where('document', '=', document)
    .orderBy('id')
    .execute()
}

export const transcriptionById = (tx: Tx, county: string, id: string): Promise<Transcription | undefined> =>
  tx
    .selectFrom('transcription')
    .select(COLUMNS)
    .where('county', '=', county)
    .where('id', '=', id)
    .executeTakeFirst()

/** Those made before another, the newest first. */
export const transcriptionsBefore = (
  tx: Tx,
  county: string,
  before: string,
  most: number,
): Promise<readonly Transcription[]> =>
  tx
    .selectFrom('transcription')
    .select(COLUMNS)
    .where('county', '=', county)
    .where('id', '<', before)
    .orderBy('id', 'desc')
    .limit(most)
    .execute()
