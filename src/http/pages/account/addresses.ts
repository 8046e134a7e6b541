import type { SessionStage } from '../../../store/database/access-tables.ts'

export const accountPath = '/account'
export const peoplePath = '/people'
export const tokensPath = '/tokens'
export const secondStepPath = '/account/second-step'

/** Where a session goes that is not good for anything yet, and then on to where it was meant to. */
export const stepPath = (stage: Exclude<SessionStage, 'full'>, to: string): string =>
  `${stage === 'set-up' ? secondStepPath : '/sign-in/code'}?to=${encodeURIComponent(to)}`
