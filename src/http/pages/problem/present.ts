import type { ProblemName } from '../../problem-catalog.ts'

export type ProblemWords = {
  readonly title: string
  readonly says: string
  /** What to do now. */
  readonly advice: string
}

const WORDS: { readonly [P in ProblemName]: ProblemWords } = {
  'unreadable-request': {
    title: 'That could not be read',
    says: 'The address or what was sent is not well formed.',
    advice: 'Go back and try once more.',
  },
  'invalid-input': {
    title: 'Some of that can’t be used',
    says: 'One or more of the values in the address or the form are not what is asked for here.',
    advice: 'Look at the list, mend it and send it again.',
  },
  'not-signed-in': {
    title: 'You are not signed in',
    says: 'This page is for people with an account.',
    advice: 'Sign in first.',
  },
  'not-allowed': {
    title: 'That is not for this account',
    says: 'You may look at this, but not do what was asked.',
    advice: 'Someone with another role has to do it.',
  },
  'not-found': {
    title: 'There is nothing here',
    says: 'No such page or parcel exists, or it is not for this account to see.',
    advice: 'Look for the parcel by its number or address.',
  },
  conflict: {
    title: 'That can’t be done any more',
    says: 'Something else was done first.',
    advice: 'Go back, look at how it stands now, and decide again.',
  },
  'still-working': {
    title: 'Still working on it',
    says: 'The same thing was sent a moment ago and is not done yet.',
    advice: 'Wait a moment, then look whether it is there.',
  },
  'key-reused': {
    title: 'That was sent before',
    says: 'The form was used for something else already.',
    advice: 'Open it anew.',
  },
  stale: {
    title: 'It has changed meanwhile',
    says: 'Someone changed it while you had it open. Nothing of yours was saved over theirs.',
    advice: 'Go back, open it anew and look at what changed.',
  },
  'version-needed': {
    title: 'The form is incomplete',
    says: 'It does not say what it was made from.',
    advice: 'Open it anew.',
  },
  'too-large': {
    title: 'Too large',
    says: 'What was sent is larger than this service takes.',
    advice: 'Send less at once.',
  },
  'unsupported-type': {
    title: 'Not a form',
    says: 'What was sent is not of a kind this page takes.',
    advice: 'Use the form on the page.',
  },
  'too-many-requests': {
    title: 'Too fast',
    says: 'There were more requests from here than the service allows.',
    advice: 'Wait a minute and go on.',
  },
  'quota-reached': {
    title: 'That is as much as your organization may have',
    says: 'So that none takes the room of all, each organization may have and send so much.',
    advice: 'End what is not needed any more, or go on tomorrow.',
  },
  internal: {
    title: 'A fault of this service',
    says: 'It is ours and was noted. Nothing of what you sent was kept.',
    advice: 'Try again later; if it stays so, tell whoever runs the service the number below.',
  },
  'damaged-file': {
    title: 'That file is damaged',
    says: 'What is kept here is not what came in, so it is not shown. It was noted.',
    advice: 'Send the same file again if you have it.',
  },
  unavailable: {
    title: 'Not available just now',
    says: 'Something this service needs does not answer. Nothing of what you sent was kept.',
    advice: 'Try again in a moment.',
  },
  overloaded: {
    title: 'Too much to do just now',
    says: 'The service is finishing what it has before it takes more. Nothing of what you sent was kept.',
    advice: 'Try again in a moment.',
  },
}

export const problemWords = (kind: ProblemName): ProblemWords => WORDS[kind]
