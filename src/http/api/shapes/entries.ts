import { z } from 'zod'
import { findingsEntry } from '../../../reading/entry/findings.ts'
import { permitEntry } from '../../../reading/entry/permit.ts'

/** A permit and an inspection of parcel 07-0412-0031 in Quillback County, as people would write them. */
export const permitExample: z.input<typeof permitEntry> = {
  number: '74-118',
  kind: 'new',
  issuedOn: '5/3/74',
  approvedOn: '1974-06-20',
  bedrooms: 3,
  reference: { a: 'rear left corner', b: 'rear right corner', baseline: '36 ft', wall: 'rear' },
  components: [
    {
      tag: 'tank',
      kind: 'tank',
      shape: 'rectangular',
      capacity: '1,000 gal',
      material: 'concrete',
      tie: { a: '18\'-6"', b: '27\'-0"', sideWords: 'rear of house' },
    },
    { tag: 'line', kind: 'effluent-line', material: 'vitrified-clay', pipeDiameter: '4 in' },
    { tag: 'pit', kind: 'seepage-pit', diameter: '8 ft', effectiveDepth: '6 ft' },
  ],
}

export const findingsExample: z.input<typeof findingsEntry> = {
  inspectedOn: '2026-10-12',
  occupancy: 'occupied',
  ground: 'dry',
  backup: false,
  bedroomsCounted: 3,
  reference: { a: 'rear left corner', b: 'rear right corner', baseline: '36\'-1"' },
  components: [
    {
      label: 'tank',
      kind: 'tank',
      outcome: 'found',
      opened: 'cover-off',
      shape: 'rectangular',
      length: '7\'-10"',
      width: { length: '52 in', method: 'inside-tape' },
      liquidDepth: { length: '4 ft', method: 'liquid-level-rule' },
      material: 'concrete',
      condition: 'sound',
      levelAboveOutlet: { below: '0 in' },
      lidSecured: true,
      tie: { a: '18\'-4"', b: '27\'-2"', sideWords: 'rear of house' },
    },
    {
      label: 'line',
      kind: 'effluent-line',
      outcome: 'found',
      material: 'pvc',
      pipeDiameter: { length: '4 in', method: 'rigid-rule' },
    },
    { label: 'pit', kind: 'seepage-pit', outcome: 'not-reached', notReachedBecause: 'buried' },
  ],
}

export const permitBody = permitEntry.meta({
  id: 'PermitEntry',
  description:
    'A permit as a person types it, with lengths, volumes and dates in any common form. Leave out what the ' +
    'document does not say. List what it says but cannot be read in `unreadable`.',
  examples: [permitExample],
})

export const findingsBody = findingsEntry.meta({
  id: 'FindingsEntry',
  description:
    'An inspection as an inspector types it. Use `not-found` only after a search with a stated method; `not-reached` and ' +
    '`not-looked-for` are no evidence either way. Never go into a tank; keep people off weak covers.',
  examples: [findingsExample],
})

/** A record in an answer as it is typed, to be changed in one place and sent back. */
export const writtenEntry = z.record(z.string(), z.unknown())
