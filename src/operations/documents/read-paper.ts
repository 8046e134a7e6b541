import { DamagedOriginal } from '../../files/whole-file.ts'
import type { JobRun } from '../../jobs/queue.ts'
import { withoutPeople } from '../../reading/association/people.ts'
import type { PageWords } from '../../reading/page-words.ts'
import type { UnreadPage } from '../../scan/outcome.ts'
import { readDocument } from '../../scan/read-document.ts'
import { countyById } from '../../store/counties.ts'
import { asService } from '../../store/database/actor.ts'
import { transact } from '../../store/database/transact.ts'
import { keepPage, pagesKept } from '../../store/document-pages.ts'
import { changeDocument, type Document, documentById } from '../../store/documents.ts'
import type { OperationContext } from '../context.ts'
import { proposeFromWords, sayLeftOut } from './propose-from-words.ts'

export type PaperRead = { readonly document: string; readonly state: Document['state'] }

/**
 * Reads a paper that was taken in: its pages' words are kept as they come, then what they seem to say is proposed. A
 * paper of pictures alone is set aside with the reason, and kept. Done at least once: a run that follows one that was
 * killed goes on after the pages that are kept, so that none is read twice and none is lost.
 */
export async function readPaper(
  context: OperationContext,
  { actor, data, report, signal }: JobRun<'read-document'>,
): Promise<PaperRead> {
  const { county } = actor
  const service = asService(actor)
  const change = (to: Parameters<typeof changeDocument>[3]): Promise<void> =>
    transact(context.database, service, (tx) => changeDocument(tx, county, data.document, to))

  const [document, served] = await transact(context.database, service, async (tx) => [
    await documentById(tx, county, data.document),
    await countyById(tx, county),
  ])
  if (!document) return { document: data.document, state: 'failed' }
  if (document.state !== 'received' && document.state !== 'reading') return told(document.state)
  const path = await context.files.pathOf(document.contentHash).catch((fault: unknown) => {
    if (fault instanceof DamagedOriginal) return fault
    throw fault
  })
  if (typeof path !== 'string') {
    const reason = path?.message ?? 'The uploaded file is missing from storage. Upload it again.'
    await change({ state: 'failed', reason })
    return told('failed')
  }
  await change({ state: 'reading' })
  const kept = await transact(context.database, service, (tx) => pagesKept(tx, county, data.document))
  let done = kept.length
  let total: number | null = null
  let pageCount = 0
  const lost: UnreadPage[] = []
  for (const part of stillToRead(kept)) {
    const reading = await readDocument(
      path,
      {},
      {
        ...part,
        signal,
        onOpened: (pages) => {
          total = pages
        },
        onPage: async (page) => {
          done += 1
          if (page.state === 'read') await keep(page.words)
          else lost.push(page)
          await report({
            done,
            total,
            says: `page ${page.state === 'read' ? page.words.page : page.page} read`,
          })
        },
      },
    )
    if (reading.outcome !== 'read') {
      const state = reading.outcome === 'pure-scan' ? 'set-aside' : 'failed'
      await change({ state, reason: reading.says, pages: reading.pageCount })
      return told(state)
    }
    pageCount = reading.pageCount
  }
  const proposed = await proposeFromWords(context.database, actor, data.document, null, signal)
  const reason = [sayUnread(lost), sayLeftOut(proposed)].filter(Boolean).join(' ') || null
  await change({ state: 'proposed', pages: pageCount, reason, proposals: proposed.proposals })
  return told('proposed')

  function told(state: Document['state']): PaperRead {
    return { document: data.document, state }
  }
  function keep(page: PageWords): Promise<void> {
    const kept = served?.keepsNames ? page : withoutPeople(page)
    return transact(context.database, service, (tx) => keepPage(tx, county, data.document, kept))
  }
}

/** More gaps than this are read over in one go: each part costs a start of the reader. */
const MOST_PARTS = 20

/** What a run before this one left: the gaps between the pages that are kept, and all after the last of them. */
function stillToRead(kept: readonly number[]): readonly { readonly from: number; readonly to?: number }[] {
  const gaps = kept.flatMap((page, index) => {
    const before = kept[index - 1] ?? 0
    return page > before + 1 ? [{ from: before + 1, to: page - 1 }] : []
  })
  if (gaps.length >= MOST_PARTS) return [{ from: gaps[0]!.from }]
  return [...gaps, { from: (kept.at(-1) ?? 0) + 1 }]
}

/** Pages that could not be read, each with why; null where all could. An empty page is no loss. */
function sayUnread(unread: readonly UnreadPage[]): string | null {
  const lost = unread.filter(({ why }) => why !== 'blank')
  return lost.length === 0 ? null : lost.map(({ page, says }) => `Page ${page}: ${says}`).join(' ')
}
