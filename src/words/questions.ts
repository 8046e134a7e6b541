import { OCCASIONS, type Occasion } from '../reconcile/asked-of-code.ts'
import { isKeptFrom, KEPT_FROM_NOUNS } from './kept-from.ts'

/** The question that a check asks. A test holds that every check has one. */
export const QUESTIONS: Readonly<Record<string, string>> = {
  'record-presence': 'Is there an approved permit on file?',
  'record-clarity': 'Is the file clear and consistent?',
  'other-systems': 'Is each system, and each lot that it serves or lies on, on record?',
  'inspection-completeness': 'Did the inspection cover what is required?',
  'required-device': 'Is a baffle that every tank needs there?',
  'failure-signs': 'Is the system free of signs of failure?',
  equipment: 'Do the pump, the blower, the floats, the alarm and the wiring work?',
  'service-contract': 'Is there a service contract for the treatment unit?',
  'capacity-against-record': 'Does the tank hold what the record says?',
  'capacity-against-code': 'Is the tank as large as the code requires?',
  'stated-area': 'Is the absorption area the one that the record states?',
  'absorption-against-code': 'Is the absorption area as large as the code requires?',
  'absorption-by-soil': 'Is the absorption area as large as the code requires for its soil?',
  'tank-construction': 'Is the tank built as the code requires?',
  compartments: 'Does the tank have the compartments that the code requires?',
  'accepted-type': 'Is a cesspool, a privy or a masonry tank accepted?',
  'required-filter': 'Is an effluent filter there where the code requires one?',
  'pumping-interval': 'Is it time to pump, by the years since the last pumping?',
  'capacity-by-flow': 'Is the tank as large as the code requires for the stated flow?',
  bedrooms: 'Does the house have more bedrooms than the system was designed for?',
  loads: 'Does more run into the system than it was designed for?',
  'flow-test': 'Did the system take the water of the test?',
  'room-left': 'Is there room in the pit for the next half day?',
  'privy-room': 'Is there room left in the privy?',
  'field-burdens': 'Is the drainfield free of vehicles, buildings, roots and drains?',
  'component-presence': 'Is what the record shows in the ground?',
  'component-on-record': 'Is what was found on record?',
  'line-material': 'Is the line the one on record?',
  'line-stretches': 'Is each stretch of the line the one on record?',
  'line-defects': 'Is the line whole where the camera saw it?',
  material: 'Is it made of what the record says?',
  'type-of-component': 'Is it the type the record says?',
  position: 'Is it where the ties put it?',
  'setback-today': 'Would it be far enough from the well by today’s rule?',
  'building-setback': 'Is it far enough from the house?',
  setback: 'Is it far enough from the well?',
  'kept-distances': 'Is it far enough from what it has to keep away from?',
  'kept-distances-today': 'Would it be far enough from what it has to keep away from by today’s rule?',
  'lender-distances': 'Is it far enough from the rest for a lender’s program?',
  'stated-distance': 'Is it as far away as the record says?',
  'lender-setback': 'Is it far enough from the well for a lender’s program?',
  'well-since': 'Does a well drilled since keep its distance?',
  level: 'Is the liquid where it should be?',
  solids: 'Do scum and sludge call for pumping?',
  condition: 'Is it sound?',
  lid: 'Is the cover secured (locked, bolted or child-resistant)?',
  'left-open': 'Was what is out of use closed, so that nobody can fall in?',
  top: 'Does the top hold?',
  'metal-tank-age': 'Is the metal tank within the age the rule allows?',
  'findings-age': 'Does the inspection still describe what is there?',
}

const OCCASION_WORDS: { readonly [O in Occasion]: string } = {
  'when permitted': 'when permitted',
  today: 'today',
}

/** The same, of one thing that a part keeps away from. */
const FROM: { readonly [check: string]: (thing: string) => string } = {
  'kept-distances': (thing) => `Is it far enough from ${thing}?`,
  'kept-distances-today': (thing) => `Would it be far enough from ${thing} by today’s rule?`,
  'lender-distances': (thing) => `Is it far enough from ${thing} for a lender’s program?`,
  'stated-distance': (thing) => `Is it as far from ${thing} as the record says?`,
}

/** With the day it is asked for, where the same is asked of two. */
export function questionWords(check: string, facet: string | null = null): string {
  const question =
    (isKeptFrom(facet) ? FROM[check]?.(KEPT_FROM_NOUNS[facet]) : null) ?? QUESTIONS[check] ?? check
  const occasion = OCCASIONS.find((it) => it === facet)
  return occasion ? `${question} (${OCCASION_WORDS[occasion]})` : question
}
