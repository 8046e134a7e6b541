import type { ReconciliationRead } from '../../../operations/reconciliation/read-reconciliation.ts'
import { filedAt } from '../../../operations/systems/system-address.ts'
import { discrepancyWords } from '../../../words/follow-up.ts'
import { titleOf } from '../../../words/titles.ts'
import { type Html, html } from '../html.ts'
import { parcelPath } from '../layout/addresses.ts'
import type { Comparison } from '../parcel/comparison/present.ts'
import { comparison as comparisonView } from '../parcel/comparison/view.ts'
import type { Plan } from '../parcel/file.ts'
import { severityTag } from '../parts/severity.ts'
import { sitePlanFigure } from '../parts/site-plan.ts'
import { dayAt } from '../words/dates.ts'

type Options = {
  readonly county: string
  readonly audience: 'reviewer' | 'firm'
  readonly comparison: Comparison
  readonly plan: Plan | null
}

export function reconciliationView(
  { parcel, reconciliation, result }: ReconciliationRead,
  { county, audience, comparison, plan }: Options,
): Html {
  const { madeAt, engine, resultHash } = reconciliation
  const shown = new Set<string>()
  const under = (key: string): Html | null => {
    const it = result.discrepancies.find((raised) => raised.key === key)
    if (!it || shown.has(key)) return null
    shown.add(key)
    return html`
      <div class="difference ${it.severity}">
        <p class="head">${severityTag(it.severity)} <b>${titleOf(it.kind, it.outcome.subject, it.outcome.reason)}</b></p>
        <p>${discrepancyWords(it, audience)}</p>
      </div>
    `
  }
  return html`
    <p class="notice" role="note">
      This is the comparison made on ${dayAt(madeAt)}. It does not
      change. <a href="${parcelPath(county, filedAt(parcel.number, reconciliation))}">The parcel today</a> may be different.
    </p>
    <h1><span class="number">${parcel.number}</span> ${parcel.address}</h1>
    <h2>Record and found</h2>
    ${comparisonView(comparison, { sources: { names: new Map(), picture: () => null }, under })}
    ${plan && html`<section id="plan"><h2>Site plan</h2>${sitePlanFigure(plan.svg, plan.words)}</section>`}
    <p class="soft">Made by ${engine}. Hash of the result: <code>${resultHash}</code></p>
  `
}
