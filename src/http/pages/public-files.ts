import { createHash } from 'node:crypto'
import { readdirSync, readFileSync } from 'node:fs'

export type PublicFile = { readonly path: string; readonly type: string; readonly body: string }

const FOLDER = new URL('../public/', import.meta.url)
const TYPES: Readonly<Record<string, string>> = {
  css: 'text/css; charset=utf-8',
  js: 'text/javascript; charset=utf-8',
  svg: 'image/svg+xml',
}

/** Comments and indentation are for whoever changes the sheet. */
const tight = (css: string): string =>
  css
    .replace(/\/\*[\s\S]*?\*\//g, '')
    .replace(/\s+/g, ' ')
    .replace(/ ?([{};,>]) ?/g, '$1')
    .replace(/: /g, ':')
    .replace(/;}/g, '}')
    .trim()

/**
 * The files that pages ask for, by name. An address carries the hash of its content, so that a browser may keep it for
 * ever and a new version is a new address.
 */
export const PUBLIC_FILES: ReadonlyMap<string, PublicFile> = new Map(
  readdirSync(FOLDER)
    .filter((name) => TYPES[name.slice(name.lastIndexOf('.') + 1)] !== undefined)
    .map((name) => {
      const [stem = '', ending = ''] = name.split('.')
      const text = readFileSync(new URL(name, FOLDER), 'utf8')
      const body = ending === 'css' ? tight(text) : text
      const hash = createHash('sha256').update(body).digest('base64url').slice(0, 10)
      return [name, { path: `/assets/${stem}.${hash}.${ending}`, type: TYPES[ending]!, body }] as const
    }),
)

export const publicPath = (name: string): string => {
  const file = PUBLIC_FILES.get(name)
  if (!file) throw new Error(`there is no public file ${name}`)
  return file.path
}
