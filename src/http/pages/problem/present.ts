import type { ProblemName } from '../../problem-catalog.ts'

export type ProblemWords = {
  readonly title: string
  readonly says: string
  /** What to do now. */
  readonly advice: string
}

const WORDS: { readonly [P in ProblemName]: ProblemWords } = {
  'unreadable-request': {
    title: 'We could not read that',
    says: 'The address or the form is not complete.',
    advice: 'Go back and try again.',
  },
  'invalid-input': {
    title: 'Please check your entries',
    says: 'Some of what you entered cannot be used.',
    advice: 'Fix the entries below and send the form again.',
  },
  'not-signed-in': {
    title: 'You are not signed in',
    says: 'This page is for people with an account.',
    advice: 'Please sign in.',
  },
  'not-allowed': {
    title: 'Your account cannot do this',
    says: 'You can see this page, but you cannot make this change.',
    advice: 'Ask someone whose role allows it.',
  },
  'not-found': {
    title: 'Page not found',
    says: 'This page or parcel does not exist, or your account cannot see it.',
    advice: 'Search for the parcel by its number or address.',
  },
  conflict: {
    title: 'This cannot be done now',
    says: 'Someone else changed this first.',
    advice: 'Go back, check it as it is now, and try again.',
  },
  'still-working': {
    title: 'Still working on it',
    says: 'The same form was sent a moment ago and is not finished.',
    advice: 'Wait a moment, then check the page.',
  },
  'key-reused': {
    title: 'This form was already used',
    says: 'The same form was sent before with other entries.',
    advice: 'Open the form again.',
  },
  stale: {
    title: 'This has changed',
    says: 'Someone else changed it while you had it open. Your changes were not saved.',
    advice: 'Go back, open it again and check what changed.',
  },
  'version-needed': {
    title: 'The form is not complete',
    says: 'It does not say which version it was made from.',
    advice: 'Open the form again.',
  },
  'too-large': {
    title: 'Too large',
    says: 'What you sent is larger than Asfound accepts.',
    advice: 'Send a smaller file, or less at once.',
  },
  'unsupported-type': {
    title: 'Wrong kind of file or form',
    says: 'This page does not accept what was sent.',
    advice: 'Use the form on the page.',
  },
  'too-many-requests': {
    title: 'Too many requests',
    says: 'Too many requests came from your network.',
    advice: 'Wait a minute and try again.',
  },
  'quota-reached': {
    title: 'Your organization has reached its limit',
    says: 'Each organization may have or send a limited amount, so that there is room for all.',
    advice: 'Remove what you no longer need, or continue tomorrow.',
  },
  internal: {
    title: 'Something went wrong',
    says: 'This is our fault, and it was recorded. Nothing you sent was saved.',
    advice: 'Try again later. If it happens again, give the request number below to your administrator.',
  },
  'damaged-file': {
    title: 'This file is damaged',
    says: 'The stored file is not the file that was uploaded, so it is not shown. The damage was recorded.',
    advice: 'Upload the same file again if you have it.',
  },
  unavailable: {
    title: 'Not available right now',
    says: 'A part of the service does not answer. Nothing you sent was saved.',
    advice: 'Try again in a moment.',
  },
  overloaded: {
    title: 'Too busy right now',
    says: 'The service has to finish other work first. Nothing you sent was saved.',
    advice: 'Try again in a moment.',
  },
}

export const problemWords = (kind: ProblemName): ProblemWords => WORDS[kind]
