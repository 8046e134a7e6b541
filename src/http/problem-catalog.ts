/** A kind of problem: what a client may rely on. `type` in an answer is `/problems/` and the name; docs/problems.md lists them. */
export type ProblemKind = { readonly status: number; readonly title: string; readonly about: string }

const kinds = {
  'unreadable-request': {
    status: 400,
    title: 'The request cannot be read',
    about:
      'The body is not JSON, its length is wrong, or the address contains invalid characters. Correct it and send it ' +
      'again.',
  },
  'invalid-input': {
    status: 422,
    title: 'Some of the input is invalid',
    about:
      '`errors` lists every fault. `in` is body, path, query or header, `pointer` (RFC 6901) the place, and `message` ' +
      'says what is wrong and what to write instead.',
  },
  'not-signed-in': {
    status: 401,
    title: 'Not signed in',
    about:
      'The request has no token, or one that is unknown, expired or revoked. Send `Authorization: Bearer` and a ' +
      'token.',
  },
  'not-allowed': {
    status: 403,
    title: 'Not allowed',
    about: 'This token can see this, but cannot do it. The detail names the roles that can.',
  },
  'not-found': {
    status: 404,
    title: 'Not found',
    about: 'It does not exist, or this token cannot see it. The answer is the same on purpose.',
  },
  conflict: {
    status: 409,
    title: 'Conflict',
    about:
      'Something else happened first, for example the findings are already submitted. The detail says what. Read the ' +
      'resource again.',
  },
  'still-working': {
    status: 409,
    title: 'The same request is in progress',
    about:
      'Another request with the same `Idempotency-Key` is still in progress. Try again after `Retry-After`.',
  },
  'key-reused': {
    status: 422,
    title: 'The Idempotency-Key was used for another request',
    about:
      'A key is for one request. This one was sent before with another body or to another address. Use a new key.',
  },
  stale: {
    status: 412,
    title: 'Changed since it was read',
    about:
      '`If-Match` names an older version. Read it again, check what changed, and send your change with the new `ETag`.',
  },
  'version-needed': {
    status: 428,
    title: 'If-Match is required',
    about:
      'To replace something, send `If-Match` with the `ETag` of the version you read, so that nobody’s change is lost.',
  },
  'too-large': {
    status: 413,
    title: 'Too large',
    about: 'The body or file is larger than the limit in the detail.',
  },
  'unsupported-type': {
    status: 415,
    title: 'Unsupported media type',
    about: 'This address does not accept the `Content-Type`. The API description lists what it accepts.',
  },
  'too-many-requests': {
    status: 429,
    title: 'Too many requests',
    about:
      'This token, or this address without a token, sent more requests than the service allows. Continue after ' +
      '`Retry-After`.',
  },
  'quota-reached': {
    status: 429,
    title: 'Your organization has reached its limit',
    about:
      'Each organization may have or send a limited amount, so that there is room for all. `detail` says which limit and what to do.',
  },
  internal: {
    status: 500,
    title: 'Internal error',
    about:
      'A fault of this service, recorded under `requestId`. Nothing of the request was saved. Give the id to the ' +
      'people who run the service.',
  },
  'damaged-file': {
    status: 500,
    title: 'A stored file is damaged',
    about:
      'The stored bytes are not the bytes that were uploaded, so the file is not sent. The damage was recorded. Upload the same file again, or tell the people who run the service.',
  },
  unavailable: {
    status: 503,
    title: 'Not available',
    about:
      'The database or another part that the service needs does not answer. Nothing of the request was saved. Try ' +
      'again after `Retry-After`.',
  },
  overloaded: {
    status: 503,
    title: 'Overloaded',
    about:
      'The service refuses new requests to finish those in progress. Nothing of the request was saved. Try again ' +
      'after `Retry-After`.',
  },
} as const satisfies Readonly<Record<string, ProblemKind>>

export type ProblemName = keyof typeof kinds

export const PROBLEMS: Readonly<Record<ProblemName, ProblemKind>> = kinds
export const isProblemName = (name: string): name is ProblemName => Object.hasOwn(kinds, name)
