import type { AsBuiltComponent } from '../../records/as-built.ts'
import { type ComponentKind, isAbsorption, isLine } from '../../records/component.ts'
import type { FoundComponent } from '../../records/findings.ts'
import { isOrAre, itOrThem, the, wasOrWere } from '../../records/naming.ts'
import { aboutSeen, firm, seen } from '../about.ts'
import { check } from '../check.ts'
import { known } from '../fact.ts'

/** A tank comes with its baffles and openings; a record that does not list them is not contradicted by them. */
const GOES_WITHOUT_SAYING = new Set([
  'inlet-baffle',
  'outlet-baffle',
  'access-opening',
  'riser',
  'observation-port',
])

type Question = { readonly found: FoundComponent; readonly built: AsBuiltComponent | null }

/** Anything found that answers to nothing in service on record; what a paper took out of service may well be there still. */
export const componentOnRecord = check({
  id: 'component-on-record',
  question: 'Is what was found on record?',
  raises: ['component-not-on-record'],
  subjects: ({ unrecorded, former }): readonly Question[] =>
    [...former, ...unrecorded.map((found) => ({ found, built: null }))].filter(
      ({ found }) => found.outcome === 'found' && !GOES_WITHOUT_SAYING.has(found.kind),
    ),
  about: ({ found }, given) => aboutSeen(found, given),
  facts: {
    found: ({ found }, { findings }) =>
      known(
        found,
        seen(found, findings?.id ?? '', found.label, found.note ?? 'found', 'seen by the inspector'),
      ),
  },
  rules: {},
  decide({ found }, _, { built }, { asBuilt }) {
    if (built) {
      return {
        verdict: 'agrees',
        raises: null,
        because: `${the(found.label)} ${isOrAre(found.label)} still there: ${outOfService(built)}`,
        certainty: firm('seen by the inspector'),
      }
    }
    const alike = asBuilt.components.find(
      ({ kind, standing }) => standing !== 'in-service' && kind === found.kind && found.key === null,
    )
    return {
      verdict: 'differs',
      raises: 'component-not-on-record',
      because: alike
        ? `${the(found.label)} ${wasOrWere(found.label)} found and nothing in service on record answers to it; ${outOfService(alike)}`
        : `${the(found.label)}${apposition(found)} ${wasOrWere(found.label)} found and no approved permit shows ${itOrThem(found.label)}`,
      certainty: firm('seen by the inspector'),
    }
  },
})

/** A tank or a well that is called so needs no explaining. */
const apposition = ({ kind, label }: FoundComponent): string =>
  (kind === 'tank' || kind === 'well') && label.toLowerCase().includes(kind) ? '' : `, ${whatFor(kind)},`

/** What it is to the system, in the trade's words: a reader may not know it by the name it was given. */
function whatFor(kind: ComponentKind): string {
  if (isAbsorption(kind)) return 'which gives effluent to the soil'
  if (isLine(kind)) return 'which carries sewage or effluent'
  switch (kind) {
    case 'cesspool':
      return 'which receives raw sewage and gives it to the soil'
    case 'tank':
      return 'which receives sewage'
    case 'pump-chamber':
      return 'which pumps effluent on'
    case 'distribution-box':
      return 'which divides the flow'
    case 'well':
      return 'which gives water'
    default:
      return 'a fitting'
  }
}

function outOfService({ label, standing, events }: AsBuiltComponent): string {
  const last = events.findLast(({ what }) => what === standing)
  return `the record has ${the(label)} as ${standing}${last ? ` by permit ${last.permit.number}` : ''}`
}
