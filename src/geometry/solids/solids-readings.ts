import { minus, over, plus, scale, type Uncertain } from '../../measure/uncertain.ts'

/**
 * What an inspection reads of the solids, all in ft, all against one level: the liquid standing at the outlet invert. What
 * was not read is left out, and nothing is assumed for it. Any two of the scum's thickness, top and bottom give the
 * third.
 */
export type SolidsReadings = {
  /** Floor to the liquid level. */
  readonly liquidDepth?: Uncertain
  readonly sludgeThickness?: Uncertain
  readonly scumThickness?: Uncertain
  /** How far the scum stands out of the liquid, and how far it hangs into it. */
  readonly scumTopAboveLiquid?: Uncertain
  readonly scumBottomBelowLiquid?: Uncertain
  /** The outlet device (baffle or tee): its lower end below the liquid, its upper end above. */
  readonly outletBottomBelowLiquid?: Uncertain
  readonly outletTopAboveLiquid?: Uncertain
}

export const READING_NAMES: { readonly [K in keyof SolidsReadings]-?: string } = {
  liquidDepth: 'the liquid depth',
  sludgeThickness: 'the sludge thickness',
  scumThickness: 'the scum thickness',
  scumTopAboveLiquid: 'how far the scum stands above the liquid',
  scumBottomBelowLiquid: 'how far the scum reaches below the liquid',
  outletBottomBelowLiquid: 'how far the outlet device reaches below the liquid',
  outletTopAboveLiquid: 'how far the outlet device stands above the liquid',
}

/** The scum's thickness, top and bottom, each read or from the two that were. */
export function withScum(readings: SolidsReadings): SolidsReadings {
  const { scumThickness: whole, scumTopAboveLiquid: top, scumBottomBelowLiquid: bottom } = readings
  if (!whole && top && bottom) return { ...readings, scumThickness: plus(top, bottom) }
  if (whole && !top && bottom) return { ...readings, scumTopAboveLiquid: minus(whole, bottom) }
  if (whole && top && !bottom) return { ...readings, scumBottomBelowLiquid: minus(whole, top) }
  return readings
}

/** A derived quantity by the readings it needs: from them, when all are there. */
export type Derivation = {
  readonly says: string
  readonly needs: readonly (keyof SolidsReadings)[]
  readonly formula: string
  readonly of: (readings: readonly Uncertain[]) => Uncertain
  readonly unit: 'in' | '%'
}

const difference = ([from, ...less]: readonly Uncertain[]): Uncertain => scale(less.reduce(minus, from!), 12)

/** The distances that rules limit, inches, from the solids to a point of the outlet device; negative once past it. */
export const SOLIDS_DISTANCES = {
  'sludge-top-to-outlet-bottom': {
    says: 'Top of the sludge to the lower end of the outlet device',
    needs: ['liquidDepth', 'sludgeThickness', 'outletBottomBelowLiquid'],
    formula: 'liquid depth − sludge − outlet below liquid',
    of: difference,
    unit: 'in',
  },
  'scum-bottom-to-outlet-bottom': {
    says: 'Bottom of the scum to the lower end of the outlet device',
    needs: ['outletBottomBelowLiquid', 'scumBottomBelowLiquid'],
    formula: 'outlet below liquid − scum below liquid',
    of: difference,
    unit: 'in',
  },
  'scum-top-to-outlet-top': {
    says: 'Top of the scum to the upper end of the outlet device',
    needs: ['outletTopAboveLiquid', 'scumTopAboveLiquid'],
    formula: 'outlet above liquid − scum above liquid',
    of: difference,
    unit: 'in',
  },
} as const satisfies Record<string, Derivation>

export type SolidsDistance = keyof typeof SOLIDS_DISTANCES

/** Share of the liquid depth that scum and sludge take up together. */
export const SOLIDS_SHARE: Derivation = {
  says: 'Share of the liquid depth that is scum and sludge',
  needs: ['scumThickness', 'sludgeThickness', 'liquidDepth'],
  formula: '(scum + sludge) ÷ liquid depth × 100',
  of: ([scum, sludge, depth]) => scale(over(plus(scum!, sludge!), depth!), 100),
  unit: '%',
}
