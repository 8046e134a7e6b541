/** One fault in what was given: where (JSON Pointer, RFC 6901, into the value given) and, in a plain sentence, what. */
export type Issue = { readonly pointer: string; readonly message: string }

/** The same issues, seen from a value that holds the faulty one at `pointer`. */
export const under = (pointer: string, issues: readonly Issue[]): readonly Issue[] =>
  issues.map((issue) => ({ ...issue, pointer: `${pointer}${issue.pointer}` }))
