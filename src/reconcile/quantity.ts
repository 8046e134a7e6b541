import { expanded, type Uncertain } from '../measure/uncertain.ts'

export const UNITS = ['gal', 'ft', 'in', 'sq ft', 'gpd', 'min/in', '%', 'years', 'days'] as const
export type Unit = (typeof UNITS)[number]

/** A figure in an answer: value, unit and, where it was measured, its expanded uncertainty (k = 2) in the same unit. */
export type Quantity = { readonly value: number; readonly unit: Unit; readonly U?: number }

export const exactly = (value: number, unit: Unit): Quantity => ({ value, unit })

export const measured = (it: Uncertain, unit: Unit): Quantity => ({ value: it.value, unit, U: expanded(it) })
