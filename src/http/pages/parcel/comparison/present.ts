import type { Outcome } from '../../../../reconcile/outcome.ts'
import { type PairedBy, pair } from '../../../../reconcile/pairing.ts'
import type { Reconciliation } from '../../../../reconcile/reconcile.ts'
import type { AsBuilt, AsBuiltComponent } from '../../../../records/as-built.ts'
import type { FindingsRecord } from '../../../../records/findings.ts'
import { adviceWords } from '../../../../words/advice.ts'
import { dayInWords } from '../../words/dates.ts'
import { componentLines, titleOf, unrecordedLines } from './component-lines.ts'
import { type Line, oneSidedAll, twoSided } from './line.ts'
import { claimSide, said, silent } from './side.ts'

export type Group = {
  readonly title: string
  /** How it came to be there, or how the two were taken to be one. */
  readonly about: string
  readonly lines: readonly Line[]
}

export type Comparison = {
  /** The day of the inspection; null while there was none. */
  readonly inspectedOn: string | null
  readonly groups: readonly Group[]
  /** Once in the ground by the record, and no longer in service. */
  readonly former: readonly { readonly label: string; readonly says: string }[]
  /** What would help, and nobody has to do. */
  readonly advice: readonly string[]
}

/** Record and found, line by line, of one reconciliation and the findings it was made with. */
export function presentComparison(
  { asBuilt, outcomes, discrepancies, advice }: Reconciliation,
  inspection: FindingsRecord | null,
): Comparison {
  const keys = new Map(discrepancies.map(({ outcome, key }) => [questionOf(outcome), key]))
  const keyOf = (outcome: Outcome) => keys.get(questionOf(outcome)) ?? null
  const { pairings, unrecorded, former } = pair(asBuilt, inspection)
  const inspected = inspection !== null
  const about = (...subjects: readonly string[]) => {
    const own = outcomes.filter(({ subject }) => subjects.includes(subject.key))
    return own.filter(({ verdict }) => verdict !== 'does-not-apply')
  }
  return {
    inspectedOn: inspection?.inspectedOn ?? null,
    groups: [
      {
        title: 'The system',
        about: fileInWords(asBuilt),
        lines: systemLines(asBuilt, inspection, about('system'), keyOf),
      },
      ...pairings.map((pairing) => ({
        title: titleOf(pairing.built.label, pairing.built.kind),
        about: beginnings(pairing.built, pairing.by),
        // The cover's question goes by the name the inspector gave.
        lines: componentLines(
          pairing,
          about(pairing.built.key, `found/${pairing.found?.label}`),
          inspected,
          keyOf,
        ),
      })),
      ...unrecorded.map((found) => ({
        title: titleOf(found.label, found.kind),
        about: 'Not on record. The name is the inspector’s.',
        lines: unrecordedLines(found, about(`found/${found.label}`), keyOf),
      })),
      // Out of service, and found in a state that somebody has to act on.
      ...former
        .map(({ built }) => ({ built, own: about(built.key).filter((outcome) => keyOf(outcome) !== null) }))
        .filter(({ own }) => own.length > 0)
        .map(({ built, own }) => ({
          title: titleOf(built.label, built.kind),
          about: 'Out of service by the record.',
          lines: oneSidedAll(own, keyOf),
        })),
    ],
    former: asBuilt.components
      .filter(({ standing }) => standing !== 'in-service')
      .map((it) => formerly(it, asBuilt)),
    advice: advice.map(adviceWords),
  }
}

const questionOf = ({ check, subject, facet, raises }: Outcome): string =>
  [check, raises, subject.key, facet].join(' | ')

function systemLines(
  asBuilt: AsBuilt,
  inspection: FindingsRecord | null,
  outcomes: readonly Outcome[],
  keyOf: (outcome: Outcome) => string | null,
): readonly Line[] {
  const bedrooms = outcomes.find(({ check }) => check === 'bedrooms')
  const counted = inspection?.bedroomsCounted ?? null
  const recorded = [
    ['design flow', asBuilt.designFlowGpd, 'gpd'],
    ['percolation rate', asBuilt.percRateMpi, 'min/in'],
    ['soil', asBuilt.soilTexture, ''],
  ] as const
  return [
    twoSided(
      'bedrooms',
      claimSide(asBuilt.bedrooms),
      counted === null
        ? silent(inspection ? 'not counted' : 'no findings')
        : said(String(counted), ['counted in the house']),
      bedrooms,
      keyOf,
    ),
    ...recorded.flatMap(([what, claim, unit]): readonly Line[] =>
      claim.state === 'silent'
        ? []
        : [
            twoSided(
              what,
              claimSide(claim, (value) => `${value} ${unit}`.trim()),
              silent(''),
              undefined,
              keyOf,
            ),
          ],
    ),
    ...oneSidedAll(
      outcomes.filter((outcome) => outcome !== bedrooms),
      keyOf,
    ),
  ]
}

function fileInWords({ permits, unapproved, on }: AsBuilt): string {
  const approved = permits.map(({ number }) => number).join(', ')
  const open = unapproved.map(({ number }) => number).join(', ')
  const said = approved
    ? `As built on ${dayInWords(on)} by permit ${approved}.`
    : `Nothing was approved by ${dayInWords(on)}.`
  return open ? `${said} Not counted, because they have no final approval: ${open}.` : said
}

const MATCHED: { readonly [B in PairedBy]: string } = {
  named: '',
  label: ' Matched with the one found by its label.',
  position: ' Matched with the one found by its place.',
  'only-of-its-kind': ' Matched with the one found: it is the only one of its kind on both sides.',
}

function beginnings({ events, replaces }: AsBuiltComponent, by: PairedBy | null): string {
  const [{ permit }] = events
  const when = permit.approvedOn ? `, approved ${dayInWords(permit.approvedOn)}` : ''
  const how = replaces.length > 0 ? 'Replaced an older one' : 'On record'
  const paired = by === null ? '' : MATCHED[by]
  return `${how} by permit ${permit.number}${when}.${paired}`
}

function formerly({ label, standing, replacedBy, events }: AsBuiltComponent, { components }: AsBuilt) {
  const heir = components.find(({ key }) => key === replacedBy)
  const by = events.at(-1)!.permit.number
  const says =
    standing === 'abandoned'
      ? `taken out of use by permit ${by}`
      : `replaced by ${heir?.label ?? 'another'} under permit ${by}`
  return { label, says }
}
