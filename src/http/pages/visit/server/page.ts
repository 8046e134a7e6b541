import type { FastifyReply, FastifyRequest } from 'fastify'
import type { VisitPrepared } from '../../../../operations/findings/prepare-visit.ts'
import { readStatus } from '../../../../operations/parcels/read-status.ts'
import { answered } from '../../../api/answer.ts'
import { type Html, html } from '../../html.ts'
import { visitFilePath, visitPath } from '../addresses.ts'
import type { Faults } from '../form/read.ts'
import type { VisitForm } from '../form/typed.ts'
import { allDifferences } from '../live/live.ts'
import { reckon } from '../live/reckon.ts'
import { clashes } from '../sending/clashes.ts'
import type { VisitSheet } from '../sheet/sheet.ts'
import { conflictView } from '../view/conflict-view.ts'
import { momentInWords } from '../view/moment.ts'
import { sentView } from '../view/sent-view.ts'
import { visitView } from '../view/visit-view.ts'
import { phoneFiles } from './phone-files.ts'
import { reckonWith, sheetOf, shownBy, tidyForm } from './show.ts'

type Showing = {
  readonly step: string
  readonly form?: VisitForm
  readonly faults?: Faults
  readonly notice?: string
  /** Asks once before something is taken away. */
  readonly asks?: boolean
  readonly status?: number
}

/** A step of the form, as a whole page. */
export async function sendVisit(
  { actor }: FastifyRequest,
  reply: FastifyReply,
  prepared: VisitPrepared,
  { step, form, faults, notice, asks = false, status = 200 }: Showing,
): Promise<FastifyReply> {
  const sheet = sheetOf(actor.county, prepared)
  const shown = shownBy(
    prepared,
    sheet,
    { step, firm: actor.organization },
    { ...(form ? { form } : {}), ...(faults ? { faults } : {}), notice: notice ?? before(prepared), asks },
  )
  const body = html`${visitView(shown)}${step === 'start' && handedIn(sheet, prepared)}`
  return reply.page(
    { title: `Visit ${sheet.parcel.number}`, body: await framed(sheet, actor.account, body) },
    status,
  )
}

const before = ({ draft }: VisitPrepared): string | null =>
  draft?.amends ? 'This is an amendment: handed in, it takes the place of what was handed in before.' : null

const handedIn = ({ county, parcel }: VisitSheet, { draft, submitted }: VisitPrepared): Html | null =>
  submitted && !draft
    ? html`<p class="soft">Your firm’s findings of ${submitted.record.visitedOn} are handed in: <a href="${visitPath(county, parcel.number, 'sent')}">see or amend them</a>.</p>`
    : null

/** What was handed in, and what it came to. */
export async function sendSent(
  { context, actor }: FastifyRequest,
  reply: FastifyReply,
  prepared: VisitPrepared,
): Promise<FastifyReply> {
  const sheet = sheetOf(actor.county, prepared)
  const { status } = answered(await readStatus(context, actor, prepared.parcel.id))
  const submitted = prepared.submitted!
  const body = sentView({
    sheet,
    findings: submitted.id,
    status,
    differences: allDifferences(reckon(reckonWith(prepared, actor.organization), submitted.record)),
    photos: prepared.photos.length === 0 ? null : `Photos sent: ${prepared.photos.length}.`,
  })
  return reply.page({ title: `Visit ${sheet.parcel.number}`, body: await framed(sheet, actor.account, body) })
}

type Two = {
  readonly mine: VisitForm
  readonly theirs: VisitForm
  readonly carried: Readonly<Record<string, string>>
}

/** What was typed beside what is saved, where somebody saved in between. */
export async function sendConflict(
  { actor }: FastifyRequest,
  reply: FastifyReply,
  prepared: VisitPrepared,
  { mine, theirs, carried }: Two,
): Promise<FastifyReply> {
  const sheet = sheetOf(actor.county, prepared)
  const body = conflictView({
    sheet,
    clashes: clashes(tidyForm(mine, sheet), theirs, null),
    other: `saved ${momentInWords((prepared.draft?.changedAt ?? new Date(0)).toISOString())}`,
    carried,
    handedIn: false,
  })
  return reply.page(
    { title: `Visit ${sheet.parcel.number}`, body: await framed(sheet, actor.account, body) },
    409,
  )
}

/** The sheet of the form and, where the phone’s part could be made, its module: neither holds the page up. */
async function framed({ county, parcel }: VisitSheet, account: string, body: Html): Promise<Html> {
  const { sheet, module, listModule } = await phoneFiles()
  return html`<link rel="stylesheet" href="${sheet}">${module && html`<script type="module" src="${module}"></script>`}<div id="visit" data-file="${visitFilePath(county, parcel.number)}" data-account="${account}" data-list="${listModule ?? ''}">${body}</div>`
}
