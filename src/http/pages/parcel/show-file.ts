import type { FastifyReply, FastifyRequest } from 'fastify'
import { readParcelFile } from '../../../operations/parcels/read-parcel-file.ts'
import { answered } from '../../api/answer.ts'
import type { Html } from '../html.ts'
import { pagePicturePath } from '../layout/addresses.ts'
import type { Returned } from './decide-form.ts'
import { presentParcelFile } from './file.ts'
import { type FileOptions, parcelFile } from './file-view.ts'

type Showing = Partial<Pick<FileOptions, 'came' | 'notice' | 'at'>> & {
  readonly returned?: Returned
  readonly status?: number
}

/** The page of a parcel's file, fresh or with a form that came back. */
export async function showFile(
  request: FastifyRequest,
  reply: FastifyReply,
  asked: string,
  { returned, came = null, notice = null, at = null, status = 200 }: Showing,
): Promise<FastifyReply> {
  const { context, actor } = request
  const read = answered(await readParcelFile(context, actor, asked))
  const audience = actor.role === 'firm' ? 'firm' : 'reviewer'
  const page = presentParcelFile(read, audience, returned ?? null)
  const own: Html | null = null
  const body = parcelFile(page, {
    county: actor.county,
    pictures:
      audience === 'reviewer' ? (document, number) => pagePicturePath(actor.county, document, number) : null,
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
