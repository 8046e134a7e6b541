import { SEEN_BY, type SeenBy } from '../proposal.ts'

/** Of readings of one field in one step of confidence: how many were confirmed as they were read, and how many changed. */
export type Tally = {
  readonly witness: SeenBy
  readonly step: number
  readonly ask: string
  readonly confirmed: number
  readonly changed: number
}

/** Where steps of confidence begin. */
export const STEPS = [0, 0.6, 0.7, 0.8, 0.9, 0.95, 0.985] as const
export const stepOf = (confidence: number): number => STEPS.findLastIndex((from) => confidence >= from)

/** The last part of a pointer: what is asked for, of whatever component. */
export const askAt = (pointer: string): string => pointer.replace(/^\/(?:components\/\d+\/)?/, '')

/** With fewer cases a county's own shares say nothing. */
const LEAST_CASES = 30

type Cases = { readonly confirmed: number; readonly all: number }

/** What a county's confirmations say that a confidence is worth. */
export type OwnShares = (confidence: number, witness: SeenBy, ask: string) => number

/** Where nothing was confirmed yet. */
export const AS_EVERYWHERE: OwnShares = (confidence) => confidence

/**
 * A general confidence held against a county's own confirmations. It stands as long as they bear it out: where it lies
 * outside the interval (Wilson's at 95 %) of what was confirmed of its step, it is moved to the nearer end. A higher step is
 * never worth less than a lower one: steps that stand the wrong way around are taken together. A field that is changed more
 * often than its confidence says is believed no more than the upper end of its own.
 */
export function ownShares(tallies: readonly Tally[]): OwnShares {
  const bounds = new Map(
    SEEN_BY.map((witness) => [witness, boundsOf(tallies.filter((it) => it.witness === witness))]),
  )
  const caps = new Map<string, number>()
  for (const [name, own] of Map.groupBy(tallies, ({ witness, ask }) => `${witness} ${ask}`)) {
    const cases = sumOf(own)
    if (cases.all >= LEAST_CASES) caps.set(name, interval(cases)[1])
  }
  return (confidence, witness, ask) => {
    const [low, high] = bounds.get(witness)![stepOf(confidence)]!
    return Math.min(caps.get(`${witness} ${ask}`) ?? 1, Math.min(high, Math.max(low, confidence)))
  }
}

type Bounds = readonly [low: number, high: number]

function boundsOf(tallies: readonly Tally[]): readonly Bounds[] {
  const steps = STEPS.map((_, step) => sumOf(tallies.filter((it) => it.step === step)))
  // Pooled where a step was confirmed less often than the one below it (adjacent violators; Ayer and others, 1955).
  const pools: { steps: number[]; cases: Cases }[] = []
  steps.forEach((cases, step) => {
    let pool = { steps: [step], cases }
    for (let below = pools.at(-1); below && share(below.cases) > share(pool.cases); below = pools.at(-1)) {
      pools.pop()
      pool = { steps: [...below.steps, ...pool.steps], cases: sum(below.cases, pool.cases) }
    }
    pools.push(pool)
  })
  const known = pools.flatMap(({ steps: own, cases }) =>
    own.map((): Bounds => (cases.all >= LEAST_CASES ? interval(cases) : [0, 1])),
  )
  return known.map(
    ([, high], step): Bounds => [
      Math.max(...known.slice(0, step + 1).map(([low]) => low)),
      Math.min(high, ...known.slice(step).map(([, above]) => above)),
    ],
  )
}

/** Of steps without a case nothing is known: they stand where their neighbors leave them. */
const share = ({ confirmed, all }: Cases): number => (all === 0 ? Number.NaN : confirmed / all)
const sum = (a: Cases, b: Cases): Cases => ({ confirmed: a.confirmed + b.confirmed, all: a.all + b.all })
const sumOf = (tallies: readonly Tally[]): Cases =>
  tallies.reduce<Cases>(
    (cases, { confirmed, changed }) => sum(cases, { confirmed, all: confirmed + changed }),
    { confirmed: 0, all: 0 },
  )

/** Wilson, 1927. */
function interval({ confirmed, all }: Cases): Bounds {
  const z = 1.96
  const p = confirmed / all
  const middle = p + (z * z) / (2 * all)
  const spread = z * Math.sqrt((p * (1 - p)) / all + (z * z) / (4 * all * all))
  const scale = 1 + (z * z) / all
  return [(middle - spread) / scale, (middle + spread) / scale]
}
