import type { Condition, LineDefect, LineStart } from '../catalog/choices.ts'
import type { ComponentKind } from '../catalog/kinds.ts'
import type { Part } from '../records/part.ts'
import type { OurText } from '../records/whose.ts'
import type { Verified } from '../rules/citation.ts'
import type { Step } from '../rules/values/protocol.ts'
import type { Existing } from '../rules/values/requirement.ts'
import type { Occasion } from './asked-of-code.ts'
import type { FieldBurden, Load } from './burdens.ts'
import { isDecided } from './consequence.ts'
import type { Construction } from './construction.ts'
import type { Device } from './devices.ts'
import type { KeptFrom } from './kept-from.ts'
import type { OtherSystem } from './other-systems.ts'
import type { Outcome } from './outcome.ts'
import type { Reason, Sign } from './reason.ts'
import type { Span } from './reason-of-line.ts'

/** A part as everybody may know it: its kind, what tells it from others, whether it is on record. No name of anybody's. */
export type OpenPart = {
  readonly kind: ComponentKind | 'system'
  readonly mark: OurText | null
  readonly onRecord: boolean
}

export const openPart = ({ kind, mark, onRecord }: Part): OpenPart => ({ kind, mark, onRecord })

/** What an agent's sentence about a difference hangs on, beside its kind and part. Closed words alone. */
export type Detail = {
  readonly occasion: Occasion | null
  readonly condition: Condition | 'cover' | 'open' | 'left-open' | 'top' | 'age' | null
  readonly neverApproved: boolean
  readonly workSince: boolean
  /** Whether the rule was read; null where none is involved. */
  readonly source: Verified | null
  readonly sign: Sign | null
  /** What of a tank's construction is short, or the type that is not accepted. */
  readonly built: Construction | 'compartments' | 'cesspool' | 'masonry-tank' | 'privy' | null
  /** A measurement decides between permits that contradict each other. */
  readonly borneOut: boolean
  /** What a permit leaves unsaid of the parts that were there before it. */
  readonly unsaid: 'beside-or-instead' | 'which-part' | null
  /** What becomes of a type that is no longer accepted. */
  readonly existing: Existing | null
  /** A part that a rule requires and no permit lists. */
  readonly requiredBy: 'rule' | null
  readonly burden: FieldBurden | Load | null
  readonly device: Device | null
  /** What an inspection left out. */
  readonly step: Step | null
  /** A level that may be a leak or only an empty house: it has to be read again. */
  readonly readAgain: boolean
  /** So full that solids leave with the flow. */
  readonly solidsPassing: boolean
  /** Of a level, that it leaves too little room; of a privy, that its contents do. */
  readonly room: 'pit' | 'privy' | null
  /** Of a measurement that can't tell: what it was held against. */
  readonly against: 'record' | 'code' | null
  /** What a camera saw wrong in a line. */
  readonly defect: LineDefect | null
  /** Of a line, the piece that it is about, in feet from where it is measured; null for the whole of it. */
  readonly stretch: (Span & { readonly start: LineStart | null }) | null
  /** What a part is too near to. */
  readonly nearTo: KeptFrom | null
  /** Another system, or another lot, that an inspection found. */
  readonly otherSystem?: OtherSystem
}

function unsaidBy(reason: Reason): Detail['unsaid'] {
  if (reason.is !== 'unclear') return null
  const { gap } = reason.doubt
  if (gap === 'beside-or-instead') return gap
  return gap === 'which-target' ? 'which-part' : null
}

export const detailOf = ({ reason, check }: Outcome): Detail => ({
  occasion: 'occasion' in reason ? (reason.occasion ?? null) : null,
  condition:
    reason.is === 'condition'
      ? reason.seen
      : reason.is === 'cover'
        ? reason.outOfUse
          ? 'left-open'
          : reason.missing
            ? 'open'
            : 'cover'
        : reason.is === 'top'
          ? 'top'
          : reason.is === 'metal-age'
            ? 'age'
            : null,
  built:
    reason.is === 'construction'
      ? reason.construction
      : reason.is === 'compartments'
        ? 'compartments'
        : reason.is === 'accepted'
          ? reason.type
          : null,
  borneOut: isDecided(reason),
  unsaid: unsaidBy(reason),
  existing: reason.is === 'accepted' ? reason.existing : null,
  requiredBy: reason.is === 'required-part' ? 'rule' : null,
  neverApproved: reason.is === 'never-approved',
  workSince: reason.is === 'work-since',
  sign: reason.is === 'sign' ? reason.sign : null,
  burden: reason.is === 'burden' ? reason.burden : reason.is === 'load' ? reason.load : null,
  device: reason.is === 'equipment' ? reason.device : null,
  step: reason.is === 'protocol' ? reason.step : null,
  readAgain: reason.is === 'low-level' && reason.comes === 'read-again',
  room: reason.is === 'room-left' ? 'pit' : reason.is === 'privy-room' ? 'privy' : null,
  defect: reason.is === 'defect' ? reason.seen : null,
  stretch: stretchOf(reason),
  solidsPassing: reason.is === 'solids' && reason.passing,
  nearTo: reason.is === 'setback' || reason.is === 'distance-record' ? reason.to : null,
  ...(reason.is === 'other-system' ? { otherSystem: reason.found } : {}),
  source: 'source' in reason ? reason.source : null,
  against:
    check === 'capacity-against-code' || check === 'capacity-by-flow'
      ? 'code'
      : check === 'capacity-against-record'
        ? 'record'
        : null,
})

function stretchOf(reason: Reason): Detail['stretch'] {
  if (reason.is === 'defect') return { from: reason.at, to: reason.to, start: reason.start }
  const [first, ...more] = reason.is === 'stretches' ? reason.changed : []
  return reason.is !== 'stretches' || first === undefined
    ? null
    : { from: first.from, to: (more.at(-1) ?? first).to, start: reason.start }
}
