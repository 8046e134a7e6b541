import type { NotReachedReason, SearchMethod, SearchOutcome } from '../../../../records/findings.ts'

export const OUTCOME_WORDS: { readonly [O in SearchOutcome]: string } = {
  found: 'Found',
  'not-found': 'Searched for, not found',
  'not-reached': 'Not reached',
  'not-looked-for': 'Not looked for',
}

export const SEARCH_WORDS: { readonly [M in SearchMethod]: string } = {
  excavation: 'Dug it open',
  probe: 'Probed for it',
  camera: 'Camera in the line',
  sonde: 'Sonde and receiver',
  'metal-detector': 'Metal detector',
  'ground-radar': 'Ground radar',
  'seen-through-opening': 'Looked in through an opening',
}

export const NOT_REACHED_WORDS: { readonly [R in NotReachedReason]: string } = {
  buried: 'Buried',
  'paved-over': 'Paved or built over',
  refused: 'Refused by the owner or occupant',
  'no-time': 'No time',
  unsafe: 'Not safe to reach',
  other: 'Another reason (write it below)',
}
