import type { Role } from '../../../store/database/actor.ts'

/** Whoever reads a page: what it may offer them. */
export type Reader = {
  readonly role: Role
  readonly county: { readonly id: string; readonly name: string }
  /** Signed in by a session of the browser, which can be ended; not by a token. */
  readonly bySession: boolean
}
