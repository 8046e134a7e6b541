import { type RuleBook, ruleBook } from '../rules/book.ts'
import { canonicalText } from '../rules/canonical.ts'
import type { Pack } from '../rules/pack.ts'
import type { Tx } from './database/database.ts'
import { sha256 } from './hash.ts'

const hashes = new WeakMap<RuleBook, string>()

/** What a rule book is known by: the SHA-256 of its canonical text. */
export function ruleBookHash(book: RuleBook): string {
  const known = hashes.get(book)
  if (known !== undefined) return known
  const hash = sha256(canonicalText(book))
  hashes.set(book, hash)
  return hash
}

/** Keeps the whole text of the rules the first time something rests on them, so that it can be redone years later. */
export async function keepRuleBook(tx: Tx, book: RuleBook, at: Date): Promise<string> {
  const hash = ruleBookHash(book)
  const kept = await tx.selectFrom('rule_book').select('hash').where('hash', '=', hash).executeTakeFirst()
  if (kept) return hash
  await tx
    .insertInto('rule_book')
    .values({ hash, packs: canonicalText(book), first_used_at: at })
    .onConflict((conflict) => conflict.column('hash').doNothing())
    .execute()
  return hash
}

export async function ruleBookByHash(tx: Tx, hash: string): Promise<RuleBook | undefined> {
  const row = await tx.selectFrom('rule_book').select('packs').where('hash', '=', hash).executeTakeFirst()
  return row && ruleBook(JSON.parse(row.packs) as Pack[])
}
