import type { Method } from '../measure/methods.ts'

/** How a length can be taken: the usual way first, which is assumed until somebody says another. */
export type Ways = readonly [Method, ...Method[]]

export const INSIDE = [
  'inside-tape',
  'outside-tape',
  'laser-meter',
  'sounding-rod',
  'probe',
  'by-eye',
] as const satisfies Ways
export const DEPTH = [
  'sounding-rod',
  'liquid-level-rule',
  'inside-tape',
  'rigid-rule',
  'by-eye',
] as const satisfies Ways
export const INVERT = [
  'liquid-level-rule',
  'rigid-rule',
  'sounding-rod',
  'inside-tape',
  'by-eye',
] as const satisfies Ways
export const GROUND = ['ground-tape', 'laser-meter', 'wheel', 'pacing', 'by-eye'] as const satisfies Ways
export const COVER = ['probe', 'rigid-rule', 'inside-tape', 'by-eye'] as const satisfies Ways
export const RULE = ['rigid-rule', 'inside-tape', 'by-eye'] as const satisfies Ways
export const PIT = [
  'inside-tape',
  'laser-meter',
  'sounding-rod',
  'probe',
  'ground-tape',
  'by-eye',
] as const satisfies Ways
export const CAMERA = ['wheel', 'ground-tape', 'by-eye'] as const satisfies Ways
