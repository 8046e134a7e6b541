import { sql } from 'kysely'
import type { PageWords } from '../reading/page-words.ts'
import type { Tx } from './database/database.ts'

/** A page as it was read. */
export type PageShape = {
  readonly number: number
  /** Points, as a person is shown it upright. */
  readonly widthPt: number
  readonly heightPt: number
}

const SHAPE = ['number', 'width as widthPt', 'height as heightPt'] as const

/** All pages that were read, without what is on them. */
export async function shapesOf(tx: Tx, county: string, document: string): Promise<readonly PageShape[]> {
  return tx
    .selectFrom('document_page')
    .select(SHAPE)
    .where('county', '=', county)
    .where('document', '=', document)
    .orderBy('number')
    .execute()
}

/** The next pages after `after` with their text. */
export async function textAfter(
  tx: Tx,
  county: string,
  document: string,
  after: number,
  most: number,
): Promise<readonly (PageShape & { readonly text: string })[]> {
  return tx
    .selectFrom('document_page')
    .select([...SHAPE, 'text'])
    .where('county', '=', county)
    .where('document', '=', document)
    .where('number', '>', after)
    .orderBy('number')
    .limit(most)
    .execute()
}

/** As many pages as are fetched at once: a dense one takes a megabyte. */
const PAGES_AT_ONCE = 8

/** The next pages after `after` with their words as text, which nobody here has to take apart; none behind the last. */
export async function wordsAsText(
  tx: Tx,
  county: string,
  document: string,
  after: number,
): Promise<readonly { readonly number: number; readonly words: string }[]> {
  return tx
    .selectFrom('document_page')
    .select(['number', sql<string>`words::text`.as('words')])
    .where('county', '=', county)
    .where('document', '=', document)
    .where('number', '>', after)
    .orderBy('number')
    .limit(PAGES_AT_ONCE)
    .execute()
}

/** The words of some pages, those of them that were read; in the order of the pages. */
export async function wordsOfPages(
  tx: Tx,
  county: string,
  document: string,
  pages: readonly number[],
): Promise<readonly PageWords[]> {
  if (pages.length === 0) return []
  const rows = await tx
    .selectFrom('document_page')
    .select('words')
    .where('county', '=', county)
    .where('document', '=', document)
    .where('number', 'in', [...pages])
    .orderBy('number')
    .execute()
  return rows.map(({ words }) => words as PageWords)
}

/** Numbers of the pages whose words are kept, in order. */
export async function pagesKept(tx: Tx, county: string, document: string): Promise<readonly number[]> {
  const rows = await tx
    .selectFrom('document_page')
    .select('number')
    .where('county', '=', county)
    .where('document', '=', document)
    .orderBy('number')
    .execute()
  return rows.map(({ number }) => number)
}

/** Keeps a page's words; one read again takes the place of the earlier reading. */
export async function keepPage(tx: Tx, county: string, document: string, page: PageWords): Promise<void> {
  const values = {
    width: page.widthPt,
    height: page.heightPt,
    text: page.words.map(({ text }) => text).join(' '),
    words: JSON.stringify(page),
  }
  await tx
    .insertInto('document_page')
    .values({ county, document, number: page.page, ...values })
    .onConflict((conflict) => conflict.columns(['county', 'document', 'number']).doUpdateSet(values))
    .execute()
}
