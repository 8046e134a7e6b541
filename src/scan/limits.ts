/** What one document may cost. Each limit has an outcome of its own when it is reached. */
export type Limits = {
  readonly maxBytes: number
  readonly maxPages: number
  /** From the start of the child process until the number of pages is known. */
  readonly openMs: number
  readonly pageMs: number
  /** The whole document, all restarts included. */
  readonly documentMs: number
  /** Resident memory of the child process. */
  readonly memoryBytes: number
}

const MB = 1024 * 1024

export const DEFAULT_LIMITS: Limits = {
  maxBytes: 500 * MB,
  maxPages: 2000,
  openMs: 30_000,
  pageMs: 60_000,
  // 2,000 scanned pages at the pace of a small machine.
  documentMs: 10 * 3_600_000,
  memoryBytes: 2048 * MB,
}
