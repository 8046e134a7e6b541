import type { LeftOutReason } from '../catalog/choices.ts'
import { ABSORPTION_KINDS, type ComponentKind } from '../catalog/kinds.ts'
import type { FindingsRecord, FoundComponent } from '../records/findings.ts'
import { type Part, partOnRecord, SYSTEM } from '../records/part.ts'
import type { Protocol, ProtocolItem, Step } from '../rules/values/protocol.ts'
import { aboutSeen } from './about.ts'
import type { Case } from './case.ts'

/** One thing of the protocol with one part: done, or left out and why as far as the inspection says. */
export type ProtocolAnswer = {
  readonly item: ProtocolItem
  readonly part: Part
  readonly end: 'done' | 'left-out'
  readonly why: LeftOutReason | null
}

type Ended = Pick<ProtocolAnswer, 'end' | 'why'>
const done: Ended = { end: 'done', why: null }
const leftOut = (why: LeftOutReason | null | undefined): Ended => ({ end: 'left-out', why: why ?? null })

/**
 * What the protocol requires of this system, part by part, and how each thing ended. A part that was searched for and
 * not found has nothing that could be opened: its absence is a question of its own. One that nobody reached was not
 * opened either, and says why.
 */
export function completeness(given: Case, protocol: Protocol): readonly ProtocolAnswer[] {
  const record = given.findings?.record
  if (!record) return []
  const parts = partsOf(given)
  return protocol
    .filter(({ vacantDays }) => vacantDays === null || stoodEmpty(record, vacantDays))
    .flatMap((item) =>
      item.kinds === null
        ? listed(
            item,
            SYSTEM,
            item.step === 'locate-outflow' ? ofOutflow(parts, record) : ofSystem(item.step, record),
          )
        : parts
            .filter(({ kind }) => item.kinds!.includes(kind))
            .flatMap(({ part, found }) => listed(item, part, ofPart(item.step, found, record))),
    )
}

const listed = (item: ProtocolItem, part: Part, ended: Ended | null): readonly ProtocolAnswer[] =>
  ended ? [{ item, part, ...ended }] : []

/** Who says "vacant" and not since when may mean long enough. */
const stoodEmpty = ({ occupancy, daysVacant }: FindingsRecord, days: number): boolean =>
  daysVacant === null ? occupancy === 'vacant' : daysVacant >= days

type Inspected = {
  readonly kind: ComponentKind
  readonly part: Part
  readonly found: FoundComponent | null
}

/** What is on record in service, and what was found and is not. */
const partsOf = (given: Case): readonly Inspected[] => [
  ...given.pairings.map(({ built, found }) => ({
    kind: found?.kind ?? built.kind,
    part: partOnRecord(built),
    found,
  })),
  ...given.unrecorded
    .filter(({ outcome }) => outcome === 'found')
    .map((found) => ({ kind: found.kind, part: aboutSeen(found, given), found })),
]

function ofSystem(step: Step, record: FindingsRecord): Ended {
  switch (step) {
    case 'walk-ground':
      return record.ground === null ? leftOut(record.notWalkedBecause ?? record.leftOutBecause) : done
    case 'count-bedrooms':
      return record.bedroomsCounted === null ? leftOut(record.leftOutBecause) : done
    case 'ask-occupancy':
      return record.occupancy === 'unknown' ? leftOut(record.leftOutBecause) : done
    case 'ask-backup':
      return record.backup === null ? leftOut(record.leftOutBecause) : done
    case 'ask-pumping':
      return record.lastPumpedOn === null ? leftOut(record.leftOutBecause) : done
    case 'run-water':
      return (record.testVolume ?? record.dye) === null ? leftOut(record.leftOutBecause) : done
    default:
      return done
  }
}

const VESSELS: readonly ComponentKind[] = ['tank', 'treatment-unit', 'pump-chamber', 'media-filter']
const TAKES_THE_FLOW: readonly ComponentKind[] = [
  ...ABSORPTION_KINDS,
  'cesspool',
  'holding-tank',
  'straight-pipe',
]

/** Where a tank's flow goes that no card says and nobody looked for. Null where a part on record is asked by itself. */
function ofOutflow(parts: readonly Inspected[], record: FindingsRecord): Ended | null {
  const takers = parts.filter(({ kind }) => TAKES_THE_FLOW.includes(kind))
  if (takers.some(({ found }) => found?.outcome === 'found')) return done
  if (takers.length > 0 || !parts.some(({ kind }) => VESSELS.includes(kind))) return null
  return (record.discharge ?? 'none') === 'none' ? leftOut(record.leftOutBecause) : done
}

/** Null where it can't be asked of this part. */
function ofPart(step: Step, found: FoundComponent | null, record: FindingsRecord): Ended | null {
  if (found === null || found.outcome === 'not-looked-for') return leftOut(record.leftOutBecause)
  if (found.outcome === 'not-reached') return leftOut(found.notReachedBecause ?? 'other')
  if (found.outcome === 'not-found') return null
  const own = found.notOpenedBecause ?? found.leftOutBecause ?? record.leftOutBecause
  switch (step) {
    case 'open':
      return found.opened === 'cover-off' ? done : leftOut(own)
    case 'read-level':
      return (found.levelAboveOutlet ?? found.levelAboveInlet ?? found.roomBelowTop ?? null) === null
        ? leftOut(own)
        : done
    case 'see-outlet-device':
      return found.outletDeviceBelow !== null || seesOutlet(record) ? done : leftOut(own)
    case 'check-cover':
      return found.lidSecured === null ? leftOut(own) : done
    case 'test-pump':
      return tested(found.pumpWorks, own)
    case 'test-floats':
      return tested(found.floatsWork, own)
    case 'check-wiring':
      return (found.wiringCovered ?? null) === null ? leftOut(own) : done
    case 'test-disinfection':
      return tested(found.disinfects, own)
    case 'ask-contract':
      return (found.serviceContract ?? null) === null ? leftOut(own) : done
    case 'test-alarm':
      return tested(found.alarmWorks, own)
    default:
      return done
  }
}

const tested = (result: FoundComponent['pumpWorks'], why: LeftOutReason | null | undefined): Ended =>
  (result ?? 'not-tested') === 'not-tested' ? leftOut(why) : done

/** The outlet device was looked for by itself. */
const seesOutlet = ({ components }: FindingsRecord): boolean =>
  components.some(
    ({ kind, outcome }) => kind === 'outlet-baffle' && (outcome === 'found' || outcome === 'not-found'),
  )
