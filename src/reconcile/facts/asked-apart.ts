import type { PartialDate } from '../../base/partial-date.ts'
import { isAbsorption, isLine, isVessel } from '../../catalog/kinds.ts'
import { type SetbackSpan, setbackSpan } from '../../rules/apply/setback-span.ts'
import { inForceThroughout } from '../../rules/in-force-throughout.ts'
import { SETBACK_FROM, type SetbackFrom } from '../../rules/things.ts'
import { type Case, permitDate } from '../case.ts'
import { ALWAYS_THERE, KEPT_FROM, KEPT_FROM_NAMES, type KeptFrom } from '../kept-from.ts'
import { isStated, tapedAcross } from './direct-distance.ts'
import { houseWall, type Kept, wellsOnRecord } from './kept-apart.ts'

/** A part, and what it has to keep away from. */
export type Apart = { readonly kept: Kept; readonly from: KeptFrom }
export type SetbackRule = 'setbacks' | 'setbacks.lender'

/** What a table calls a part: a vessel that has no row of its own is a tank to it. */
export function rowOf({ kind }: Kept): SetbackFrom | null {
  const own = SETBACK_FROM.find((it) => it === kind)
  if (own) return own
  if (kind === 'laundry-system') return 'seepage-pit'
  return kind !== 'house' && (isVessel(kind) || kind === 'media-filter') ? 'tank' : null
}

export const today = (_: Kept, { asOf }: Case): PartialDate => asOf
export const whenPermitted = ({ built }: Kept): PartialDate | null => (built ? permitDate(built) : null)

/** What a table requires of the pair on a day; null where it says nothing, or is not in force. */
export function spanOn(
  { kept, from }: Apart,
  name: SetbackRule,
  day: PartialDate | null,
  given: Case,
): SetbackSpan | null {
  const row = rowOf(kept)
  if (row === null || day === null) return null
  const table = inForceThroughout(given.book, given.county, name, day)
  if (table.state !== 'in-force') return null
  const span = setbackSpan(table, row, KEPT_FROM[from].to)
  return span.ok ? span.value : null
}

/** Today's distance is a question of its own where it is not the one of the permit's day. */
export function otherToday(apart: Apart, given: Case): boolean {
  const day = whenPermitted(apart.kept)
  if (day === null) return true
  const [then, now] = [day, given.asOf].map((on) => spanOn(apart, 'setbacks', on, given))
  return now !== null && now !== undefined && now?.strictest !== then?.strictest
}

/** Whether there is anything to ask of: somebody said how far it is, both have a place, or every lot has one. */
export const isThere = (apart: Apart, others: readonly Kept[]): boolean =>
  others.length > 0 ||
  ALWAYS_THERE.includes(apart.from) ||
  isStated(apart.kept, apart.from) ||
  tapedAcross(apart.kept, apart.from) !== null

/** Of wells every tank and absorption area is asked, and a table that says nothing is told; of the rest only what it has. */
export const isAsked = (apart: Apart, name: SetbackRule, day: PartialDate | null, given: Case): boolean =>
  (apart.from === 'well' && (apart.kept.kind === 'tank' || absorbs(apart.kept))) ||
  spanOn(apart, name, day, given) !== null

const absorbs = ({ kind }: Kept): boolean => kind !== 'house' && isAbsorption(kind)

/** What has a place of its own on the record: wells, and the wall that ties run from. A line is tied nowhere in particular. */
export function placedThings({ kept, from }: Apart, given: Case, wells = wellsOnRecord): readonly Kept[] {
  if (kept.kind === 'house' || isLine(kept.kind)) return []
  return from === 'well' ? wells(given) : from === 'building' ? houseWall(given) : []
}

export const eachOf = (parts: readonly Kept[], from: KeptFrom): readonly Apart[] =>
  parts.map((kept) => ({ kept, from }))

/** Every part with everything but what has a question of its own. */
export const eachApart = (parts: readonly Kept[], except: readonly KeptFrom[]): readonly Apart[] =>
  parts.flatMap((kept) =>
    KEPT_FROM_NAMES.filter((from) => !except.includes(from)).map((from) => ({ kept, from })),
  )
