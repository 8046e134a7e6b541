import type { PageWords } from '../../src/reading/page-words.ts'
import { associated } from '../../src/scan/child/association/associate.ts'
import { pageOfText } from './page-of-text.ts'

/** Lines of text as a page with the links that the reading process would store with it. */
export const linkedText = (lines: readonly string[], page = 1): Promise<PageWords> =>
  associated(pageOfText(lines, page))

export const linkedAll = (pages: readonly PageWords[]): Promise<PageWords[]> =>
  Promise.all(pages.map(associated))
