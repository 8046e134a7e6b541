import { invariant } from '../../base/invariant.ts'
import { dayOf, type PlainDate } from '../../base/plain-date.ts'
import { ok } from '../../base/result.ts'
import { readCode } from '../../letters/code.ts'
import { changesSince, type Since } from '../../letters/facts.ts'
import { verifyLetter } from '../../letters/signing/verify.ts'
import type { LetterStatement } from '../../letters/statement.ts'
import { serviceIn } from '../../store/database/actor.ts'
import { transact, withoutCounty } from '../../store/database/transact.ts'
import { type Letter, laterLetter, letterById, letterWithCode } from '../../store/letters.ts'
import { signingKeys } from '../../store/signing-keys.ts'
import { systemsOf } from '../../store/systems.ts'
import { codeFaultInWords } from '../../words/letter-code.ts'
import type { OperationContext } from '../context.ts'
import { statusToday } from '../parcels/read-status.ts'
import { type Answer, invalid, notFound } from '../refusal.ts'
import { gatherFacts } from './gather-facts.ts'

export const LETTER_STATES = ['valid', 'superseded', 'withdrawn'] as const
export type LetterState = (typeof LETTER_STATES)[number]

export type LetterChecked = {
  readonly state: LetterState
  readonly checkedAt: Date
  readonly statement: LetterStatement
  /** JWS in compact form, to check the statement without this service. */
  readonly signature: string
  /** What has come in since; it tells that something did, not what. */
  readonly since: readonly Since[]
  /** The newest letter that stands in its place, where it is superseded and one was issued. */
  readonly newer: { readonly number: string; readonly issuedOn: PlainDate } | null
  readonly withdrawn: { readonly on: PlainDate; readonly reason: string } | null
}

/**
 * Whether a letter is genuine and still says what the file says, for anyone who holds its code. Tells nothing that
 * the letter itself does not, but that something has come in since.
 */
export async function checkLetter(context: OperationContext, typed: string): Promise<Answer<LetterChecked>> {
  const code = readCode(typed)
  if (!code.ok) return invalid({ pointer: '/code', message: codeFaultInWords(code.error, 'en') })
  const { where, keys } = await withoutCounty(context.database, async (tx) => ({
    where: await letterWithCode(tx, code.value),
    keys: (await signingKeys(tx)).map(({ key }) => ({ ...key })),
  }))
  if (!where) return notFound('No letter has this code.')
  const actor = serviceIn(where.county)
  return transact(context.database, actor, async (tx, within) => {
    const letter = await letterById(tx, where.county, where.letter)
    if (!letter) return notFound('No letter has this code.')
    const statement = await verifyLetter(letter.signature, { keys })
    invariant(statement.ok, `letter ${letter.number} of ${where.county} does not verify`)
    const { word } = await statusToday({ ...context, database: within }, actor, letter.parcel)
    const systems = await systemsOf(tx, where.county, letter.parcel)
    const { kind, facts } = letter
    const meant =
      kind === 'status' ? systems : systems.filter(({ id }) => facts.systems?.includes(id) ?? true)
    const now = await gatherFacts(tx, where.county, meant, word)
    const since = changesSince(letter.facts, now)
    const state = stateOf(letter, since)
    const newer = state === 'superseded' ? await laterLetter(tx, where.county, letter) : undefined
    return ok({
      state,
      checkedAt: context.clock(),
      statement: statement.value,
      signature: letter.signature,
      since,
      newer: newer ?? null,
      withdrawn: letter.withdrawn && { on: dayOf(letter.withdrawn.at), reason: letter.withdrawn.reason },
    })
  })
}

function stateOf({ withdrawn }: Letter, since: readonly Since[]): LetterState {
  if (withdrawn) return 'withdrawn'
  return since.length > 0 ? 'superseded' : 'valid'
}
