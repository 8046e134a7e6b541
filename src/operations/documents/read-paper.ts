import type { JobRun } from '../../jobs/queue.ts'
import type { PageWords } from '../../reading/page-words.ts'
import type { DocumentReading, UnreadPage } from '../../scan/outcome.ts'
import { readDocument } from '../../scan/read-document.ts'
import { asService } from '../../store/database/actor.ts'
import { transact } from '../../store/database/transact.ts'
import { keepPage } from '../../store/document-pages.ts'
import { changeDocument, type Document, documentById } from '../../store/documents.ts'
import type { OperationContext } from '../context.ts'
import { proposeFromWords } from './propose-from-words.ts'

export type PaperRead = { readonly document: string; readonly state: Document['state'] }

/**
 * Reads a paper that was taken in: its pages' words are kept as they come, then what they seem to say is proposed. A
 * paper of pictures alone is set aside with the reason, and kept. Done at least once: a second run ends as the first.
 */
export async function readPaper(
  context: OperationContext,
  { actor, data, report, signal }: JobRun<'read-document'>,
): Promise<PaperRead> {
  const { county } = actor
  const service = asService(actor)
  const change = (to: Parameters<typeof changeDocument>[3]): Promise<void> =>
    transact(context.database, service, (tx) => changeDocument(tx, county, data.document, to))

  const document = await transact(context.database, service, (tx) => documentById(tx, county, data.document))
  if (!document) return { document: data.document, state: 'failed' }
  if (document.state !== 'received' && document.state !== 'reading') return told(document.state)
  const path = await context.files.pathOf(document.contentHash)
  if (path === undefined) {
    await change({ state: 'failed', reason: 'The file as it came in is not where it was kept.' })
    return told('failed')
  }
  await change({ state: 'reading' })
  let pages = 0
  const reading = await readDocument(
    path,
    {},
    {
      signal,
      onPage: async (page) => {
        pages += 1
        if (page.state === 'read') await keep(page.words)
        await report({ done: pages, total: null, says: `page ${pages} read` })
      },
    },
  )
  if (reading.outcome !== 'read') {
    const state = reading.outcome === 'pure-scan' ? 'set-aside' : 'failed'
    await change({ state, reason: reading.says, pages: reading.pageCount })
    return told(state)
  }
  const proposals = await transact(context.database, service, (tx) =>
    proposeFromWords(tx, county, data.document, null),
  )
  await change({ state: 'proposed', pages: reading.pageCount, reason: sayUnread(reading), proposals })
  return told('proposed')

  function told(state: Document['state']): PaperRead {
    return { document: data.document, state }
  }
  function keep(page: PageWords): Promise<void> {
    return transact(context.database, service, (tx) => keepPage(tx, county, data.document, page))
  }
}

/** Pages that could not be read, each with why; null where all could. An empty page is no loss. */
function sayUnread(reading: Extract<DocumentReading, { outcome: 'read' }>): string | null {
  const lost = reading.pages.filter(
    (page): page is UnreadPage => page.state === 'unread' && page.why !== 'blank',
  )
  return lost.length === 0 ? null : lost.map(({ page, says }) => `Page ${page}: ${says}`).join(' ')
}
