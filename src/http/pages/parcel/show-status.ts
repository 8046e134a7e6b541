import type { FastifyReply, FastifyRequest } from 'fastify'
import { listLetters } from '../../../operations/letters/read-letter.ts'
import { readParcel } from '../../../operations/parcels/read-parcel.ts'
import { subscriptionsOnParcel } from '../../../operations/subscriptions/read-subscriptions.ts'
import { answered } from '../../api/answer.ts'
import { searchPath } from '../layout/addresses.ts'
import { presentLetters } from '../letter/present.ts'
import type { ToldShown } from '../subscription/view.ts'
import { isSeveral } from './show-file.ts'
import { parcelStatus } from './status-view.ts'

type Showing = {
  readonly came?: string | null
  readonly told?: Partial<Omit<ToldShown, 'live'>>
  readonly status?: number
}

/** The page of a parcel's status, fresh or with a form that came back. */
export async function showStatus(
  request: FastifyRequest,
  reply: FastifyReply,
  asked: string,
  { came = null, told = {}, status = 200 }: Showing,
): Promise<FastifyReply> {
  const { context, actor } = request
  const read = await readParcel(context, actor, asked)
  if (isSeveral(read)) return reply.redirect(searchPath(actor.county, asked), 303)
  const found = answered(read)
  const { letters } = answered(await listLetters(context, actor, found.parcel.id))
  const live = await subscriptionsOnParcel(context, actor, found.parcel.id)
  const body = parcelStatus(found, {
    county: actor.county,
    oldNumbers: found.oldNumbers,
    came,
    letters: presentLetters(letters, actor.role),
    told: { live, secret: null, typed: '', fault: null, ...told },
  })
  const secret = (told.secret ?? null) !== null
  return reply.page({ title: `${found.parcel.number}: status`, body, secret }, status)
}
