import type { FastifyInstance, FastifyRequest, FastifyReply as Reply } from 'fastify'
import type { OperationContext } from '../../operations/context.ts'
import { readCounty } from '../../operations/counties/read-counties.ts'
import { gzipped } from './gzipped.ts'
import { layout, type Page } from './layout/layout.ts'
import type { Reader } from './layout/reader.ts'

declare module 'fastify' {
  interface FastifyReply {
    /** Sends a page, in the frame of whoever asked for it. */
    page: (page: Page, status?: number) => Promise<Reply>
  }
}

/** County names change once in a generation; each page would ask for one. */
const REMEMBER_MS = 60_000

/** Pages differ by who asks and may hold what is nobody else's: no shared cache keeps one. */
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
    // A page that tells of a fault must not fail for want of a name in its frame.
    const reader = await readerOf(request).catch((fault) => {
      if (status >= 500) return null
      throw fault
    })
    const here = request.url.split('?', 1)[0] ?? '/'
    const body = await gzipped(this, layout(reader, here, page))
    return this.code(status)
      .header('cache-control', page.secret ? 'no-store' : PRIVATE)
      .type('text/html; charset=utf-8')
      .send(body)
  })
}
