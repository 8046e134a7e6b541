/** What a difference can be, in nouns of the trade. `docs/discrepancies.md` has a paragraph on each. */
export const DISCREPANCY_KINDS = [
  'capacity-below-record',
  'capacity-above-record',
  'capacity-below-code',
  'construction-below-code',
  'type-not-accepted',
  'component-missing',
  'component-not-on-record',
  'line-replaced',
  'line-replaced-without-permit',
  'material-differs',
  'type-differs',
  'position-differs',
  'setback-short',
  'lender-distance-short',
  'bedrooms-above-design',
  'load-above-design',
  'field-burdened',
  'absorption-below-code',
  'absorption-differs',
  'level-high',
  'level-low',
  'solids-high',
  'condition-poor',
  'record-absent',
  'record-unclear',
  'system-not-on-record',
  'failure-sign',
  'equipment-failed',
  'contract-lapsed',
  'inspection-incomplete',
  'measurement-unclear',
  'findings-stale',
] as const
export type DiscrepancyKind = (typeof DISCREPANCY_KINDS)[number]

/** About consequence, not size. `action`: before the transfer or further use; `review`: a person must look; `note`. */
export const SEVERITIES = ['action', 'review', 'note'] as const
export type Severity = (typeof SEVERITIES)[number]
