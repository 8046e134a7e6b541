import type { FastifyReply, FastifyRequest } from 'fastify'
import type { InspectionPrepared } from '../../../operations/findings/prepare-inspection.ts'
import { readStatus } from '../../../operations/parcels/read-status.ts'
import { statusWords } from '../../../words/agent/status.ts'
import { answered } from '../../api/answer.ts'
import { type Html, html } from '../../pages/html.ts'
import { inspectionFilePath, inspectionPath, numberShown } from '../addresses.ts'
import type { Faults } from '../form/read.ts'
import type { InspectionForm } from '../form/typed.ts'
import { allDifferences } from '../live/live.ts'
import { reckon } from '../live/reckon.ts'
import { clashes } from '../sending/clashes.ts'
import type { InspectionSheet } from '../sheet/sheet.ts'
import { conflictView } from '../view/conflict-view.ts'
import { inspectionView } from '../view/inspection-view.ts'
import { momentInWords } from '../view/moment.ts'
import { sentView } from '../view/sent-view.ts'
import { phoneFiles } from './phone-files.ts'
import { reckonWith, sheetOf, shownBy, tidyForm } from './show.ts'

type Showing = {
  readonly step: string
  readonly form?: InspectionForm
  readonly faults?: Faults
  readonly notice?: string
  /** Asks once before something is taken away. */
  readonly asks?: boolean
  readonly status?: number
}

/** A step of the form, as a whole page. */
export async function sendInspection(
  { actor }: FastifyRequest,
  reply: FastifyReply,
  prepared: InspectionPrepared,
  { step, form, faults, notice, asks = false, status = 200 }: Showing,
): Promise<FastifyReply> {
  const sheet = sheetOf(actor.county, prepared)
  const shown = shownBy(
    prepared,
    sheet,
    { step, firm: actor.organization },
    { ...(form ? { form } : {}), ...(faults ? { faults } : {}), notice: notice ?? before(prepared), asks },
  )
  const body = html`${inspectionView(shown)}${step === 'start' && handedIn(sheet, prepared)}`
  return reply.page(
    { title: `Inspection ${numberShown(sheet.parcel)}`, body: await framed(sheet, actor.account, body) },
    status,
  )
}

const before = ({ draft }: InspectionPrepared): string | null =>
  draft?.amends ? 'This is an amendment. Once submitted, it replaces what was submitted before.' : null

const handedIn = (
  { county, parcel }: InspectionSheet,
  { draft, submitted }: InspectionPrepared,
): Html | null =>
  submitted && !draft
    ? html`
      <p class="soft">
        Your firm submitted findings of ${submitted.record.inspectedOn}
        : <a href="${inspectionPath(county, parcel.number, 'sent')}">see or amend them</a>
        .
      </p>
    `
    : null

/** What was submitted, and what it came to. */
export async function sendSent(
  { context, actor }: FastifyRequest,
  reply: FastifyReply,
  prepared: InspectionPrepared,
): Promise<FastifyReply> {
  const sheet = sheetOf(actor.county, prepared)
  const { status } = answered(await readStatus(context, actor, prepared.parcel.id))
  const submitted = prepared.submitted!
  const body = sentView({
    sheet,
    findings: submitted.id,
    status: { ...statusWords(status, 'en'), asOf: status.asOf },
    differences: allDifferences(reckon(reckonWith(prepared, actor.organization), submitted.record)),
    photos: prepared.photos.length === 0 ? null : `Photos sent: ${prepared.photos.length}.`,
  })
  return reply.page({
    title: `Inspection ${numberShown(sheet.parcel)}`,
    body: await framed(sheet, actor.account, body),
  })
}

type Two = {
  readonly mine: InspectionForm
  readonly theirs: InspectionForm
  readonly carried: Readonly<Record<string, string>>
}

/** What was typed beside what is saved, where somebody saved in between. */
export async function sendConflict(
  { actor }: FastifyRequest,
  reply: FastifyReply,
  prepared: InspectionPrepared,
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
    { title: `Inspection ${numberShown(sheet.parcel)}`, body: await framed(sheet, actor.account, body) },
    409,
  )
}

/** The sheet of the form and, where the phone’s part could be made, its module: neither holds the page up. */
async function framed({ county, parcel }: InspectionSheet, account: string, body: Html): Promise<Html> {
  const { sheet, module, listModule } = await phoneFiles()
  return html`
    <link rel="stylesheet" href="${sheet}">
    ${module && html`<script type="module" src="${module}"></script>`}
    <div
      id="inspection"
      data-file="${inspectionFilePath(county, parcel.number)}"
      data-account="${account}"
      data-list="${listModule ?? ''}"
    >
      ${body}
    </div>
  `
}
