import { ok } from '../../base/result.ts'
import { type AccessEventKind, recordAccess } from '../../store/access/access-events.ts'
import {
  type AccountListed,
  accountById,
  administratorsHeld,
  changeAccount,
  joinedAmong,
} from '../../store/access/people.ts'
import { removeSecondStep } from '../../store/access/second-step.ts'
import { endSessionsOf } from '../../store/access/sessions.ts'
import { DOORKEEPER, memberOf } from '../../store/database/actor.ts'
import type { Database, Tx } from '../../store/database/database.ts'
import { transact } from '../../store/database/transact.ts'
import { type Answer, conflict } from '../refusal.ts'
import type { Asker } from './asker.ts'
import { mayLetIn } from './may-let-in.ts'
import type { SignInContext } from './open-session.ts'
import { personAsked } from './person-asked.ts'

/** What an administrator can do to an account of the organization. Each is done once; a repeat changes nothing. */
export type PersonChange =
  | 'suspend'
  | 'let-back-in'
  | 'give-administration'
  | 'take-administration'
  | 'take-off-second-step'

type Step = {
  readonly event: AccessEventKind
  /** Whether it would take the organization's last administrator away. */
  readonly unseats: boolean
  /** Whether it lets somebody in, or in more easily, or to more. */
  readonly letsIn: boolean
  readonly needed: (person: AccountListed) => boolean
  readonly work: (tx: Tx, within: Database, id: string, at: Date) => Promise<void>
}

const STEPS: { readonly [C in PersonChange]: Step } = {
  suspend: {
    event: 'suspended',
    unseats: true,
    letsIn: false,
    needed: ({ suspendedAt }) => suspendedAt === null,
    work: async (tx, _, id, at) => {
      await changeAccount(tx, id, { suspendedAt: at })
      await endSessionsOf(tx, id)
    },
  },
  'let-back-in': {
    event: 'let-back-in',
    unseats: false,
    letsIn: true,
    needed: ({ suspendedAt }) => suspendedAt !== null,
    work: (tx, _, id) => changeAccount(tx, id, { suspendedAt: null }),
  },
  'give-administration': {
    event: 'administration-given',
    unseats: false,
    letsIn: true,
    needed: ({ administers }) => !administers,
    work: (tx, _, id) => changeAccount(tx, id, { administers: true }),
  },
  'take-administration': {
    event: 'administration-taken',
    unseats: true,
    letsIn: false,
    needed: ({ administers }) => administers,
    work: (tx, _, id) => changeAccount(tx, id, { administers: false }),
  },
  'take-off-second-step': {
    event: 'second-step-taken-off',
    unseats: false,
    letsIn: true,
    needed: ({ hasSecondStep }) => hasSecondStep,
    work: async (tx, within, id) => {
      await transact(within, DOORKEEPER, (door) => removeSecondStep(door, id))
      await endSessionsOf(tx, id)
    },
  },
}

/** Changes an account of the asker's organization; the asker looks after it. */
export const changePerson = (
  context: SignInContext,
  asker: Asker,
  asked: string,
  change: PersonChange,
): Promise<Answer<AccountListed>> =>
  transact(context.database, memberOf(asker), async (tx, within) => {
    const { organization } = asker
    // Held first, so that two administrators who suspend each other at once do not leave nobody.
    const administrators = await administratorsHeld(tx, organization)
    const found = await personAsked(tx, asker, asked)
    if (!found.ok) return found
    const person = found.value
    const { event, unseats, letsIn, needed, work } = STEPS[change]
    if (person.erasedAt !== null) return conflict('This account was erased and can’t be used again.')
    if (!needed(person)) return found
    const may = letsIn ? await mayLetIn(context, tx, within, asker) : ok(undefined)
    if (!may.ok) return may
    if (unseats && (await isLastOne(within, administrators, person))) return lastOne()
    const at = context.clock()
    await work(tx, within, person.id, at)
    const account = person.id
    await recordAccess(tx, asker, { id: context.newId(), kind: event, organization, account, at })
    return ok((await accountById(tx, organization, account))!)
  })

/** Whether nobody would be left who can look after the organization: one who was invited and never came can not. */
export async function isLastOne(
  within: Database,
  administrators: readonly string[],
  { id, administers, suspendedAt }: AccountListed,
): Promise<boolean> {
  if (!administers || suspendedAt !== null) return false
  const others = administrators.filter((it) => it !== id)
  return (await transact(within, DOORKEEPER, (door) => joinedAmong(door, others))).length === 0
}

export const lastOne = () =>
  conflict('This is the only administrator of the organization. Make someone else an administrator first.')
