import type { Caller } from '../../store/access/find-token.ts'

/** Who asks for something about an organization, its people, tokens or sessions. */
export type Asker = Pick<
  Caller,
  'account' | 'organization' | 'role' | 'administers' | 'counties' | 'writes' | 'token' | 'bySession'
>
