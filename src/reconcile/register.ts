import type { Check } from './check.ts'
import { absorptionAgainstCode } from './checks/absorption-against-code.ts'
import { absorptionBySoil } from './checks/absorption-by-soil.ts'
import { acceptedType } from './checks/accepted-type.ts'
import { bedrooms } from './checks/bedrooms.ts'
import { capacityAgainstCode, capacityByFlow } from './checks/capacity-against-code.ts'
import { capacityAgainstRecord } from './checks/capacity-against-record.ts'
import { compartments } from './checks/compartments.ts'
import { componentOnRecord } from './checks/component-on-record.ts'
import { componentPresence } from './checks/component-presence.ts'
import { condition } from './checks/condition.ts'
import { equipment } from './checks/equipment.ts'
import { failureSigns } from './checks/failure-signs.ts'
import { fieldBurdens } from './checks/field-burdens.ts'
import { findingsAge } from './checks/findings-age.ts'
import { flowTest } from './checks/flow-test.ts'
import { inspectionCompleteness } from './checks/inspection-completeness.ts'
import { keptDistances, keptDistancesToday, lenderDistances } from './checks/kept-distances.ts'
import { level } from './checks/level.ts'
import { leftOpen, lid } from './checks/lid.ts'
import { lineDefects } from './checks/line-defects.ts'
import { lineMaterial } from './checks/line-material.ts'
import { lineStretches } from './checks/line-stretches.ts'
import { loads } from './checks/loads.ts'
import { material } from './checks/material.ts'
import { metalTankAge } from './checks/metal-tank-age.ts'
import { otherSystems } from './checks/other-systems.ts'
import { position } from './checks/position.ts'
import { privyRoom } from './checks/privy-room.ts'
import { pumpingInterval } from './checks/pumping-interval.ts'
import { recordClarity } from './checks/record-clarity.ts'
import { recordPresence } from './checks/record-presence.ts'
import { requiredDevice } from './checks/required-device.ts'
import { requiredFilter } from './checks/required-filter.ts'
import { roomLeft } from './checks/room-left.ts'
import { serviceContract } from './checks/service-contract.ts'
import { buildingSetback, lenderSetback, setback, setbackToday, wellSince } from './checks/setback.ts'
import { solids } from './checks/solids.ts'
import { statedArea } from './checks/stated-area.ts'
import { statedDistance } from './checks/stated-distance.ts'
import { tankConstruction } from './checks/tank-construction.ts'
import { top } from './checks/top.ts'
import { typeOfComponent } from './checks/type-of-component.ts'

/** Every check, in the order in which a report tells them: the file, the tank, the parts, the place, the state. */
export const CHECKS: readonly Check[] = [
  recordPresence,
  recordClarity,
  otherSystems,
  inspectionCompleteness,
  capacityAgainstRecord,
  capacityAgainstCode,
  capacityByFlow,
  statedArea,
  absorptionAgainstCode,
  absorptionBySoil,
  tankConstruction,
  compartments,
  acceptedType,
  bedrooms,
  loads,
  componentPresence,
  requiredDevice,
  requiredFilter,
  componentOnRecord,
  lineMaterial,
  lineStretches,
  material,
  typeOfComponent,
  position,
  statedDistance,
  setback,
  setbackToday,
  buildingSetback,
  wellSince,
  keptDistances,
  keptDistancesToday,
  lenderSetback,
  lenderDistances,
  failureSigns,
  level,
  flowTest,
  roomLeft,
  privyRoom,
  fieldBurdens,
  equipment,
  serviceContract,
  solids,
  pumpingInterval,
  condition,
  lineDefects,
  lid,
  leftOpen,
  top,
  metalTankAge,
  findingsAge,
]
