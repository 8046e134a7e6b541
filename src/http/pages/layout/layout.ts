import { DEFERENCE } from '../../../brief/cautions.ts'
import type { Role } from '../../../store/database/actor.ts'
import { accountPath } from '../account/addresses.ts'
import { documentsPath } from '../documents/addresses.ts'
import { type Html, html } from '../html.ts'
import { publicPath } from '../public-files.ts'
import {
  changesPath,
  countyPath,
  glancePath,
  importsPath,
  inspectionsPath,
  queuePath,
  rulesPath,
  searchPath,
} from './addresses.ts'
import type { Reader } from './reader.ts'

export type Page = {
  readonly title: string
  readonly body: Html
  /** What was asked for in the search box, kept in it. */
  readonly asked?: string
  /** Modules of public/ that make the page handier; it works without them. */
  readonly modules?: readonly string[]
  /** Shows something that is told once, as a token: no browser keeps it. */
  readonly secret?: boolean
}

type Place = { readonly path: string; readonly name: string }

const PLACES: { readonly [R in Role]: (county: string) => readonly Place[] } = {
  reviewer: (county) => [
    { path: queuePath(county), name: 'Queue' },
    { path: documentsPath(county), name: 'Papers' },
    { path: glancePath(county), name: 'County at a glance' },
    { path: rulesPath(county), name: 'Rules' },
    { path: importsPath(county), name: 'Imports' },
  ],
  firm: (county) => [{ path: inspectionsPath(county), name: 'Inspections' }],
  agent: (county) => [{ path: changesPath(county), name: 'What changed' }],
}

/** A whole document. `here` is the path of the page, to mark its place; `reader` is null while nobody is signed in. */
export function layout(
  reader: Reader | null,
  here: string,
  { title, body, asked, modules = [] }: Page,
): string {
  return `<!doctype html>${html`<html lang="en"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width,initial-scale=1"><meta name="color-scheme" content="light dark"><title>${title} · Asfound</title><link rel="stylesheet" href="${publicPath('sheet.css')}"><link rel="icon" href="${publicPath('mark.svg')}">${modules.map(
    (name) => html`<script type="module" src="${publicPath(name)}"></script>`,
  )}</head><body><a class="skip" href="#main">To the content</a><header class="top"><div class="wrap">${mark(reader)}${reader && searchBox(reader, asked)}${reader && places(reader, here)}</div></header><main id="main" class="wrap">${body}</main><footer class="wrap"><p>${DEFERENCE}</p></footer></body></html>`}`
}

const mark = (reader: Reader | null): Html =>
  html`<a class="mark" href="${reader ? countyPath(reader.county.id) : '/'}"><svg viewBox="0 0 40 40" width="34" height="34" aria-hidden="true"><path class="rec-line" d="M4 9h32M8 9v17h24V9"/><path class="fnd-line" d="M10 13v20h26V13"/></svg><span><b>Asfound</b>${reader && html`<span>${reader.county.name}</span>`}</span></a>`

const searchBox = ({ county }: Reader, asked: string | undefined): Html =>
  html`<form class="search" role="search" action="${searchPath(county.id)}"><label class="vh" for="q">Parcel number, old number or address</label><input id="q" name="q" type="search" value="${asked ?? ''}" placeholder="Parcel number or address" autocomplete="off" maxlength="200" required><button>Find</button></form>`

const places = ({ role, county, bySession }: Reader, here: string): Html | null => {
  const list = PLACES[role](county.id)
  if (list.length === 0 && !bySession) return null
  return html`<nav aria-label="Pages"><ul>${list.map(
    ({ path, name }) => html`<li><a href="${path}"${current(path === here)}>${name}</a></li>`,
  )}${bySession && html`<li><a href="${accountPath}"${current(accountPath === here)}>Account</a></li><li><form method="post" action="/sign-out"><button class="link">Sign out</button></form></li>`}</ul></nav>`
}

const current = (is: boolean): Html | null => (is ? html` aria-current="page"` : null)
