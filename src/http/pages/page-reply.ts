import type { FastifyInstance, FastifyRequest, FastifyReply as Reply } from 'fastify'
import type { OperationContext } from '../../operations/context.ts'
import { readCounty } from '../../operations/counties/read-counties.ts'
import { gzipped } from './gzipped.ts'
import { otherLanguages } from './language.ts'
import { layout, type Page } from './layout/layout.ts'
import type { Reader } from './layout/reader.ts'

declare module 'fastify' {
  interface FastifyReply {
    /** Sends a page, with the header and links that its reader has. */
    page: (page: Page, status?: number) => Promise<Reply>
  }
}

/** County names hardly ever change; every page needs one. */
const REMEMBER_MS = 60_000

/** Pages differ by reader and may be private: no shared cache keeps one. */
const PRIVATE = 'private, no-cache'

export function answerWithPages(
  app: FastifyInstance,
  context: Pick<OperationContext, 'database' | 'clock'>,
): void {
  const names = new Map<string, { readonly name: string; readonly until: number }>()

  async function nameOf(county: string): Promise<string> {
    const now = context.clock().getTime()
    const known = names.get(county)
    if (known && known.until > now) return known.name
    const read = await readCounty(context, county)
    const name = read.ok ? read.value.name : county
    names.set(county, { name, until: now + REMEMBER_MS })
    return name
  }

  async function readerOf(request: FastifyRequest): Promise<Reader | null> {
    const caller = request.callerOrNobody
    const inPath = (request.params as { readonly county?: string } | undefined)?.county
    const id = inPath ?? caller?.counties[0]
    if (!caller || id === undefined || !caller.counties.includes(id)) return null
    return {
      role: caller.role,
      county: { id, name: await nameOf(id) },
      bySession: request.headers.authorization === undefined,
    }
  }

  app.decorateReply('page', async function (page, status = 200) {
    const { request } = this
    // A page about a fault must not fail because the county's name is missing.
    const reader = await readerOf(request).catch((fault) => {
      if (status >= 500) return null
      throw fault
    })
    const here = request.url.split('?', 1)[0] ?? '/'
    const { language } = page
    const languages = language === undefined ? [] : otherLanguages(request, language)
    const body = await gzipped(this, layout({ reader, here, languages }, page))
    if (language !== undefined) this.header('vary', 'accept-encoding, accept-language, cookie')
    return this.code(status)
      .header('cache-control', page.secret ? 'no-store' : PRIVATE)
      .type('text/html; charset=utf-8')
      .send(body)
  })
}
