import type { PartialDate } from '../base/partial-date.ts'
import type { MeasureName, SystemField } from '../catalog/catalog.ts'
import type { LineStart, Material, Side } from '../catalog/choices.ts'
import type { Construction } from './construction.ts'
import type { Device } from './devices.ts'
import type { Quantity } from './quantity.ts'

/** What a fact or an exhibit is: a field of the record or the inspection, or something computed or required. */
export type Thing =
  | MeasureName
  | SystemField
  | 'inside-length'
  | 'inside-width'
  | 'inside-diameter'
  | 'liquid-depth-to-invert'
  | 'presence'
  | 'kind'
  | 'condition'
  | 'defect'
  | 'cover'
  | 'top'
  | 'level'
  | 'sign'
  | Device
  | 'contract'
  | 'burden'
  | 'testVolume'
  | 'scumThickness'
  | 'scumBottomBelow'
  | 'sludgeDepth'
  | 'roomBelowTop'
  | 'outletDeviceBelow'
  | 'outletDeviceAbove'
  | 'baseline'
  | 'fix'
  | 'corner-fix'
  | 'lastPumpedOn'
  | 'people'
  | 'pumped-since'
  | 'pump-out-years'
  | 'inletAboveOutlet'
  | 'inletDeviceBelow'
  | 'first-compartment'
  | Construction
  | 'capacity-by-readings'
  | 'capacity-by-record'
  | 'least-capacity'
  | 'nominal-tolerance'
  | 'absorption-area'
  | 'distance'
  | 'permitted'
  | 'age-limit'
  | 'counts-until'
  | 'usual-wall'
  | 'solids-share'
  | 'sludge-top-to-outlet-bottom'
  | 'scum-bottom-to-outlet-bottom'
  | 'scum-top-to-outlet-top'

/** A value as it was used. Never a sentence: `words/` writes it out. */
export type Shown =
  | Quantity
  | { readonly choice: string }
  | { readonly count: number }
  | { readonly day: PartialDate }
  | { readonly ties: readonly [aFt: number, bFt: number]; readonly side: Side | null }
  | { readonly stretches: readonly ShownStretch[]; readonly from: LineStart | null }
  /** A satellite fix, degrees, and what share of fixes the receiver says lie within its radius. */
  | {
      readonly fix: readonly [lat: number, lon: number]
      readonly radius: Quantity
      readonly coverage: Quantity
    }
  /** At most, or more than, so much: how a limit is stated. */
  | { readonly limit: 'at-most' | 'more-than' | 'at-least'; readonly than: Quantity }
  /** A reading taken as usual because nobody measured it: this much, ± half a width. */
  | { readonly usual: Quantity; readonly halfWidth: Quantity; readonly of: 'precast' | 'shell' | 'masonry' }

/** A stretch of a line, from a station to a station in feet, to its end where nobody says how long it is. */
export type ShownStretch = {
  readonly from: number
  readonly to: number | null
  readonly material: Material | null
  readonly sizeFt: number | null
}
