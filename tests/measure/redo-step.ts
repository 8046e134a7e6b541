import { evaluate } from 'mathjs'
import type { Step } from '../../src/measure/step.ts'

const UNITS = /(?<![a-z])(?:cu ft|sq ft|gal per in|min\/in|gpd\/sq ft|gpd|gal|ft|in|days|%)(?![a-z(])/g

/** A step's numbers in the spelling of a general-purpose calculator. */
const spelled = (numbers: string): string =>
  numbers
    .replace(UNITS, '')
    .replace(/(?<=\d),(?=\d{3})/g, '')
    .replaceAll('×', '*')
    .replaceAll('÷', '/')
    .replaceAll('−', '-')
    .replaceAll('√', 'sqrt')
    .replaceAll('²', '^2')
    .replaceAll('³', '^3')
    .replaceAll('π', 'pi')

/** Redoes a step by its printed numbers alone, as a reviewer with a calculator would. */
export const redo = (step: Step): number => Number(evaluate(spelled(step.numbers)))

/** The number a step's result begins with. */
export const resultOf = (step: Step): number =>
  Number.parseFloat(step.result.replace(/(?<=\d),(?=\d{3})/g, ''))
