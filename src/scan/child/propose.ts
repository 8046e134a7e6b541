import { createInterface } from 'node:readline'
import { checkedParcel } from '../../reading/check/parcel.ts'
import type { PageWords } from '../../reading/page-words.ts'
import { type ProposingAsked, proposeDocument } from '../../reading/propose-document.ts'
import { say } from './say.ts'

/**
 * Reads, a line of JSON each: what is asked, then the pages, then null; proposes; says which parcel numbers are worth
 * looking up; reads those of them that there are; says each proposal.
 */
async function main(): Promise<void> {
  const lines = createInterface({ input: process.stdin })[Symbol.asyncIterator]()
  const next = async (): Promise<unknown> => {
    const { value, done } = await lines.next()
    return done ? null : JSON.parse(value)
  }
  const asked = (await next()) as ProposingAsked
  const pages: PageWords[] = []
  for (let page = await next(); page !== null; page = await next())
    pages.push(await linked(page as PageWords))
  const { proposals, candidates } = proposeDocument(pages, asked, (page) => say({ type: 'page', page }))
  say({ type: 'candidates', numbers: [...new Set(candidates)] })
  const existing = new Set((await next()) as readonly string[])
  for (const proposal of proposals)
    say({ type: 'proposal', text: JSON.stringify(checkedParcel(proposal, existing)) })
  say({ type: 'done' })
}

/** Pages that were read before there were links, or by another model, are linked anew. */
async function linked(page: PageWords): Promise<PageWords> {
  say({ type: 'page', page: page.page })
  const { associated, modelInForce } = await import('./association/associate.ts')
  return page.links?.model === (await modelInForce()) ? page : associated(page)
}

await main()
process.exit(0)
