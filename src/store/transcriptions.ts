import type { Tx } from './database/database.ts'

/** What a person made of the proposals: never changed; a second look is a second row. */
export type Transcription = {
  readonly id: string
  readonly document: string
  readonly body: unknown
  readonly confirmedBy: string
  readonly confirmedAt: Date
}

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
    .select(['id', 'document', 'body', 'confirmed_by as confirmedBy', 'confirmed_at as confirmedAt'])
    .where('county', '=', county)
    .where('document', '=', document)
    .orderBy('id')
    .execute()
}
