/**
 * Something outside this program is gone or too slow: the database, the recognizer, a disk.
 * Thrown with its cause; ends as 503 with Retry-After when trying again may help, else as 500.
 */
export class OutsideFailure extends Error {
  override readonly name = 'OutsideFailure'
  /** Seconds after which trying again is worth it; undefined when it is not. */
  readonly retryAfterSeconds: number | undefined

  constructor(
    message: string,
    options: { readonly cause?: unknown; readonly retryAfterSeconds?: number } = {},
  ) {
    super(message, { cause: options.cause })
    this.retryAfterSeconds = options.retryAfterSeconds
  }
}
