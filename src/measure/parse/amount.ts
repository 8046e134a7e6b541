import { ok, type Result } from '../../base/result.ts'
import { type ParseIssue, refuse } from './issue.ts'
import type { NumberToken, Token } from './tokens.ts'

/** A number or a whole number with a fraction, the half of its last place, and the place of the first token after it. */
export type Amount = {
  readonly value: number
  readonly halfStep: number
  readonly text: string
  readonly next: number
}

const isMark = (token: Token | undefined, text: string): boolean =>
  token?.kind === 'mark' && token.text === text
const numberAt = (list: readonly Token[], at: number): NumberToken | undefined => {
  const token = list[at]
  return token?.kind === 'number' ? token : undefined
}

/** `6`, `6.5`, `1/2`, `6 1/2`, `6-1/2` at `at`; undefined when no number stands there. */
export function amountAt(list: readonly Token[], at: number): Result<Amount, ParseIssue> | undefined {
  const first = numberAt(list, at)
  if (!first) return undefined
  if (isMark(list[at + 1], '/') && numberAt(list, at + 2)) {
    const part = fraction(first, numberAt(list, at + 2)!)
    return part.ok ? ok({ ...part.value, next: at + 3 }) : part
  }
  const top = at + (isMark(list[at + 1], '-') ? 2 : 1)
  const [over, under] = [numberAt(list, top), numberAt(list, top + 2)]
  if (over && under && isMark(list[top + 1], '/')) {
    if (first.decimals > 0)
      return refuse(
        `"${first.text} ${over.text}/${under.text}" has decimals and a fraction: write one or the other`,
      )
    const part = fraction(over, under)
    if (!part.ok) return part
    const text = `${first.text} ${part.value.text}`
    return ok({ value: first.value + part.value.value, halfStep: part.value.halfStep, text, next: top + 3 })
  }
  return ok({ value: first.value, halfStep: first.halfStep, text: first.text, next: at + 1 })
}

function fraction(over: NumberToken, under: NumberToken): Result<Omit<Amount, 'next'>, ParseIssue> {
  const text = `${over.text}/${under.text}`
  if (over.decimals > 0 || under.decimals > 0 || under.value < 2 || under.value > 100)
    return refuse(`"${text}" is not a fraction of a rule or tape: write halves, quarters, … or decimals`)
  if (over.value >= under.value)
    return refuse(`"${text}" is one or more: write the whole part first, as in 1 1/2`)
  return ok({ value: over.value / under.value, halfStep: 0.5 / under.value, text })
}
