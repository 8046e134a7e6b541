import type { Role } from '../../../store/database/actor.ts'
import { type CopyIn, inLanguage } from '../../../words/copy.ts'
import type { Language } from '../../../words/language.ts'
import { accountPath } from '../account/addresses.ts'
import { documentsPath } from '../documents/addresses.ts'
import { type Html, html } from '../html.ts'
import type { LanguageLink } from '../language.ts'
import { publicPath } from '../public-files.ts'
import {
  changesPath,
  countyPath,
  importsPath,
  inspectionsPath,
  overviewPath,
  queuePath,
  rulesPath,
  searchPath,
} from './addresses.ts'
import { FRAME, LANGUAGE_NAMES } from './copy.ts'
import type { Reader } from './reader.ts'

export type Page = {
  readonly title: string
  readonly body: Html
  /** Of a page that is written in every language: the one it is in. All others are English. */
  readonly language?: Language
  /** What was asked for in the search box, kept in it. */
  readonly asked?: string
  /** Scripts of public/ that make the page easier to use; it works without them. */
  readonly modules?: readonly string[]
  /** Shows something only once, as a new token: no browser keeps it. */
  readonly secret?: boolean
}

type Place = { readonly path: string; readonly name: string }
type Frame = CopyIn<typeof FRAME>

const PLACES: { readonly [R in Role]: (county: string, frame: Frame) => readonly Place[] } = {
  reviewer: (county) => [
    { path: queuePath(county), name: 'Queue' },
    { path: documentsPath(county), name: 'Documents' },
    { path: overviewPath(county), name: 'County overview' },
    { path: rulesPath(county), name: 'Rules' },
    { path: importsPath(county), name: 'Imports' },
  ],
  firm: (county) => [{ path: inspectionsPath(county), name: 'Inspections' }],
  agent: (county, { changes }) => [{ path: changesPath(county), name: changes }],
}

export type Around = {
  /** Null while nobody is signed in. */
  readonly reader: Reader | null
  /** The path of the page, to mark its place. */
  readonly here: string
  readonly languages: readonly LanguageLink[]
}

/** A whole document. */
export function layout(
  { reader, here, languages }: Around,
  { title, body, language = 'en', asked, modules = [] }: Page,
): string {
  const frame = inLanguage(FRAME, language)
  return `<!doctype html>${html`
    <html lang="${language}">
      <head>
        <meta charset="utf-8">
        <meta name="viewport" content="width=device-width,initial-scale=1">
        <meta name="color-scheme" content="light dark">
        <title>${title} · Asfound</title>
        <link rel="stylesheet" href="${publicPath('sheet.css')}">
        <link rel="icon" href="${publicPath('mark.svg')}">
        ${modules.map((name) => html`<script type="module" src="${publicPath(name)}"></script>`)}
      </head>
      <body>
        <a class="skip" href="#main">${frame.skip}</a>
        <header class="top">
          <div class="wrap">
            ${mark(reader)}${reader && searchBox(reader, frame, asked)}
            ${reader && places(reader, frame, here)}
            ${languages.length > 0 && languageLinks(frame, languages)}
          </div>
        </header>
        <main id="main" class="wrap">${body}</main>
        <footer class="wrap"><p>${frame.deference}</p></footer>
      </body>
    </html>
  `}`
}

const mark = (reader: Reader | null): Html =>
  html`
    <a class="mark" href="${reader ? countyPath(reader.county.id) : '/'}">
      <svg viewBox="0 0 40 40" width="34" height="34" aria-hidden="true">
        <path class="rec-line" d="M4 9h32M8 9v17h24V9"/>
        <path class="fnd-line" d="M10 13v20h26V13"/>
      </svg>
      <span>
        <b>Asfound</b>
        ${reader && html`<span>${reader.county.name}</span>`}
      </span>
    </a>
  `

const searchBox = ({ county }: Reader, frame: Frame, asked: string | undefined): Html =>
  html`
    <form class="search" role="search" action="${searchPath(county.id)}">
      <label class="vh" for="q">${frame.searchFor}</label>
      <input
        id="q" name="q" type="search" value="${asked ?? ''}" placeholder="${frame.searchHint}"
        autocomplete="off" maxlength="200" required
      >
      <button>${frame.find}</button>
    </form>
  `

const places = ({ role, county, bySession }: Reader, frame: Frame, here: string): Html | null => {
  const list = PLACES[role](county.id, frame)
  if (list.length === 0 && !bySession) return null
  const own = html`
    <li><a href="${accountPath}"${current(accountPath === here)}>${frame.account}</a></li>
    <li>
      <form method="post" action="/sign-out"><button class="link">${frame.signOut}</button></form>
    </li>
  `
  return html`
    <nav aria-label="${frame.pages}">
      <ul>
        ${list.map(
          ({ path, name }) => html`
          <li><a href="${path}"${current(path === here)}>${name}</a></li>
        `,
        )}
        ${bySession && own}
      </ul>
    </nav>
  `
}

const languageLinks = (frame: Frame, links: readonly LanguageLink[]): Html =>
  html`
    <nav class="languages" aria-label="${frame.languages}">
      <ul>
        ${links.map(
          ({ language, to }) => html`
            <li>
              <a href="${to}" lang="${language}" hreflang="${language}">${LANGUAGE_NAMES[language]}</a>
            </li>
          `,
        )}
      </ul>
    </nav>
  `

const current = (is: boolean): Html | null => (is ? html` aria-current="page"` : null)
