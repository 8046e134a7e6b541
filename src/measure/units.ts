/** 1 US gal = 231 cu in exactly (NIST Handbook 44, Appendix C, General Tables of Units of Measurement). */
export const CU_IN_PER_GAL = 231

/** Inches in a foot. */
export const IN_PER_FT = 12

/** 1 cu ft = 1728/231 US gal = 7.480519… exactly; Appendix C prints 7.481. */
export const GAL_PER_CU_FT = 1728 / CU_IN_PER_GAL

/** The trade's round figure, 0.26 % high (common practice): shown as a check value beside an answer, never used for it. */
export const TRADE_GAL_PER_CU_FT = 7.5

/** 1 ft = 0.3048 m exactly (international foot). */
export const M_PER_FT = 0.3048

/** 1 US gal = 3.785411784 L exactly: 231 cu in of 25.4 mm. */
export const L_PER_GAL = (CU_IN_PER_GAL * 2.54 ** 3) / 1000

/** 1 imperial gal = 4.54609 L exactly. */
export const L_PER_IMPERIAL_GAL = 4.54609

/** 1 acre = 43,560 sq ft. */
export const SQ_FT_PER_ACRE = 43_560

export const MIN_PER_DAY = 1440

export const inchesToFt = (inches: number): number => inches / IN_PER_FT
export const ftToInches = (ft: number): number => ft * IN_PER_FT
export const cuFtToGal = (cuFt: number): number => cuFt * GAL_PER_CU_FT
export const galToCuFt = (gal: number): number => gal / GAL_PER_CU_FT
