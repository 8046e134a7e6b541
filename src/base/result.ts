/** Bad input is a value, not an exception: a result carries every issue found, never only the first. */
export type Result<T, E> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly error: E }

export const ok = <T>(value: T): Result<T, never> => ({ ok: true, value })
export const err = <E>(error: E): Result<never, E> => ({ ok: false, error })

/** The value of a result that the caller knows to be good; throws the error's text otherwise. For tests and constants. */
export function must<T, E>(result: Result<T, E>): T {
  if (result.ok) return result.value
  throw new Error(typeof result.error === 'string' ? result.error : JSON.stringify(result.error))
}
