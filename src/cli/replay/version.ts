import { execFileSync } from 'node:child_process'
import { existsSync, mkdtempSync, rmSync, symlinkSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { fileURLToPath, pathToFileURL } from 'node:url'
import type { Result } from '../../base/result.ts'
import type { Reconciliation } from '../../reconcile/reconcile.ts'
import type { RuleBook } from '../../rules/book.ts'
import type { Question } from './story-inputs.ts'

/** One version of the program, with the rules that came with it. */
export type Version = {
  readonly name: string
  readonly answer: (input: Question['input'], book?: RuleBook) => Reconciliation
  readonly close: () => void
}

export const HERE = fileURLToPath(new URL('../../../', import.meta.url))

/** The version in a folder: its own reconciliation and its own rule packs. */
export async function versionIn(
  folder: string,
  name: string,
  close: () => void = () => {},
): Promise<Version> {
  const load = (file: string) => import(pathToFileURL(path.join(folder, 'src', file)).href)
  const { reconcile } = (await load('reconcile/reconcile.ts')) as {
    reconcile: (input: Question['input'] & { readonly book: RuleBook }) => Reconciliation
  }
  const { loadRuleBook } = (await load('files/rule-packs.ts')) as {
    loadRuleBook: () => Promise<Result<RuleBook, unknown>>
  }
  const own = await loadRuleBook()
  if (!own.ok) throw new Error(`The rule packs of ${name} cannot be read.`)
  return { name, answer: (input, book = own.value) => reconcile({ ...input, book }), close }
}

/**
 * A released version: a folder where it lies, or a tag (or any commit) of this repository, laid out in a folder of its own
 * until `close`. It runs on the libraries that are installed here.
 */
export async function versionOf(asked: string): Promise<Version> {
  if (existsSync(path.join(asked, 'src', 'reconcile'))) return versionIn(path.resolve(asked), asked)
  const folder = mkdtempSync(path.join(tmpdir(), 'asfound-version-'))
  const close = () => rmSync(folder, { recursive: true, force: true })
  try {
    const commit = execFileSync('git', ['rev-parse', '--verify', '--quiet', `${asked}^{commit}`], {
      cwd: HERE,
    })
    const archive = execFileSync('git', ['archive', commit.toString().trim(), 'src', 'package.json'], {
      cwd: HERE,
      maxBuffer: 1e9,
    })
    execFileSync('tar', ['-x', '-C', folder], { input: archive })
    symlinkSync(path.join(HERE, 'node_modules'), path.join(folder, 'node_modules'))
    return await versionIn(folder, asked, close)
  } catch (cause) {
    close()
    throw new Error(`${asked} is neither a folder with a version in it nor a tag of this repository.`, {
      cause,
    })
  }
}
