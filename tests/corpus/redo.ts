import { create, all as everything } from 'mathjs'
import type { Step } from '../../src/measure/step.ts'

const math = create(everything!)

/** Steps that look something up, or say in words what follows: there is nothing to compute in them. */
const LOOKED_UP = [
  /^the row/,
  /^V = the row$/,
  /^the entry for the tank$/,
  /^the first row/,
  /^the piece for/,
  /^any of$/,
  /^lacking$/,
  /^within the range$/,
]
const isTable = ({ numbers }: Step): boolean => /[A-Z][a-z]+ [A-Za-z]+.*[,(]/.test(numbers)

export type Redone = 'redone' | 'looked-up' | { readonly fault: string }

/** Does again what a printed step says, from what it prints alone. */
export function redo(step: Step): Redone {
  const { formula, numbers, result } = step
  if (LOOKED_UP.some((it) => it.test(formula)) || isTable(step)) return 'looked-up'
  try {
    if (/^[^<>≤≥]* against [^<>≤≥]*$/.test(numbers)) return against(numbers, result)
    if (/[<>≤≥]/.test(numbers)) return holds(numbers)
    if (/^[^=,]+ = [^=,]+(?:, [^=,]+ = [^=,]+)+$/.test(numbers)) return byNames(formula, numbers, result)
    const sums = numbers.split('; ').filter((it) => !/^it holds /.test(it))
    if (sums.some((it) => /^(?:who lives there|lived in)/.test(it))) return 'looked-up'
    if (sums.every((it) => / = /.test(it) || /^at least /.test(it))) return sumsHold(sums)
    const [asked, told] = [numbers.split(/[,;] /), result.split(', ').filter((it) => !it.startsWith('u = '))]
    if (asked.length !== told.length)
      return { fault: `${asked.length} expressions and ${told.length} results` }
    for (const [i, expression] of asked.entries()) {
      const fault = same(plain(expression), told[i]!)
      if (fault) return { fault }
    }
    return 'redone'
  } catch (error) {
    return { fault: `cannot be read: ${String(error)}` }
  }
}

const UNITS = /(?<=[\d)²³]) ?(?:cu ft|sq ft|ft²|ft|gal|gpd|min\/in|in|years|days|min)(?![a-z/])/g

/** A printed expression as a calculator reads it. */
const plain = (text: string): string =>
  text
    .replace(/(?<=\d),(?=\d{3})/g, '')
    .replace(UNITS, '')
    .replace(/([\d.]+) ?%/g, '($1/100)')
    .replace(/^±(?=√)/, '')
    .replaceAll('−', '-')
    .replace(/\bln\(/g, 'log(')
    .replaceAll('×', '*')
    .replaceAll('·', '*')
    .replaceAll('÷', '/')
    .replaceAll('²', '^2')
    .replaceAll('³', '^3')
    .replaceAll('π', 'pi')
    .replace(/√(?=\()/g, 'sqrt')
    .replace(/√([\d.]+)/g, 'sqrt($1)')

const computed = (expression: string, scope: object = {}): number =>
  Number(math.evaluate(expression, { ...scope }))

/** The first number of a printed result, and half of its last place. */
function printed(text: string): { readonly value: number; readonly half: number } {
  const found = /-?\d[\d,]*(?:\.\d+)?/.exec(text.replace(/^[^=]* = /, '').replaceAll('−', '-'))
  if (!found) throw new Error(`no number in "${text}"`)
  const digits = found[0].replaceAll(',', '')
  return { value: Number(digits), half: halfStep(digits) }
}

/** A whole number may be exact and may be one of which the rest was cut: half of it is allowed from a thousand up. */
const halfStep = (digits: string): number => {
  const decimals = digits.split('.')[1]?.length
  return decimals ? 0.5 * 10 ** -decimals : Math.abs(Number(digits)) >= 1000 ? 0.5 : 0
}

/** How far the rounding of what is printed can move an expression: each number in turn by half of its last place. */
function slack(expression: string, scope: object = {}): number {
  const value = computed(expression, scope)
  let total = 0
  for (const { 0: digits, index } of expression.matchAll(/(?<![\w.^])\d+(?:\.\d+)?/g)) {
    const half = halfStep(digits)
    if (half === 0) continue
    const moved = computed(
      `${expression.slice(0, index)}(${Number(digits) + half})${expression.slice(index + digits.length)}`,
      scope,
    )
    total += Math.abs(moved - value)
  }
  return total
}

function same(expression: string, told: string): string | null {
  const value = computed(expression)
  const { value: said, half } = printed(told)
  const allowed = 1.01 * (slack(expression) + half) + 1e-9 * Math.abs(value)
  // A result printed as a whole number below a thousand may be a rounded one.
  const whole = Number.isInteger(said) ? 0.5 : 0
  return Math.abs(value - said) <= allowed + whole
    ? null
    : `${expression} comes to ${value}, and ${told} is printed`
}

function holds(numbers: string): Redone {
  const parts = numbers.split(/\s*([<>≤≥])\s*/)
  for (let i = 0; i + 2 < parts.length; i += 2) {
    const [left, sign, right] = [plain(parts[i]!), parts[i + 1]!, plain(parts[i + 2]!)]
    const [a, b] = [computed(left), computed(right)]
    const off = slack(left) + slack(right) + 1e-9
    const ok =
      sign === '<' ? a < b + off : sign === '≤' ? a <= b + off : sign === '>' ? a > b - off : a >= b - off
    if (!ok) return { fault: `${left} ${sign} ${right} does not hold: ${a} and ${b}` }
  }
  return 'redone'
}

/** `751 × 3 × 60 = 135,180 gal`: the sum stands in the line itself. */
function sumsHold(sums: readonly string[]): Redone {
  for (const sum of sums) {
    const [left, right] = sum.replace('at least ', '').split(' = ')
    const fault = right === undefined ? null : same(plain(left!), right)
    if (fault) return { fault }
  }
  return 'redone'
}

function against(numbers: string, result: string): Redone {
  const [found, limit] = numbers.split(' against ').map((it) => computed(plain(it)))
  const beyond = result === 'not the same place'
  return found! > limit! === beyond ? 'redone' : { fault: `${numbers} and ${result}` }
}

/** `x = 3, y = 4` put into the formula itself. */
function byNames(formula: string, numbers: string, result: string): Redone {
  const scope = Object.fromEntries(
    numbers.split(', ').map((it) => {
      const [name, value] = it.split(' = ')
      return [name!, computed(plain(value!))]
    }),
  )
  const expression = plain(formula.replace(/^[^=]+ = /, '')).replace(/\|(\w+)\|/g, 'abs($1)')
  const degrees = result.includes('°') ? 180 / Math.PI : 1
  const value = computed(expression, scope) * degrees
  const { value: said, half } = printed(result)
  return Math.abs(value - said) <= half + 0.002 * Math.abs(value)
    ? 'redone'
    : { fault: `${expression} comes to ${value}, and ${result} is printed` }
}
