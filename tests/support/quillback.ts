import type { PlainDate } from '../../src/base/plain-date.ts'
import { must } from '../../src/base/result.ts'
import type { OperationContext } from '../../src/operations/context.ts'
import { addParcel } from '../../src/operations/parcels/add-parcel.ts'
import { type FindingsEntry, findingsEntry } from '../../src/reading/entry/findings.ts'
import { type PermitEntry, permitEntry } from '../../src/reading/entry/permit.ts'
import type { FindingsRecord } from '../../src/records/findings.ts'
import type { PermitRecord } from '../../src/records/permit.ts'
import { serviceIn } from '../../src/store/database/actor.ts'
import type { Parcel } from '../../src/store/parcels.ts'
import { COUNTY } from './people.ts'

export const day = (text: string): PlainDate => text as PlainDate

/** A clock that stands until it is set. */
export function standingClock(start: string) {
  let now = new Date(start)
  const clock = () => now
  return {
    clock,
    set: (to: string) => {
      now = new Date(to)
    },
  }
}

let numbers = 0

/** A parcel of its own for a test, in Quillback County. */
export async function newParcel(context: OperationContext, number?: string): Promise<Parcel> {
  numbers += 1
  return must(
    await addParcel(context, serviceIn(COUNTY), {
      number: number ?? `07-0412-${String(1000 + numbers)}`,
      address: `${numbers} Mill Pond Road`,
      retiredOn: null,
      oldNumbers: [],
    }),
  )
}

/** A permit of 1974: a concrete tank of 1,000 gal, a distribution box and a seepage pit, for three bedrooms. */
export const permit1974: PermitEntry = {
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

/** An inspection that finds the tank at about 1,016 gal and everything where it should be. */
export const inspectionThatAgrees: FindingsEntry = {
  inspectedOn: '2026-10-12',
  occupancy: 'occupied',
  ground: 'dry',
  backup: false,
  bedroomsCounted: 3,
  components: [
    {
      label: 'tank',
      kind: 'tank',
      outcome: 'found',
      opened: 'cover-off',
      levelAboveOutlet: { above: '0 in' },
      shape: 'rectangular',
      length: '7\'-10"',
      width: '4\'-4"',
      liquidDepth: { length: '4\'-0"', method: 'liquid-level-rule' },
      material: 'concrete',
      condition: 'sound',
      lidSecured: true,
    },
    {
      label: 'line',
      kind: 'effluent-line',
      outcome: 'found',
      material: 'vitrified-clay',
      pipeDiameter: { length: '4 in', method: 'rigid-rule' },
    },
    { label: 'pit', kind: 'seepage-pit', outcome: 'found' },
  ],
}

/** The same inspection with a tank of about 718 gal and a line of plastic. */
export const inspectionThatDiffers: FindingsEntry = {
  ...inspectionThatAgrees,
  components: [
    {
      label: 'tank',
      kind: 'tank',
      outcome: 'found',
      opened: 'cover-off',
      levelAboveOutlet: { above: '0 in' },
      shape: 'rectangular',
      length: '6\'-0"',
      width: '4\'-0"',
      liquidDepth: { length: '4\'-0"', method: 'liquid-level-rule' },
      material: 'concrete',
      condition: 'sound',
      lidSecured: true,
    },
    {
      label: 'line',
      kind: 'effluent-line',
      outcome: 'found',
      material: 'pvc',
      pipeDiameter: { length: '4 in', method: 'rigid-rule' },
    },
    { label: 'pit', kind: 'seepage-pit', outcome: 'found' },
  ],
}

/** The repair that explains the line of plastic. */
export const repair1996: PermitEntry = {
  number: '96-041',
  kind: 'repair',
  issuedOn: '1996-04-02',
  approvedOn: '1996-04-19',
  components: [
    {
      tag: 'line',
      kind: 'effluent-line',
      action: 'replace',
      replaces: ['line'],
      material: 'pvc',
      pipeDiameter: '4 in',
    },
  ],
}

export const permitRecord = (entry: PermitEntry): PermitRecord => permitEntry.parse(entry)
export const findingsRecord = (entry: FindingsEntry): FindingsRecord => findingsEntry.parse(entry)
