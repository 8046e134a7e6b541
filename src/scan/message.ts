import type { PageReading } from './outcome.ts'

/** What the child process says, one line of JSON each, in this order: opened or refused, then begin and done by page. */
export type Message =
  | { readonly type: 'opened'; readonly pageCount: number; readonly notes: readonly string[] }
  | {
      readonly type: 'refused'
      readonly why: 'not-a-pdf' | 'encrypted' | 'truncated' | 'damaged' | 'no-pages'
    }
  | { readonly type: 'begin'; readonly page: number }
  | { readonly type: 'done'; readonly reading: PageReading }
