import { ok } from '../../base/result.ts'
import type { Pack } from '../../rules/pack.ts'
import type { OperationContext } from '../context.ts'
import { type Answer, notFound } from '../refusal.ts'

type Context = Pick<OperationContext, 'book'>

/** Every pack, by name. */
export const listPacks = ({ book }: Context): readonly Pack[] =>
  [...book.packs.values()].sort((a, b) => (a.pack < b.pack ? -1 : 1))

export function readPack({ book }: Context, id: string): Answer<Pack> {
  const pack = book.packs.get(id)
  return pack ? ok(pack) : notFound()
}
