/** How long clients may take, milliseconds. */
export type Patience = {
  /** From the connection's first byte to the last header. */
  readonly headersMs: number
  /** To the last byte of the body: 50 MB at 1.3 Mbit/s, which is what an upload from the country may have. */
  readonly requestMs: number
  /** Without a byte either way. */
  readonly silenceMs: number
  /** How often it is looked whether one took longer. */
  readonly lookMs: number
}

/** Starting points, common practice; a request that takes longer is answered 408 and its connection cut. */
export const PATIENCE: Patience = {
  headersMs: 20_000,
  requestMs: 300_000,
  silenceMs: 120_000,
  lookMs: 5_000,
}
