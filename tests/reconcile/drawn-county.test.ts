import { expect, test } from 'vitest'
import { statusOf } from '../../src/reconcile/status.ts'
import { asked } from './asked.ts'
import { type Drawn, drawSystem, FAILURES } from './drawn-county.ts'

/** `DRAWN_SYSTEMS=10000 npm test -- tests/reconcile/drawn-county.test.ts` for the figures of docs/discrepancies.md. */
const SYSTEMS = Number(process.env.DRAWN_SYSTEMS ?? 1500)
/** Ten thousand take half a minute on an idle machine. */
const LONGEST = 30_000 + SYSTEMS * 20
const FIRST = Number(process.env.DRAWN_SEED ?? 1)

const statusFor = ({ permit, findings: { components, ...rest } }: Drawn) => {
  const { discrepancies, findings } = asked([permit], components ?? [], rest)
  return statusOf({
    hasApprovedPermit: true,
    hasInspection: findings !== null,
    decidedBefore: false,
    standing: discrepancies.map((discrepancy) => ({ discrepancy, decided: null })),
  })
}

test(
  'of systems whose truth was drawn first: no failure that an inspection saw is missed, and hardly a false alarm',
  () => {
    const drawn = Array.from({ length: SYSTEMS }, (_, at) => drawSystem(FIRST + at))
    const said = drawn.map((system) => ({ ...system, status: statusFor(system) }))
    const missed = said.filter(({ seen, status }) => seen && status.word !== 'action-needed')
    const calm = said.filter(
      ({ failure, seen, status }) =>
        failure !== null && !seen && (status.word === 'matches' || status.word === 'resolved'),
    )
    const sound = said.filter(({ failure }) => failure === null)
    const alarms = sound.filter(({ status }) => status.word === 'action-needed')
    if (SYSTEMS > 1500)
      console.log({
        systems: SYSTEMS,
        seen: said.filter(({ seen }) => seen).length,
        missed: missed.map(({ failure }) => failure),
        notSeenAndCalm: calm
          .map(({ failure }) => failure)
          .sort()
          .join(' '),
        sound: sound.length,
        falseActions: alarms.map(({ status }) => status.items[0]?.kind).join(' '),
        words: Map.groupBy(said, ({ status }) => status.word)
          .entries()
          .map(([word, all]) => `${word} ${all.length}`)
          .toArray(),
      })
    expect(new Set(said.flatMap(({ failure, seen }) => (seen ? [failure!] : [])))).toEqual(new Set(FAILURES))
    expect(missed.map(({ failure, findings }) => ({ failure, findings }))).toEqual([])
    expect(alarms.length / sound.length).toBeLessThan(0.01)
  },
  LONGEST,
)
