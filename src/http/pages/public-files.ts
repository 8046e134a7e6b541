import { createHash } from 'node:crypto'
import { readdirSync, readFileSync } from 'node:fs'
import { gzipSync } from 'node:zlib'

export type PublicFile = {
  readonly path: string
  readonly type: string
  readonly body: string
  readonly gzipped: Buffer
}

const FOLDER = new URL('../public/', import.meta.url)
const TYPES: Readonly<Record<string, string>> = {
  css: 'text/css; charset=utf-8',
  js: 'text/javascript; charset=utf-8',
  svg: 'image/svg+xml',
}

const named = (folder: URL, ending: string): readonly string[] =>
  readdirSync(folder)
    .filter((name) => name.endsWith(`.${ending}`))
    .sort()

/** Comments and indentation are for whoever changes the sheet. */
const tight = (css: string): string =>
  css
    .replace(/\/\*[\s\S]*?\*\//g, '')
    .replace(/\s+/g, ' ')
    .replace(/ ?([{};,>]) ?/g, '$1')
    .replace(/: /g, ':')
    .replace(/;}/g, '}')
    .trim()

/** The sheet is written in parts, by what they dress, and sent as one. */
function sheet(): string {
  const folder = new URL('sheet/', FOLDER)
  return tight(
    named(folder, 'css')
      .map((name) => readFileSync(new URL(name, folder), 'utf8'))
      .join('\n'),
  )
}

/** The address carries the hash of the content: a browser may keep it for ever, and a new version is a new address. */
function file(name: string, body: string): readonly [string, PublicFile] {
  const [stem = '', ending = ''] = name.split('.')
  const hash = createHash('sha256').update(body).digest('base64url').slice(0, 10)
  const path = `/assets/${stem}.${hash}.${ending}`
  return [name, { path, type: TYPES[ending]!, body, gzipped: gzipSync(body) }]
}

const asTheyAre = ['js', 'svg'].flatMap((ending) => named(FOLDER, ending))

/** The files that pages ask for, by name. */
export const PUBLIC_FILES: ReadonlyMap<string, PublicFile> = new Map([
  file('sheet.css', sheet()),
  ...asTheyAre.map((name) => file(name, readFileSync(new URL(name, FOLDER), 'utf8'))),
])

export const publicPath = (name: string): string => {
  const found = PUBLIC_FILES.get(name)
  if (!found) throw new Error(`there is no public file ${name}`)
  return found.path
}
