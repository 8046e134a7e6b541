import { ok } from '../../base/result.ts'
import { type County, countiesAmong } from '../../store/counties.ts'
import { withoutCounty } from '../../store/database/transact.ts'
import type { OperationContext } from '../context.ts'
import { type Answer, notFound } from '../refusal.ts'

type Context = Pick<OperationContext, 'database'>

/** The counties that a token is good for, by name. */
export const listCounties = (context: Context, ids: readonly string[]): Promise<readonly County[]> =>
  withoutCounty(context.database, (tx) => countiesAmong(tx, ids))

export async function readCounty(context: Context, id: string): Promise<Answer<County>> {
  const [county] = await listCounties(context, [id])
  return county ? ok(county) : notFound()
}
