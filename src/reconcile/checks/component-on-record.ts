import { isAbsorption, isLine } from '../../records/component.ts'
import { aboutFound, firm, seen } from '../about.ts'
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

/** Anything found that answers to nothing in service on record. */
export const componentOnRecord = check({
  id: 'component-on-record',
  question: 'Is what was found on record?',
  raises: ['component-not-on-record'],
  subjects: ({ unrecorded }) =>
    unrecorded.filter(({ outcome, kind }) => outcome === 'found' && !GOES_WITHOUT_SAYING.has(kind)),
  about: aboutFound,
  facts: {
    found: (found, { findings }) =>
      known(
        found,
        seen(found, findings?.id ?? '', found.label, found.note ?? 'found', 'seen by the inspector'),
      ),
  },
  rules: {},
  decide({ found }, _, __, { asBuilt }) {
    const former = asBuilt.components.find(
      ({ key, kind, standing }) =>
        standing !== 'in-service' && (found.key === key || (found.key === null && kind === found.kind)),
    )
    const what =
      isAbsorption(found.kind) || isLine(found.kind) || found.kind === 'tank'
        ? 'part of the working system'
        : 'fitting'
    return {
      verdict: 'differs',
      raises: 'component-not-on-record',
      because: former
        ? `${found.label} was found; the record has ${former.label} as ${former.standing} and nothing else for it`
        : `${found.label}, a ${what}, was found and no approved permit shows it`,
      certainty: firm('seen by the inspector'),
    }
  },
})
