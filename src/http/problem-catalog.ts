/** A kind of problem: what a client may rely on. `type` in an answer is `/problems/` and the name; docs/problems.md lists them. */
export type ProblemKind = { readonly status: number; readonly title: string; readonly about: string }

const kinds = {
  'unreadable-request': {
    status: 400,
    title: 'The request can’t be read',
    about:
      'The body is not JSON, its length is wrong, or the address holds characters that can’t be. Send it again, well formed.',
  },
  'invalid-input': {
    status: 422,
    title: 'Some of what was sent can’t be used',
    about:
      '`errors` lists every fault: `in` says whether it is in the body, the path, the query or a header, `pointer` (RFC 6901) where, `message` what it is and what to write instead.',
  },
  'not-signed-in': {
    status: 401,
    title: 'Nobody is signed in',
    about:
      'The request carries no token, or one that is unknown, expired or withdrawn. Send `Authorization: Bearer` and a token.',
  },
  'not-allowed': {
    status: 403,
    title: 'This token may not do that',
    about:
      'What is asked for can be seen with this token, but not done. The detail names the roles that may.',
  },
  'not-found': {
    status: 404,
    title: 'There is nothing here',
    about: 'There is no such thing, or this token may not see it; the answer is the same on purpose.',
  },
  conflict: {
    status: 409,
    title: 'The state of things does not allow it',
    about:
      'Something else was done first, as findings that were already submitted. The detail says what; read the resource again.',
  },
  'still-working': {
    status: 409,
    title: 'The same request is being worked on',
    about:
      'Another request with the same `Idempotency-Key` has not been answered yet. Ask again after `Retry-After`.',
  },
  'key-reused': {
    status: 422,
    title: 'The Idempotency-Key was used for something else',
    about:
      'A key stands for one request. This one was sent before with another body or to another address. Use a new key.',
  },
  stale: {
    status: 412,
    title: 'It has changed since it was read',
    about:
      '`If-Match` names an older version. Read it again, look at what changed, and send the change with the new `ETag`.',
  },
  'version-needed': {
    status: 428,
    title: 'Say which version is to be replaced',
    about:
      'Replacing something needs `If-Match` with the `ETag` of the version it was read at, so that nobody’s change is lost.',
  },
  'too-large': {
    status: 413,
    title: 'Too large',
    about: 'The body or the file is larger than this service takes; the detail gives the limit.',
  },
  'unsupported-type': {
    status: 415,
    title: 'Not a type this takes',
    about: 'The `Content-Type` is none that this address takes; the API description lists them.',
  },
  'too-many-requests': {
    status: 429,
    title: 'Too many requests',
    about:
      'This token, or this address without one, asked more often than the service allows. Go on after `Retry-After`.',
  },
  'quota-reached': {
    status: 429,
    title: 'Your organization has as much of this as it may',
    about:
      'So that none takes the room of all, each organization may have and send so much. The detail says what, and what to do.',
  },
  internal: {
    status: 500,
    title: 'A fault of this service',
    about:
      'It was noted under `requestId`. Nothing of the request was kept. Tell whoever runs the service the id.',
  },
  'damaged-file': {
    status: 500,
    title: 'A file that is kept here is damaged',
    about:
      'Its bytes are not those that came in, so it is not given out. It was noted. Send the same file again where you have it, or tell whoever runs the service.',
  },
  unavailable: {
    status: 503,
    title: 'Something this service needs is not available',
    about:
      'The database, or another thing outside the program, does not answer. Nothing of the request was kept. Try again after `Retry-After`.',
  },
  overloaded: {
    status: 503,
    title: 'Too much to do just now',
    about:
      'The service turns new requests away to finish those inside. Nothing of the request was kept. Try again after `Retry-After`.',
  },
} as const satisfies Readonly<Record<string, ProblemKind>>

export type ProblemName = keyof typeof kinds

export const PROBLEMS: Readonly<Record<ProblemName, ProblemKind>> = kinds
export const isProblemName = (name: string): name is ProblemName => Object.hasOwn(kinds, name)
