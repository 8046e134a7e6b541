import { createHash } from 'node:crypto'
import { Readable } from 'node:stream'
import { invariant } from '../../base/invariant.ts'
import { OutsideFailure } from '../../base/outside-failure.ts'
import { dayOf, yearOf } from '../../base/plain-date.ts'
import { ok } from '../../base/result.ts'
import { newCode } from '../../letters/code.ts'
import { LETTER_TITLES, type LetterFrame, type LetterKind } from '../../letters/content/frame.ts'
import { printableThroughout } from '../../letters/content/printable.ts'
import { qrSvg } from '../../letters/qr.ts'
import { countyById } from '../../store/counties.ts'
import { asService, type Person, type Role } from '../../store/database/actor.ts'
import { transact } from '../../store/database/transact.ts'
import { recordEvent } from '../../store/events.ts'
import { insertLetter, type Letter, nextNumber } from '../../store/letters.ts'
import type { Parcel } from '../../store/parcels.ts'
import { maySign } from '../../store/signing-keys.ts'
import { systemsOf } from '../../store/systems.ts'
import { LETTER_COPY } from '../../words/agent/letter.ts'
import { printDate } from '../../words/date.ts'
import type { Language } from '../../words/language.ts'
import type { OperationContext } from '../context.ts'
import { parcelAsked } from '../parcels/parcel-asked.ts'
import { statusToday } from '../parcels/read-status.ts'
import { type Answer, invalid, notAllowed } from '../refusal.ts'
import { systemAsked } from '../systems/system-asked.ts'
import type { Desk, Drafting, LetterDraft } from './draft.ts'
import { draftBrief } from './draft-brief.ts'
import { draftReport } from './draft-report.ts'
import { draftStatusLetter } from './draft-status-letter.ts'

const RETIRED = 'The key for signing letters was retired: start the service again with its new key'

export type IssuedLetter = { readonly parcel: Parcel; readonly letter: Letter }

/** Which letters each role may have. An agent's shows no owner, no inspector's notes and no scan: only the status. */
export const LETTERS_FOR: { readonly [R in Role]: readonly LetterKind[] } = {
  agent: ['status'],
  firm: ['status', 'report', 'brief'],
  reviewer: ['status', 'report', 'brief'],
}

const DRAFTS: { readonly [K in LetterKind]: Drafting } = {
  status: draftStatusLetter,
  report: draftReport,
  brief: draftBrief,
}

/**
 * Makes a letter: numbered in its county and year, dated, printed, sealed, and kept for good. Throws OutsideFailure
 * when it can't be printed or the key may not sign any more.
 */
export const issueLetter = (
  context: OperationContext,
  actor: Person,
  asked: string,
  kind: LetterKind,
  language: Language,
  askedSystem?: string,
): Promise<Answer<IssuedLetter>> =>
  transact(context.database, actor, async (tx, within) => {
    if (!LETTERS_FOR[actor.role].includes(kind)) {
      return notAllowed(
        `This token has the role ${actor.role}. It can issue: ${LETTERS_FOR[actor.role].join(', ')}.`,
      )
    }
    const found = await parcelAsked(tx, actor.county, asked)
    if (!found.ok) return found
    const parcel = found.value
    const joined = { ...context, database: within }
    const status = await statusToday(joined, actor, parcel.id)
    if (language !== 'en' && kind !== 'status') {
      return invalid({
        pointer: '/language',
        message: 'Only status letters are issued in Spanish. Use English for this one.',
      })
    }
    // A status letter speaks of all of them, for an agent too, who may not read what they are.
    const service = asService(actor)
    const systems = await transact(within, service, (own) => systemsOf(own, actor.county, parcel.id))
    const one =
      kind === 'status'
        ? ok({ system: systems[0]! })
        : await transact(within, service, (own) => systemAsked(own, actor.county, asked, askedSystem))
    if (!one.ok) return one
    const { system } = one.value
    const desk: Desk = { tx, within, context: joined, actor, parcel, systems, system, status, language }
    const draft = await DRAFTS[kind](desk)
    if (!draft.ok) return draft
    return ok({ parcel, letter: await seal(desk, kind, draft.value) })
  })

async function seal(desk: Desk, kind: LetterKind, draft: LetterDraft): Promise<Letter> {
  const { tx, within, context, actor, parcel, status, language } = desk
  const { letters, files, newId, clock } = context
  const { kid } = letters.signer.publicKey
  if (!(await maySign(tx, kid))) {
    throw new OutsideFailure(RETIRED, { retryAfterSeconds: 60 })
  }
  const county = await countyById(tx, actor.county)
  invariant(county, `a parcel of ${actor.county}, which is no county`)
  const at = clock()
  const issuedOn = dayOf(at)
  const number = await transact(within, asService(actor), (service) =>
    nextNumber(service, county.id, yearOf(issuedOn)),
  )
  const code = newCode()
  const checkAddress = letters.checkAddress(code)
  const frame: LetterFrame = {
    kind,
    language,
    title: kind === 'status' ? LETTER_COPY[language].title : LETTER_TITLES[kind],
    number,
    county: county.name,
    parcel: { number: parcel.number, address: parcel.address },
    issuedOn,
    asOf: draft.asOf,
    issued: printDate(issuedOn, language),
    asOfInWords: printDate(draft.asOf, language),
    code,
    checkAddress,
    checkSvg: { svg: qrSvg(checkAddress) },
  }
  const [first, ...tighter] = draft.contents(frame).map(ready)
  const contents = [first, ...tighter] as const
  const { mostPages, pictures = new Map() } = draft
  const { pdf, pages, content } = await letters.print({ kind, contents, mostPages, pictures })
  const pdfSha256 = createHash('sha256').update(pdf).digest('hex')
  const { reconciliation } = draft
  const signature = await letters.signer.sign({
    form: 'asfound-letter-1',
    kind,
    language,
    number,
    county: { id: county.id, name: county.name },
    parcel: { number: parcel.number, address: parcel.address },
    issuedOn,
    asOf: draft.asOf,
    status: status.word,
    check: checkAddress,
    pdfSha256,
    reconciliation: reconciliation && { id: reconciliation.id, sha256: reconciliation.resultHash },
  })
  const kept = await files.keep(Readable.from([pdf]))
  invariant(kept.hash === pdfSha256, 'the kept letter is the printed one')
  const letter: Letter = {
    id: newId(),
    parcel: parcel.id,
    kind,
    number,
    code,
    organization: actor.organization,
    issuedBy: actor.account,
    issuedOn,
    asOf: draft.asOf,
    word: status.word,
    reconciliation: reconciliation?.id ?? null,
    facts: draft.facts,
    pdfSha256,
    pdfBytes: kept.bytes,
    pages,
    signature,
    signingKey: kid,
    issuedAt: at,
    withdrawn: null,
  }
  await insertLetter(tx, county.id, { ...letter, content: contents[content] })
  await recordEvent(tx, actor, {
    id: newId(),
    kind: 'letter-issued',
    subjectKind: 'letter',
    subject: letter.id,
    parcel: parcel.id,
    afterHash: pdfSha256,
    body: { kind, number },
    at,
  })
  return letter
}

/** As it goes to the press: the words of the seal with it, and no character that the fonts lack. */
const ready = (content: unknown): unknown => printableThroughout(content)
