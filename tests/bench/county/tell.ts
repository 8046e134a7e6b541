/** One line of a benchmark: what was done, how fast, against what, and how that compares with the aim. */
export function tell(line: {
  readonly what: string
  readonly value: string
  readonly limit: string
  readonly ratio: number
  readonly aim: string
  readonly met: boolean
  readonly note?: string
}): void {
  console.log(JSON.stringify({ ...line, ratio: Number(line.ratio.toFixed(2)) }))
}

/** Seconds that some work takes. */
export async function seconds(work: () => Promise<unknown>): Promise<number> {
  const from = performance.now()
  await work()
  return (performance.now() - from) / 1000
}

/** A size from the environment: `ROWS=200000 npm run bench -- import`. */
export const sized = (name: string, standard: number): number => Number(process.env[name] ?? standard)

export const perSecond = (count: number, took: number): string =>
  `${Math.round(count / took).toLocaleString('en-US')}/s`
