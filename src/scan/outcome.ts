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
      return 'This file is not a PDF. Save the photo or document as a PDF and upload that.'
    case 'encrypted':
      return 'This PDF has a password. Save a copy without a password and upload that.'
    case 'truncated':
      return 'The end of this PDF is missing, so it cannot be read. Get the file again from its source and upload it again.'
    case 'damaged':
      return 'This PDF is damaged and cannot be read. Print or scan the document to a new PDF and upload that.'
    case 'no-pages':
      return 'This PDF has no pages. Check that this is the right file.'
    case 'too-many-pages':
      return `This PDF has ${pageCount ?? 'too many'} pages. The limit is ${limits.maxPages}. Split it and upload the parts.`
    case 'too-big':
      return `This file is larger than ${megabytes(limits.maxBytes)}. Split it, or scan it again at 300 dpi in gray.`
    case 'timed-out':
      return `This PDF took longer than ${seconds(limits.openMs)} to open or ${seconds(limits.documentMs)} to read. Print or scan the document to a new PDF and upload that.`
    case 'out-of-memory':
      return `Opening this PDF needs more than ${megabytes(limits.memoryBytes)} of memory. Print or scan the document to a new PDF and upload that.`
    case 'pure-scan':
      return 'This PDF contains only images and no text. It is kept; a person can type what it says.'
  }
}

/** The same for one page. */
export function sayUnread(why: UnreadReason, limits: Limits): string {
  switch (why) {
    case 'no-text-layer':
      return 'This page is an image without text.'
    case 'garbled-text':
      return 'The text stored in this page is not readable. Read the image instead.'
    case 'blank':
      return 'This page is blank.'
    case 'picture-too-large':
      return 'The image on this page has more than 100 million pixels and was left out. Scan the document again at 300 dpi.'
    case 'timed-out':
      return `This page took longer than ${seconds(limits.pageMs)} and was left out. Type what it says, or scan the document again.`
    case 'out-of-memory':
      return `This page needs more than ${megabytes(limits.memoryBytes)} of memory and was left out. Type what it says, or scan the document again at 300 dpi.`
    case 'damaged':
      return 'This page is damaged in the file and could not be read. Type what it says, or scan the document again.'
    case 'recognizer-ended':
      return 'Reading this page was interrupted. Read it again.'
  }
}
