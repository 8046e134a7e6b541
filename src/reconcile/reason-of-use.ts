import type { Contract, TestResult } from '../catalog/choices.ts'
import type { Verified } from '../rules/citation.ts'
import type { AgainstLeast } from './asked-of-code.ts'
import type { FieldBurden, Load } from './burdens.ts'
import type { Device } from './devices.ts'
import type { OtherSystem } from './other-systems.ts'
import type { Quantity } from './quantity.ts'

/** Why an answer about covers, devices, loads and what lies over a field is what it is. */
export type ReasonOfUse =
  | {
      readonly is: 'flow-test'
      readonly volume: Quantity
      readonly minutes: number | null
      readonly before: Quantity | null
      readonly after: Quantity
      readonly takes: boolean
    }
  /** Liquid below the inlet of a pit, and whether what is left above it takes the next half day. */
  | {
      readonly is: 'room-left'
      readonly room: Quantity
      readonly needs: Quantity
      readonly days: number
      /** Nearer to the inlet than the rule lets it be; null where that is not what decides. */
      readonly below: { readonly is: Quantity; readonly least: Quantity } | null
      readonly source: Verified
      readonly comes: AgainstLeast
    }
  /** What stands in a privy, below the ground. */
  | {
      readonly is: 'privy-room'
      readonly room: Quantity
      readonly least: Quantity
      readonly source: Verified
      readonly comes: AgainstLeast
    }
  | { readonly is: 'burden'; readonly burden: FieldBurden; readonly seen: boolean }
  | {
      readonly is: 'load'
      readonly load: Load
      readonly over: boolean
      readonly has: Quantity | null
      readonly needs: Quantity | null
    }
  | { readonly is: 'equipment'; readonly device: Device; readonly result: TestResult }
  | { readonly is: 'contract'; readonly contract: Contract }
  | {
      readonly is: 'cover'
      readonly secured: boolean
      /** Open, broken or not there. */
      readonly missing?: true
      /** Of something that the record has out of service. */
      readonly outOfUse?: true
    }
  | { readonly is: 'top'; readonly holds: boolean }
  | { readonly is: 'other-system'; readonly found: OtherSystem; readonly onRecord: boolean }
