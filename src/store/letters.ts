import { sql } from 'kysely'
import type { PlainDate } from '../base/plain-date.ts'
import type { LetterKind } from '../letters/content/frame.ts'
import type { LetterFacts } from '../letters/facts.ts'
import type { StatusWord } from '../reconcile/status.ts'
import type { Tx } from './database/database.ts'

/** A letter as it went out: never changed. */
export type Letter = {
  readonly id: string
  readonly parcel: string
  readonly kind: LetterKind
  readonly number: string
  readonly code: string
  readonly organization: string
  readonly issuedBy: string
  readonly issuedOn: PlainDate
  readonly asOf: PlainDate
  readonly word: StatusWord
  readonly reconciliation: string | null
  readonly facts: LetterFacts
  readonly pdfSha256: string
  readonly pdfBytes: number
  readonly pages: number
  readonly signature: string
  readonly signingKey: string
  readonly issuedAt: Date
  /** Null while it stands. */
  readonly withdrawn: Withdrawal | null
}

export type Withdrawal = { readonly reason: string; readonly by: string; readonly at: Date }

const select = (tx: Tx, county: string) =>
  tx
    .selectFrom('letter as l')
    .leftJoin('letter_withdrawal as w', (join) =>
      join.onRef('w.county', '=', 'l.county').onRef('w.letter', '=', 'l.id'),
    )
    .select([
      'l.id',
      'l.parcel',
      'l.kind',
      'l.number',
      'l.code',
      'l.organization',
      'l.issued_by as issuedBy',
      'l.issued_on as issuedOn',
      'l.as_of as asOf',
      'l.word',
      'l.reconciliation',
      'l.facts',
      'l.pdf_sha256 as pdfSha256',
      'l.pdf_bytes as pdfBytes',
      'l.pages',
      'l.signature',
      'l.signing_key as signingKey',
      'l.issued_at as issuedAt',
      'w.reason',
      'w.withdrawn_by as by',
      'w.withdrawn_at as at',
    ])
    .where('l.county', '=', county)

type Row = Awaited<ReturnType<ReturnType<typeof select>['execute']>>[number]

function asLetter({ reason, by, at, ...row }: Row): Letter {
  return {
    ...row,
    issuedOn: row.issuedOn as PlainDate,
    asOf: row.asOf as PlainDate,
    word: row.word as StatusWord,
    facts: row.facts as LetterFacts,
    withdrawn: reason !== null && by !== null && at !== null ? { reason, by, at } : null,
  }
}

export async function letterById(tx: Tx, county: string, id: string): Promise<Letter | undefined> {
  const row = await select(tx, county).where('l.id', '=', id).executeTakeFirst()
  return row && asLetter(row)
}

/** All of a parcel's that the asker may see, newest first. */
export async function lettersOf(tx: Tx, county: string, parcel: string): Promise<readonly Letter[]> {
  const rows = await select(tx, county)
    .where('l.parcel', '=', parcel)
    .orderBy('l.issued_at', 'desc')
    .orderBy('l.id', 'desc')
    .execute()
  return rows.map(asLetter)
}

/**
 * The number and day of the newest letter that stands in place of this one: of its kind, on its parcel, later and not
 * withdrawn; a report or a brief only of those given to the same organization, whose business it is.
 */
export async function laterLetter(
  tx: Tx,
  county: string,
  { parcel, kind, organization, issuedAt, id }: Letter,
): Promise<{ readonly number: string; readonly issuedOn: PlainDate } | undefined> {
  let query = select(tx, county)
    .where('l.parcel', '=', parcel)
    .where('l.kind', '=', kind)
    .where('l.issued_at', '>=', issuedAt)
    .where('l.id', '!=', id)
    .where('w.letter', 'is', null)
  if (kind !== 'status') query = query.where('l.organization', '=', organization)
  const row = await query.orderBy('l.issued_at', 'desc').orderBy('l.id', 'desc').limit(1).executeTakeFirst()
  return row && { number: row.number, issuedOn: row.issuedOn as PlainDate }
}

/** What was printed on a letter. */
export async function printedContent(tx: Tx, county: string, id: string): Promise<unknown> {
  const row = await tx
    .selectFrom('letter')
    .select('content')
    .where('county', '=', county)
    .where('id', '=', id)
    .executeTakeFirst()
  return row?.content
}

/** Asked before a county is known. */
export async function letterWithCode(
  tx: Tx,
  code: string,
): Promise<{ readonly county: string; readonly letter: string } | undefined> {
  const { rows } = await sql<{ county: string; letter: string }>`
    select county, letter from letter_with_code(${code})`.execute(tx)
  return rows[0]
}

export async function countyOfLetter(tx: Tx, id: string): Promise<string | undefined> {
  const { rows } = await sql<{ county: string | null }>`select county_of_letter(${id}) as county`.execute(tx)
  return rows[0]?.county ?? undefined
}

/** The next number of the county's letters in a year; whoever takes one keeps others waiting until it has ended. */
export async function nextNumber(tx: Tx, county: string, year: number): Promise<string> {
  const { last } = await tx
    .insertInto('letter_counter')
    .values({ county, year, last: 1 })
    .onConflict((conflict) =>
      conflict.columns(['county', 'year']).doUpdateSet((eb) => ({ last: eb('letter_counter.last', '+', 1) })),
    )
    .returning('last')
    .executeTakeFirstOrThrow()
  return `${year}-${String(last).padStart(5, '0')}`
}

export async function insertLetter(
  tx: Tx,
  county: string,
  made: Omit<Letter, 'withdrawn'> & { readonly content: unknown },
): Promise<void> {
  await tx
    .insertInto('letter')
    .values({
      county,
      id: made.id,
      parcel: made.parcel,
      kind: made.kind,
      number: made.number,
      code: made.code,
      organization: made.organization,
      issued_by: made.issuedBy,
      issued_on: made.issuedOn,
      as_of: made.asOf,
      word: made.word,
      reconciliation: made.reconciliation,
      content: JSON.stringify(made.content),
      facts: JSON.stringify(made.facts),
      pdf_sha256: made.pdfSha256,
      pdf_bytes: made.pdfBytes,
      pages: made.pages,
      signature: made.signature,
      signing_key: made.signingKey,
      issued_at: made.issuedAt,
    })
    .execute()
}

export async function insertWithdrawal(
  tx: Tx,
  county: string,
  letter: string,
  { reason, by, at }: Withdrawal,
): Promise<void> {
  await tx
    .insertInto('letter_withdrawal')
    .values({ county, letter, reason, withdrawn_by: by, withdrawn_at: at })
    .execute()
}
