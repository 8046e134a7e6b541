import type { FastifyReply, FastifyRequest } from 'fastify'
import { listLetters } from '../../../operations/letters/read-letter.ts'
import { readParcelFile } from '../../../operations/parcels/read-parcel-file.ts'
import type { Answer } from '../../../operations/refusal.ts'
import { answered } from '../../api/answer.ts'
import { inspectionPath } from '../../inspection/addresses.ts'
import { type Html, html } from '../html.ts'
import { pagePicturePath, searchPath } from '../layout/addresses.ts'
import type { Returned } from './decide-form.ts'
import { presentParcelFile } from './file.ts'
import { type FileOptions, parcelFile } from './file-view.ts'
import { fileAddress } from './systems.ts'

type Showing = Partial<Pick<FileOptions, 'came' | 'notice' | 'at'>> & {
  readonly returned?: Returned
  readonly status?: number
}

/** An old number that became several parcels: the search lists them. */
export const isSeveral = (read: Answer<unknown>): boolean =>
  !read.ok && read.error.why === 'not-found' && read.error.says !== undefined

/** The page of a parcel's file, new or with a form that came back. */
export async function showFile(
  request: FastifyRequest,
  reply: FastifyReply,
  asked: string,
  { returned, came = null, notice = null, at = null, status = 200 }: Showing,
): Promise<FastifyReply> {
  const { context, actor } = request
  const answer = await readParcelFile(context, actor, asked)
  if (isSeveral(answer)) return reply.redirect(searchPath(actor.county, asked), 303)
  const read = answered(answer)
  const audience = actor.role === 'firm' ? 'firm' : 'reviewer'
  const { letters } = answered(await listLetters(context, actor, read.parcel.id))
  const page = presentParcelFile(read, audience, letters, returned ?? null, context.book, actor.county)
  const own: Html | null =
    audience === 'firm'
      ? html`
        <p>
          <a class="button" href="${inspectionPath(actor.county, fileAddress(read))}">
            Start an inspection
          </a>
        </p>
      `
      : null
  const body = parcelFile(page, {
    county: actor.county,
    pictures: (document, page) => {
      const shape = read.pageShapes.get(`${document}/${page}`)
      return shape === undefined ? null : { path: pagePicturePath(actor.county, document, page), shape }
    },
    came,
    notice,
    at: at ?? returned?.discrepancy ?? null,
    own,
  })
  return reply.page(
    { title: `${read.parcel.number}${read.parcel.address ? `, ${read.parcel.address}` : ''}`, body },
    status,
  )
}
