import type { FastifyReply, FastifyRequest } from 'fastify'
import { listLetters } from '../../../operations/letters/read-letter.ts'
import { readParcel } from '../../../operations/parcels/read-parcel.ts'
import { subscriptionsOnParcel } from '../../../operations/subscriptions/read-subscriptions.ts'
import { answered } from '../../api/answer.ts'
import { languageOf } from '../language.ts'
import { searchPath } from '../layout/addresses.ts'
import { presentLetters } from '../letter/present.ts'
import type { NotificationsShown } from '../notifications/view.ts'
import { STATUS_PAGE } from './copy.ts'
import { isSeveral } from './show-file.ts'
import { parcelStatus } from './status-view.ts'

type Showing = {
  readonly came?: string | null
  readonly notifications?: Partial<Omit<NotificationsShown, 'live'>>
  readonly status?: number
}

/** The page of a parcel's status, fresh or with a form that came back. */
export async function showStatus(
  request: FastifyRequest,
  reply: FastifyReply,
  asked: string,
  { came = null, notifications = {}, status = 200 }: Showing,
): Promise<FastifyReply> {
  const { context, actor } = request
  const read = await readParcel(context, actor, asked)
  if (isSeveral(read)) return reply.redirect(searchPath(actor.county, asked), 303)
  const found = answered(read)
  const { letters } = answered(await listLetters(context, actor, found.parcel.id))
  const live = await subscriptionsOnParcel(context, actor, found.parcel.id)
  const language = languageOf(request)
  const body = parcelStatus(found, {
    county: actor.county,
    language,
    oldNumbers: found.oldNumbers,
    came,
    letters: presentLetters(letters, actor.role),
    notifications: { live, secret: null, typed: '', fault: null, ...notifications },
  })
  const secret = (notifications.secret ?? null) !== null
  return reply.page(
    { title: STATUS_PAGE.title[language](found.parcel.number), language, body, secret },
    status,
  )
}
