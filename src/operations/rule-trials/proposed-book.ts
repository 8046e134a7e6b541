import { err, ok, type Result } from '../../base/result.ts'
import { parsePacksApart } from '../../files/packs/parse-apart.ts'
import { PACKS_FOLDER, readPackTexts } from '../../files/rule-packs.ts'
import type { EntryIssue } from '../../reading/entry/issues.ts'
import type { RuleBook } from '../../rules/book.ts'

/** The pack's own name, before anything else of it is looked at. */
const NAMED = /^pack:\s*["']?([a-z0-9][a-z0-9-]*\/[a-z0-9][a-z0-9-]*)["']?\s*(?:#.*)?$/m

export type ProposedBook = { readonly pack: string; readonly book: RuleBook }

/** The rules as they are with one pack put in, or in the place of the one of its name; or every fault with its line. */
export async function proposedBook(
  yaml: string,
  county: string,
): Promise<Result<ProposedBook, readonly EntryIssue[]>> {
  const pack = NAMED.exec(yaml)?.[1]
  if (pack === undefined) {
    const message =
      'has no line "pack: <place>/<topic>" that names the pack, for example "pack: quillback/code"'
    return err([{ pointer: '/yaml', message }])
  }
  const path = `${pack}.yaml`
  const others = (await readPackTexts(PACKS_FOLDER)).filter((it) => it.path !== path)
  const book = await parsePacksApart([...others, { path, text: yaml }], path, county)
  if (book.ok) return ok({ pack, book: book.value })
  return err(
    book.error.map(({ file, line, col, message }) => ({
      pointer: '/yaml',
      message: `${file === path ? '' : `${file}, `}line ${line}, column ${col}: ${message}`,
    })),
  )
}

/** The text of a pack that is in use, to be changed and tried; undefined where there is none of that name. */
export const packText = async (pack: string): Promise<string | undefined> =>
  (await readPackTexts(PACKS_FOLDER)).find(({ path }) => path === `${pack}.yaml`)?.text
