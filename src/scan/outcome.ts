import type { PageWords } from '../reading/page-words.ts'
import type { Limits } from './limits.ts'

/** Why a page has no words. `says` tells a person what it is and what to do. */
export const UNREAD_REASONS = [
  'no-text-layer',
  'garbled-text',
  'blank',
  'picture-too-large',
  'timed-out',
  'out-of-memory',
  'damaged',
  'recognizer-ended',
] as const
export type UnreadReason = (typeof UNREAD_REASONS)[number]

export type ReadPage = {
  readonly state: 'read'
  readonly words: PageWords
  readonly notes: readonly string[]
}
export type UnreadPage = {
  readonly state: 'unread'
  readonly page: number
  readonly why: UnreadReason
  readonly says: string
  /** Whether reading it again may help: it was ended from outside, not by what is on it. */
  readonly mayRetry: boolean
}
export type PageReading = ReadPage | UnreadPage

export const REFUSALS = [
  'not-a-pdf',
  'encrypted',
  'truncated',
  'damaged',
  'no-pages',
  'too-many-pages',
  'too-big',
  'timed-out',
  'out-of-memory',
  'pure-scan',
] as const
export type Refusal = (typeof REFUSALS)[number]

/** How a document was read, or why not. A refusal is about the file; what fails outside it is thrown. */
export type DocumentReading =
  | {
      readonly outcome: 'read'
      readonly pageCount: number
      readonly pages: readonly PageReading[]
      readonly notes: readonly string[]
    }
  | {
      readonly outcome: Refusal
      readonly says: string
      readonly pageCount: number | null
      /** What could be told page by page before the document was given up; a pure scan lists every page. */
      readonly pages: readonly PageReading[]
    }

const seconds = (ms: number): string => `${+(ms / 1000).toFixed(1)} s`
const megabytes = (bytes: number): string => `${Math.round(bytes / 1024 / 1024)} MB`

/** A plain sentence for each refusal: what it is, and what to do. */
export function sayRefusal(why: Refusal, limits: Limits, pageCount: number | null): string {
  switch (why) {
    case 'not-a-pdf':
      return 'This file is not a PDF. Send the permit as a PDF; a photo or word-processor file has to be saved as one first.'
    case 'encrypted':
      return 'This PDF is locked with a password. Open it with the password, save a copy without one, and send that.'
    case 'truncated':
      return 'The end of this PDF is missing, so its pages cannot be found: it was probably cut off on its way. Fetch it again from where it is kept and send it once more.'
    case 'damaged':
      return 'This PDF is damaged and its pages cannot be found. Print or scan the paper to a new PDF and send that.'
    case 'no-pages':
      return 'This PDF has no pages. Check that the right file was sent.'
    case 'too-many-pages':
      return `This PDF has ${pageCount ?? 'too many'} pages and at most ${limits.maxPages} are read at once. Split it and send the parts.`
    case 'too-big':
      return `This file is larger than ${megabytes(limits.maxBytes)}. Split it, or scan it again at 300 dots per inch in gray.`
    case 'timed-out':
      return `This PDF took longer than ${seconds(limits.openMs)} to open or ${seconds(limits.documentMs)} to read and was given up. Print or scan the paper to a new PDF and send that.`
    case 'out-of-memory':
      return `Opening this PDF needs more than ${megabytes(limits.memoryBytes)} of memory and was given up. Print or scan the paper to a new PDF and send that.`
    case 'pure-scan':
      return 'This PDF holds pictures of paper and no text. It is kept; a person can type what it says.'
  }
}

/** The same for one page. */
export function sayUnread(why: UnreadReason, limits: Limits): string {
  switch (why) {
    case 'no-text-layer':
      return 'This page is a picture without text.'
    case 'garbled-text':
      return 'The text stored in this page does not spell words; read the picture instead.'
    case 'blank':
      return 'Nothing is on this page.'
    case 'picture-too-large':
      return 'The picture on this page unpacks to more than 100 million points and was left out. Scan the paper again at 300 dots per inch.'
    case 'timed-out':
      return `This page took longer than ${seconds(limits.pageMs)} and was left out. Type what it says, or scan the paper again.`
    case 'out-of-memory':
      return `This page needs more than ${megabytes(limits.memoryBytes)} of memory and was left out. Type what it says, or scan the paper again at 300 dots per inch.`
    case 'damaged':
      return 'This page is damaged in the file and could not be read. Type what it says, or scan the paper again.'
    case 'recognizer-ended':
      return 'Reading this page was ended from outside. Read it again.'
  }
}
