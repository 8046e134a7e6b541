import type { KeptFrom } from '../reconcile/kept-from.ts'

/** What parts keep away from, in the middle of a sentence. */
export const KEPT_FROM_NOUNS: { readonly [K in KeptFrom]: string } = {
  well: 'the well',
  'public-well': 'the public well',
  spring: 'the drinking-water spring',
  building: 'the house',
  'property-line': 'the property line',
  'surface-water': 'surface water',
  stream: 'the stream or ditch',
  wetland: 'the wetland',
  'water-line': 'the water line',
  'suction-line': 'the suction line',
  pool: 'the swimming pool',
  drain: 'the drain',
  cut: 'the cut or bank',
  'other-system': 'the other system',
}

export const isKeptFrom = (facet: string | null): facet is KeptFrom =>
  facet !== null && Object.hasOwn(KEPT_FROM_NOUNS, facet)
