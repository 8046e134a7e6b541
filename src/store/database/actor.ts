export type Role = 'firm' | 'reviewer' | 'agent'

/** A person, or a program with a person's token, at work in one county. */
export type Person = {
  readonly account: string
  readonly organization: string
  readonly role: Role
  readonly county: string
}

/** The service itself at work in one county: on behalf of somebody, or (re-runs) of nobody. */
export type Service = {
  readonly account: string | null
  readonly organization: string | null
  readonly role: 'service'
  readonly county: string
}

/** In whose name a transaction runs; row-level security sees exactly this. */
export type Actor = Person | Service

/**
 * The service acting where the person may not, because of what the person did: reconciling after findings
 * came in, deriving a status. Keeps who it was for. Take it for one step, never for what the person asked to see.
 */
export const asService = ({ account, organization, county }: Actor): Service => ({
  account,
  organization,
  county,
  role: 'service',
})

export const serviceIn = (county: string): Service => ({
  account: null,
  organization: null,
  county,
  role: 'service',
})

/** An account at work on what belongs to no county: its organization's people, its tokens and sessions. */
export const memberOf = ({
  account,
  organization,
  role,
}: Pick<Person, 'account' | 'organization' | 'role'>): Person => ({
  account,
  organization,
  role,
  county: '',
})

/** The service at the door: it sees who may come in, and no record of any county. */
export const DOORKEEPER: Service = serviceIn('')
