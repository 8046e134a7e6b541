import { z } from 'zod'
import { COMPONENT_KINDS } from '../../../records/component.ts'
import {
  CONDITIONS,
  type FindingsRecord,
  type FoundComponent,
  NOT_REACHED_REASONS,
  OCCUPANCY,
  SEARCH_METHODS,
  SEARCH_OUTCOMES,
} from '../../../records/findings.ts'
import { day } from './basics.ts'
import { measuresOf, presentMeasures } from './measures.ts'
import {
  foundLength,
  foundReference,
  foundTie,
  orNull,
  presentFound,
  presentReference,
} from './quantities.ts'

const length = foundLength.nullable()

const foundComponent = z
  .object({
    key: z
      .string()
      .nullable()
      .meta({ description: 'The as-built’s key; null where it answers to nothing on record' }),
    label: z.string(),
    kind: z.enum(COMPONENT_KINDS),
    outcome: z.enum(SEARCH_OUTCOMES),
    searchedBy: z.array(z.enum(SEARCH_METHODS)),
    searchedWithin: length,
    notReachedBecause: z.enum(NOT_REACHED_REASONS).nullable(),
    ...measuresOf(foundLength, foundTie),
    condition: z.enum(CONDITIONS).nullable(),
    conditionWords: z.string().nullable(),
    levelAboveOutlet: length.meta({ description: 'Above the outlet invert; below it where negative' }),
    scumThickness: length,
    scumBottomBelow: length,
    sludgeDepth: length,
    outletDeviceBelow: length,
    outletDeviceAbove: length,
    lidSecured: z.boolean().nullable(),
    riserToGrade: z.boolean().nullable(),
    fix: z
      .object({ lat: z.number(), lon: z.number(), radiusFt: z.number(), coverage: z.number() })
      .nullable(),
    sondeDepth: length,
    cameraRun: length,
    note: z.string().nullable(),
  })
  .meta({ id: 'FoundComponent' })

export const findingsRecord = z
  .object({
    inspectedOn: day,
    occupancy: z.enum(OCCUPANCY),
    people: z.number().nullable(),
    bedroomsCounted: z.number().nullable(),
    lastPumpedOn: day.nullable(),
    reference: foundReference.nullable(),
    components: z.array(foundComponent),
    notes: z.string().nullable(),
  })
  .meta({ id: 'FindingsRecord', description: 'What one inspection found' })

const present = (taken: FoundComponent['cameraRun']) => orNull(taken, presentFound)

const presentComponent = (found: FoundComponent): z.output<typeof foundComponent> => ({
  key: found.key,
  label: found.label,
  kind: found.kind,
  outcome: found.outcome,
  searchedBy: [...found.searchedBy],
  searchedWithin: present(found.searchedWithin),
  notReachedBecause: found.notReachedBecause,
  ...presentMeasures(found, presentFound),
  condition: found.condition,
  conditionWords: found.conditionWords,
  levelAboveOutlet: present(found.levelAboveOutlet),
  scumThickness: present(found.scumThickness),
  scumBottomBelow: present(found.scumBottomBelow),
  sludgeDepth: present(found.sludgeDepth),
  outletDeviceBelow: present(found.outletDeviceBelow),
  outletDeviceAbove: present(found.outletDeviceAbove),
  lidSecured: found.lidSecured,
  riserToGrade: found.riserToGrade,
  fix: found.fix && { ...found.fix },
  sondeDepth: present(found.sondeDepth),
  cameraRun: present(found.cameraRun),
  note: found.note,
})

export const presentFindingsRecord = (record: FindingsRecord): z.output<typeof findingsRecord> => ({
  inspectedOn: record.inspectedOn,
  occupancy: record.occupancy,
  people: record.people,
  bedroomsCounted: record.bedroomsCounted,
  lastPumpedOn: record.lastPumpedOn,
  reference: orNull(record.reference, (it) => presentReference(it, presentFound)),
  components: record.components.map(presentComponent),
  notes: record.notes,
})
