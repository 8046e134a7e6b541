export type Role = 'firm' | 'reviewer' | 'agent'

/** A person, or a program with a person's token, at work in one county. */
export type Person = {
  readonly account: string
  readonly organisation: string
  readonly role: Role
  readonly county: string
}

/** The service itself at work in one county: on behalf of somebody, or (re-runs) of nobody. */
export type Service = {
  readonly account: string | null
  readonly organisation: string | null
  readonly role: 'service'
  readonly county: string
}

/** In whose name a transaction runs; row-level security sees exactly this. */
export type Actor = Person | Service

/**
 * The service acting where the person may not, because of what the person did: reconciling after findings
 * came in, deriving a status. Keeps who it was for. Take it for one step, never for what the person asked to see.
 */
export const asService = ({ account, organisation, county }: Actor): Service => ({
  account,
  organisation,
  county,
  role: 'service',
})

export const serviceIn = (county: string): Service => ({
  account: null,
  organisation: null,
  county,
  role: 'service',
})

/** An account at work on what belongs to no county: its organisation's people, its tokens and sessions. */
export const memberOf = ({
  account,
  organisation,
  role,
}: Pick<Person, 'account' | 'organisation' | 'role'>): Person => ({
  account,
  organisation,
  role,
  county: '',
})

/** The service at the door: it sees who may come in, and no record of any county. */
export const DOORKEEPER: Service = serviceIn('')
