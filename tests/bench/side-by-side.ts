/**
 * Two functions in turn in one process, so that a busy machine slows both: medians of many short rounds, nanoseconds a
 * call, and their ratio.
 */
export function sideBySide(
  ours: () => unknown,
  limit: () => unknown,
  { rounds = 41, roundMs = 20 }: { readonly rounds?: number; readonly roundMs?: number } = {},
): { readonly ours: number; readonly limit: number; readonly ratio: number } {
  const calls = [callsIn(ours, roundMs), callsIn(limit, roundMs)] as const
  const samples: { ours: number; limit: number }[] = []
  for (let round = 0; round < rounds; round++) {
    samples.push({ ours: timed(ours, calls[0]), limit: timed(limit, calls[1]) })
  }
  const median = (pick: (sample: (typeof samples)[number]) => number): number =>
    samples.map(pick).sort((a, b) => a - b)[Math.floor(rounds / 2)]!
  return {
    ours: median((s) => s.ours),
    limit: median((s) => s.limit),
    ratio: median((s) => s.ours / s.limit),
  }
}

/** How many calls fill a round, after a warm-up. */
function callsIn(work: () => unknown, roundMs: number): number {
  for (let i = 0; i < 200; i++) work()
  return Math.max(1, Math.ceil((roundMs * 1e6) / timed(work, 50)))
}

function timed(work: () => unknown, calls: number): number {
  const from = process.hrtime.bigint()
  for (let i = 0; i < calls; i++) work()
  return Number(process.hrtime.bigint() - from) / calls
}
