import { canonicalText } from '../../base/canonical.ts'
import { sha256 } from '../hash.ts'

/** One entry of a county's audit chain: who did what to which record, and when. */
export type AuditEntry = {
  /** A county's id, or `*` for what belongs to none, as accounts and tokens. */
  readonly county: string
  /** From 1, without a gap. */
  readonly number: number
  /** By the database's clock, to the microsecond, in UTC. Order is by number: a clock may jump. */
  readonly at: string
  /** `restated`: was there before the audit, or a later version gave it another shape and the same meaning. */
  readonly act: 'made' | 'changed' | 'removed' | 'restated'
  /** The record's table. */
  readonly kind: string
  /** Its key there. */
  readonly record: string
  readonly account: string | null
  readonly organization: string | null
  /** `owner`: the command line, or someone in the database itself. */
  readonly role: string
  /** SHA-256 of the record, 64 hex digits; null where there was none, or is none any more. */
  readonly beforeHash: string | null
  readonly afterHash: string | null
}

/** What the first entry follows. */
export const BEFORE_THE_FIRST = '0'.repeat(64)

/**
 * SHA-256 of the hash of the entry before it, in hex, and then the entry as canonical JSON (RFC 8785). The database
 * writes the same (migration 0013); here it is worked out a second time, by another program.
 */
export const entryHash = (before: string, entry: AuditEntry): string => sha256(before + canonicalText(entry))

/** An entry in words, to point at it. */
export const entrySays = ({ county, number, act, kind, record, at }: AuditEntry): string =>
  `entry ${number} of ${chainName(county)} (${kind} ${record}, ${act} ${at})`

export const chainName = (county: string): string => (county === '*' ? 'the service’s own chain' : county)
