import type { Contract, TestResult } from '../catalog/choices.ts'
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
