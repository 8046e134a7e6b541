import { readdir, readFile, stat } from 'node:fs/promises'
import { basename, dirname, join, relative, sep } from 'node:path'
import { fileURLToPath } from 'node:url'
import { err, type Result } from '../base/result.ts'
import type { RuleBook } from '../rules/book.ts'
import type { Fault } from '../rules/parse/fault.ts'
import { type PackText, parsePacks } from '../rules/parse/parse-packs.ts'

/** The packs that come with the service. */
export const PACKS_FOLDER = fileURLToPath(new URL('../rules/packs/', import.meta.url))

const isPack = (name: string): boolean => /\.ya?ml$/.test(name)

/** Every pack's text under a folder, by its path inside it with forward slashes, in the order of their names. */
export async function readPackTexts(folder: string): Promise<readonly PackText[]> {
  const found = await readdir(folder, { recursive: true, withFileTypes: true })
  const paths = found
    .filter((entry) => entry.isFile() && isPack(entry.name))
    .map((entry) => join(entry.parentPath, entry.name))
    .sort()
  return Promise.all(
    paths.map(async (path) => ({
      path: relative(folder, path).split(sep).join('/'),
      text: await readFile(path, 'utf8'),
    })),
  )
}

/**
 * The rule book out of a folder of packs, and every fault of every file where it can't be made. A folder that isn't
 * there is thrown as the system reports it: it is a fault of the installation and not of a pack.
 */
export async function loadRuleBook(
  folder: string = PACKS_FOLDER,
): Promise<Result<RuleBook, readonly Fault[]>> {
  return parsePacks(await readPackTexts(folder))
}

/**
 * The packs that come with the service together with one file or folder of a county's own. A pack of the same path
 * takes the place of the one that came with the service. A single file is named by its last folder and its own name.
 */
export async function loadRuleBookWith(path: string): Promise<Result<RuleBook, readonly Fault[]>> {
  const own = (await stat(path)).isDirectory()
    ? await readPackTexts(path)
    : [{ path: `${basename(dirname(path))}/${basename(path)}`, text: await readFile(path, 'utf8') }]
  if (own.length === 0)
    return err([{ file: path, line: 1, col: 1, message: 'there is no pack (.yaml) in this folder' }])
  const replaced = new Set(own.map((it) => it.path))
  const shipped = await readPackTexts(PACKS_FOLDER)
  return parsePacks([...shipped.filter((it) => !replaced.has(it.path)), ...own])
}
