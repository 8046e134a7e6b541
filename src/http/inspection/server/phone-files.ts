import { createHash } from 'node:crypto'
import { readFile } from 'node:fs/promises'
import { promisify } from 'node:util'
import { brotliCompress, constants, gzip } from 'node:zlib'
import type { BuildOptions, OutputFile, Plugin } from 'esbuild'

/** A file for the phone, ready to be sent: plain, and as small as it gets. */
export type PhoneFile = {
  readonly type: string
  readonly plain: Buffer
  readonly br: Buffer
  readonly gzip: Buffer
}

export type PhoneFiles = {
  /** Addresses: of the form's sheet and, null where it could not be made, of its module. */
  readonly sheet: string
  readonly module: string | null
  /** The same for the list of inspections. */
  readonly listModule: string | null
  /** By address; good for ever, since each carries the hash of its content. */
  readonly files: ReadonlyMap<string, PhoneFile>
  readonly worker: PhoneFile | null
  /** Why the module could not be made: the form then works as a plain one. */
  readonly trouble: unknown
}

const PUBLIC = new URL('../phone/', import.meta.url)
const AT = '/assets/inspection/'

let made: Promise<PhoneFiles> | undefined

/**
 * The form's sheet, its modules and its service worker. The modules hold the pure rooms themselves, so they are
 * bundled from the same sources that the service runs; once in a process, when first asked for, in about a second.
 */
export const phoneFiles = (): Promise<PhoneFiles> => {
  made ??= make()
  return made
}

async function make(): Promise<PhoneFiles> {
  const css = await readFile(new URL('inspection.css', PUBLIC))
  const sheet = `${AT}inspection.${hashOf(css)}.css`
  try {
    const [bundle, worker, tight] = await Promise.all([
      bundled({
        entryPoints: [fileOf('main.ts'), fileOf('list.ts')],
        format: 'esm',
        splitting: true,
        chunkNames: '[name].[hash]',
      }),
      bundled({ entryPoints: [fileOf('worker.ts')], format: 'iife' }),
      bundled({ entryPoints: [fileOf('inspection.css')] }),
    ])
    const modules = bundle.map((file) => [`${AT}${file.path.split(/[/\\]/).at(-1)}`, file.contents] as const)
    const named = (name: string) => modules.find(([path]) => path.startsWith(`${AT}${name}.`))?.[0] ?? null
    const entries = await Promise.all(
      modules.map(async ([path, bytes]) => [path, await ready(bytes, SCRIPT)] as const),
    )
    return {
      sheet,
      module: named('main'),
      listModule: named('list'),
      files: new Map([...entries, [sheet, await ready(tight[0]!.contents, SHEET)]]),
      worker: await ready(worker[0]!.contents, SCRIPT),
      trouble: null,
    }
  } catch (trouble) {
    return {
      sheet,
      module: null,
      listModule: null,
      files: new Map([[sheet, await ready(css, SHEET)]]),
      worker: null,
      trouble,
    }
  }
}

const SCRIPT = 'text/javascript; charset=utf-8'
const SHEET = 'text/css; charset=utf-8'
const fileOf = (name: string): string => new URL(name, PUBLIC).pathname

async function bundled(options: BuildOptions): Promise<readonly OutputFile[]> {
  const { build } = await import('esbuild')
  const { outputFiles } = await build({
    ...options,
    bundle: true,
    write: false,
    minify: true,
    outdir: 'out',
    entryNames: '[name].[hash]',
    platform: 'browser',
    target: ['chrome120', 'safari17', 'firefox128'],
    legalComments: 'none',
    logLevel: 'silent',
    plugins: [namespaceOfZod],
  })
  return outputFiles ?? []
}

/** `import { z }` takes the whole library, its languages too; as a namespace, only what is used of it. */
const namespaceOfZod: Plugin = {
  name: 'namespace-of-zod',
  setup: (build) =>
    build.onLoad({ filter: /[/\\]src[/\\].*\.ts$/ }, async ({ path }) => {
      const source = await readFile(path, 'utf8')
      return { contents: source.replace("import { z } from 'zod'", "import * as z from 'zod'"), loader: 'ts' }
    }),
}

const [brotli, gzipped] = [promisify(brotliCompress), promisify(gzip)]

async function ready(bytes: Uint8Array, type: string): Promise<PhoneFile> {
  const plain = Buffer.from(bytes)
  const params = { [constants.BROTLI_PARAM_QUALITY]: 9, [constants.BROTLI_PARAM_SIZE_HINT]: plain.length }
  return { type, plain, br: await brotli(plain, { params }), gzip: await gzipped(plain, { level: 9 }) }
}

const hashOf = (bytes: Uint8Array): string =>
  createHash('sha256').update(bytes).digest('base64url').replaceAll(/[-_]/g, '').slice(0, 8)
