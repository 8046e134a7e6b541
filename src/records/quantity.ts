/** A length as someone wrote it: in feet, with half of the last place written and the writing itself. */
export type StatedLength = { readonly ft: number; readonly halfStepFt: number; readonly asWritten: string }

/** A volume as someone wrote it, in US gallons. */
export type StatedVolume = { readonly gal: number; readonly halfStepGal: number; readonly asWritten: string }

/** A length found in the field: the reading, how it was taken and with which instrument (one tape is one cause). */
export type FoundLength = StatedLength & { readonly method: Method; readonly instrument: string }

/**
 * How a length was taken. `inside-tape`: between inside faces; `outside-tape`: over the outside, walls to come off;
 * `probe`: steel rod through soil; `sounding-rod`: rod or weighted tape through liquid; `by-eye`: an estimate.
 */
export const METHODS = [
  'inside-tape',
  'outside-tape',
  'long-tape',
  'probe',
  'sounding-rod',
  'wheel',
  'camera-counter',
  'by-eye',
] as const
export type Method = (typeof METHODS)[number]
