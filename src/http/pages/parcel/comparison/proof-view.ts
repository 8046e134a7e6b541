import type { Exhibit } from '../../../../reconcile/outcome.ts'
import type { Origin } from '../../../../records/as-built.ts'
import { citeInWords } from '../../../../rules/citation.ts'
import { remeasureWords, settleWhy } from '../../../../words/acts.ts'
import { howTaken, shown, THING_NOUNS } from '../../../../words/things.ts'
import { type Html, html } from '../../html.ts'
import { citations } from '../../parts/citation.ts'
import { type Picture, scanCut } from '../../parts/scan.ts'
import { steps } from '../../parts/steps.ts'
import { originInWords, sourceInWords } from '../../words/sources.ts'
import type { Line, Proof } from './line.ts'

/** What a view needs to say where values come from. */
export type Sources = {
  /** What accounts are called, by id. */
  readonly names: ReadonlyMap<string, string>
  /** The picture of a page; null where the reader may not see it, or there is none. */
  readonly picture: (document: string, page: number) => Picture | null
}

/** Everything a line rests on. Null where there is nothing to open. */
export function proof({ record, found, proof: of }: Line, sources: Sources): Html | null {
  const origins = of ? [] : (record?.origins ?? [])
  const taken = of ? [] : (found?.taken ?? [])
  if (!of && origins.length === 0 && taken.length === 0) return null
  return html`
    <div class="proof">
      ${of && verdictProof(of, sources)}
      ${origins.map((it) => html`<p>${origin(it, sources)}</p>`)}
      ${taken.map((it) => html`<p>Found: ${it}.</p>`)}
    </div>
  `
}

const verdictProof = (
  { question, certainty, exhibits, steps: working, citations: cited, wouldSettle }: Proof,
  sources: Sources,
): Html =>
  html`
    <p>
      <b>${question}</b> ${certainty !== null && html`Confidence: ${certainty}.`}
    </p>
    ${exhibitList(exhibits.filter(distinct), sources)}${steps(working)}
    ${cited.length > 0 && html`<h4>Rules</h4>${citations(cited)}`}
    ${
      wouldSettle &&
      html`
        <p class="settle">
          <b>To settle it:</b> ${remeasureWords(wouldSettle.measurement)} (${settleWhy(wouldSettle)}).
        </p>
      `
    }
  `

const exhibitList = (exhibits: readonly Exhibit[], sources: Sources): Html | null =>
  exhibits.length === 0
    ? null
    : html`
      <ul class="exhibits">
        ${exhibits.map((it) => html`<li class="${it.word}">${exhibit(it, sources)}</li>`)}
      </ul>
    `

/** One reading may serve a check twice; it is shown once. */
const distinct = (it: Exhibit, index: number, all: readonly Exhibit[]): boolean =>
  all.findIndex((other) => sameExhibit(other, it)) === index

const sameExhibit = (a: Exhibit, b: Exhibit): boolean =>
  a.thing === b.thing && a.part?.key === b.part?.key && a.word === b.word && shown(a.used) === shown(b.used)

function exhibit({ thing, part, word, asStated, used, from }: Exhibit, sources: Sources): Html {
  const what = part && part.kind !== 'system' ? `${THING_NOUNS[thing]} of ${part.label}` : THING_NOUNS[thing]
  const asUsed = shown(used)
  if (from.kind === 'computed') return html`<b>${word}</b> ${what}: <b>${asUsed}</b>`
  const taken = asStated === null || asUsed === asStated ? null : html` taken as <b>${asUsed}</b>`
  const head = html`<b>${word}</b> ${what}: ${asStated ?? asUsed}${taken}`
  switch (from.kind) {
    case 'permit':
      return html`${head}<br><span class="soft">${origin(from.origin, sources)}</span>`
    case 'inspection':
      return html`${head}<br><span class="soft">${howTaken(from.how)}</span>`
    case 'rule':
      return html`${head}<br><span class="soft">${from.citations.map(citeInWords).join('; ')}</span>`
  }
}

function origin(it: Origin, { names, picture }: Sources): Html {
  const { source } = it
  const seen = source.kind === 'document' ? picture(source.document, source.page) : null
  const cut = source.kind === 'document' && seen && scanCut(seen, source.box, source.words)
  return html`${originInWords(it)}; ${sourceInWords(source, names)}.${cut}`
}
