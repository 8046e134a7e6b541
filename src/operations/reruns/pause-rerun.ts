import type { Person } from '../../store/database/actor.ts'
import { transact } from '../../store/database/transact.ts'
import { moveRerun, rerunById } from '../../store/reruns.ts'
import type { OperationContext } from '../context.ts'
import { type Answer, conflict, notFound } from '../refusal.ts'
import { leaveShares } from './begin-rerun.ts'
import { type RerunRead, readRerun } from './read-rerun.ts'

/** Stops a re-run after the parcels that are being worked on; what is done stays done. */
export const pauseRerun = (
  context: OperationContext,
  actor: Person,
  id: string,
): Promise<Answer<RerunRead>> => move(context, actor, id, 'paused')

/** Goes on where it was paused. */
export const resumeRerun = (
  context: OperationContext,
  actor: Person,
  id: string,
): Promise<Answer<RerunRead>> => move(context, actor, id, 'running')

const move = (
  context: OperationContext,
  actor: Person,
  id: string,
  to: 'paused' | 'running',
): Promise<Answer<RerunRead>> =>
  transact(context.database, actor, async (tx, within) => {
    const { county } = actor
    // Asking for what is so already does no harm; resuming one whose jobs were lost brings them back.
    const moved = await moveRerun(tx, county, id, ['running', 'paused'], to, context.clock())
    if (!moved) {
      const rerun = await rerunById(tx, county, id)
      return rerun ? conflict(`This re-run is ${rerun.state} and cannot be ${to}.`) : notFound()
    }
    if (to === 'running') await leaveShares(context, tx, actor, id)
    return readRerun({ database: within }, actor, id)
  })
