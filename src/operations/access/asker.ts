import type { Caller } from '../../store/access/find-token.ts'

/** Who asks for something about an organisation, its people, tokens or sessions. */
export type Asker = Pick<
  Caller,
  'account' | 'organisation' | 'role' | 'administers' | 'counties' | 'writes' | 'token' | 'bySession'
>
