import type { DiscrepancyKind } from '../kinds.ts'
import * as capacity from './capacity.ts'
import type { MeaningOf } from './meaning.ts'
import * as parts from './parts.ts'
import * as place from './place.ts'
import * as record from './record.ts'
import * as state from './state.ts'

/** What each kind of discrepancy means. The compiler holds that none is left out. */
export const MEANINGS: { readonly [Kind in DiscrepancyKind]: MeaningOf } = {
  'capacity-below-record': capacity.capacityBelowRecord,
  'capacity-above-record': capacity.capacityAboveRecord,
  'capacity-below-code': capacity.capacityBelowCode,
  'measurement-unclear': capacity.measurementUnclear,
  'absorption-below-code': capacity.absorptionBelowCode,
  'bedrooms-above-design': capacity.bedroomsAboveDesign,
  'component-missing': parts.componentMissing,
  'component-not-on-record': parts.componentNotOnRecord,
  'line-replaced': parts.lineReplaced,
  'line-replaced-without-permit': parts.lineReplacedWithoutPermit,
  'material-differs': parts.materialDiffers,
  'type-differs': parts.typeDiffers,
  'position-differs': place.positionDiffers,
  'setback-short': place.setbackShort,
  'level-high': state.levelHigh,
  'level-low': state.levelLow,
  'solids-high': state.solidsHigh,
  'condition-poor': state.conditionPoor,
  'record-absent': record.recordAbsent,
  'record-unclear': record.recordUnclear,
  'findings-stale': record.findingsStale,
}
