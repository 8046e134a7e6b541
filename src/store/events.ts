import type { Actor } from './database/actor.ts'
import type { Tx } from './database/database.ts'

/** Something that happened to a record. */
export type Happened = {
  readonly id: string
  readonly kind: string
  readonly subjectKind:
    | 'parcel'
    | 'permit'
    | 'document'
    | 'findings'
    | 'reconciliation'
    | 'discrepancy'
    | 'decision'
    | 'letter'
    | 'form'
    | 'system'
  readonly subject: string
  readonly parcel: string | null
  readonly beforeHash?: string | null
  readonly afterHash?: string | null
  readonly body?: unknown
  readonly at: Date
}

/** Adds to what happened, in the actor's name. */
export async function recordEvent(tx: Tx, actor: Actor, happened: Happened): Promise<void> {
  const { county, account, organization, role } = actor
  await tx
    .insertInto('event')
    .values({
      county,
      id: happened.id,
      kind: happened.kind,
      subject_kind: happened.subjectKind,
      subject: happened.subject,
      parcel: happened.parcel,
      account,
      organization,
      role,
      before_hash: happened.beforeHash ?? null,
      after_hash: happened.afterHash ?? null,
      body: JSON.stringify(happened.body ?? {}),
      happened_at: happened.at,
    })
    .execute()
}

export type ActDone = {
  readonly kind: string
  readonly subjectKind: string
  readonly subject: string
  readonly at: Date
}

/** What an account did to a county's records, the newest first. */
export const actsOf = (tx: Tx, county: string, account: string, most: number): Promise<readonly ActDone[]> =>
  tx
    .selectFrom('event')
    .select(['kind', 'subject_kind as subjectKind', 'subject', 'happened_at as at'])
    .where('county', '=', county)
    .where('account', '=', account)
    .orderBy('id', 'desc')
    .limit(most)
    .execute()
