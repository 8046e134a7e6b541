import type { SessionStage } from '../../../store/database/access-tables.ts'

const part = encodeURIComponent

export const accountPath = '/account'
export const secondStepPath = '/account/second-step'
export const tokensPath = '/tokens'
export const peoplePath = '/people'
export const codePath = '/sign-in/code'
export const invitationPath = '/invitation'
export const providerPath = (county: string, to: string): string =>
  `/sign-in/with/${part(county)}?to=${part(to)}`
export const organizationsPath = (county: string): string => `/counties/${part(county)}/organizations`

/** Where a session goes that is not good for anything yet, and then on to where it was meant to. */
export const stepPath = (stage: Exclude<SessionStage, 'full'>, to: string): string =>
  `${stage === 'set-up' ? secondStepPath : codePath}?to=${part(to)}`
