import { ok } from '../../base/result.ts'
import { drawPage } from '../../scan/draw-page.ts'
import type { Person } from '../../store/database/actor.ts'
import { transact } from '../../store/database/transact.ts'
import { documentById } from '../../store/documents.ts'
import type { OperationContext } from '../context.ts'
import { type Answer, conflict, notFound } from '../refusal.ts'

/** Which picture it is, before it is drawn: the same name is the same picture for ever. */
export type PageNamed = { readonly path: string; readonly name: string }

export const namePage = async (
  context: Pick<OperationContext, 'database' | 'files'>,
  actor: Person,
  document: string,
  page: number,
  widthPx: number,
): Promise<Answer<PageNamed>> => {
  const found = await transact(context.database, actor, (tx) => documentById(tx, actor.county, document))
  const path = found && (await context.files.pathOf(found.contentHash))
  if (!path) return notFound()
  return ok({ path, name: `${found.contentHash.slice(0, 32)}-${page}-${widthPx}` })
}

/** A page of a paper as PNG, to hold what was read against. */
export async function showPage({ path }: PageNamed, page: number, widthPx: number): Promise<Answer<Buffer>> {
  const drawing = await drawPage(path, page, widthPx)
  switch (drawing.outcome) {
    case 'drawn':
      return ok(drawing.png)
    case 'no-such-page':
      return notFound()
    case 'undrawable':
      return conflict(drawing.says)
  }
}
