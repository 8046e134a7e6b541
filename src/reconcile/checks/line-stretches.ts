import { statedValue } from '../../records/claim.ts'
import type { FoundComponent } from '../../records/findings.ts'
import { partOnRecord } from '../../records/part.ts'
import { firm, likely, type SeenPairing, seen } from '../about.ts'
import { check } from '../check.ts'
import { claimFact, type Fact, known, lacking } from '../fact.ts'
import { changes, gaps, type LineTold, laidOut } from '../facts/stretches.ts'
import { showChoice, showStretches } from '../show.ts'

/** A gap of a foot between two stretches is a joint told twice; beyond it somebody has to say what lies there. */
const TOLD_FT = 1

/** Whether either side tells the line in stretches: then it is asked stretch by stretch, and not as one. */
export const isTold = ({ built, found }: SeenPairing): boolean =>
  statedValue(built.measures.segments) !== null || (found.segments ?? null) !== null

/**
 * One line of two materials is one line. Each stretch found is held against what lies there on record: pipe of another
 * material or size was laid since, and it says from where to where. A repair permit that laid it is on record already.
 */
export const lineStretches = check({
  id: 'line-stretches',
  raises: ['line-replaced-without-permit'],
  subjects: ({ pairings }): readonly SeenPairing[] =>
    pairings.filter((it): it is SeenPairing => it.found?.outcome === 'found').filter(isTold),
  about: ({ built }) => partOnRecord(built),
  facts: {
    recorded: (pairing) => recordedFact(pairing),
    found: (pairing, { findings }) => foundFact(pairing, findings?.id ?? ''),
  },
  rules: {},
  decide({ recorded, found }, _, { built, found: line }) {
    const [was, is] = [laidOut(recorded), laidOut(found)]
    const changed = changes(was, is)
    const seenTo = found.lengthFt ?? recorded.lengthFt
    const start = statedValue(built.measures.measuredFrom) ?? null
    const reason = {
      is: 'stretches',
      start: line.measuredFrom ?? start,
      changed,
      found: is,
      unseen: gaps(is, seenTo).filter(({ from, to }) => to !== null && to - from > TOLD_FT),
    } as const
    // Where the record does not say from which end it measures, it is taken to be the inspection's.
    const sure = !isAlike(recorded) && (start === null || !line.measuredFrom) ? likely : firm
    return changed.length > 0
      ? {
          verdict: 'differs',
          raises: 'line-replaced-without-permit',
          reason,
          certainty: sure('replaced-not-changed'),
        }
      : { verdict: 'agrees', raises: null, reason, certainty: sure('seen') }
  },
})

const isAlike = ({ segments, material }: LineTold): boolean =>
  segments.every((it) => (it.material ?? material) === material)

function recordedFact({ built, found }: SeenPairing): Fact<LineTold> {
  const part = partOnRecord(built)
  const { measures } = built
  const material = claimFact(measures.material, 'material', part, showChoice)
  const start = statedValue(measures.measuredFrom)
  const segments = claimFact(measures.segments, 'segments', part, (value) => showStretches(value, start))
  if (material.state === 'doubtful' || segments.state === 'doubtful')
    return material.state === 'doubtful'
      ? material
      : (segments as Extract<typeof segments, { state: 'doubtful' }>)
  if (material.state !== 'known' && segments.state !== 'known')
    return lacking({ gap: 'not-on-record', thing: 'material', part })
  const told: LineTold = {
    material: material.state === 'known' ? material.value : null,
    sizeFt: statedValue(measures.pipeDiameter)?.ft ?? null,
    segments: segments.state === 'known' ? stretches(segments.value) : [],
    lengthFt: statedValue(measures.length)?.ft ?? null,
  }
  const from = found.measuredFrom ?? null
  if (!isAlike(told) && start !== null && from !== null && start !== from)
    return lacking({ gap: 'other-start', part, recorded: start, found: from })
  return known(
    told,
    ...(material.state === 'known' ? material.exhibits : []),
    ...(segments.state === 'known' ? segments.exhibits : []),
  )
}

function foundFact({ built, found }: SeenPairing, findings: string): Fact<LineTold> {
  const part = partOnRecord(built)
  const how = found.cameraRun === null ? 'seen' : 'by-camera'
  const segments = found.segments ?? null
  const told: LineTold = {
    material: found.material,
    sizeFt: found.pipeDiameter?.ft ?? null,
    segments: segments === null ? [] : stretches(segments),
    lengthFt: found.length?.ft ?? found.cameraRun?.ft ?? null,
  }
  if (segments !== null) {
    const shown = showStretches(segments, found.measuredFrom ?? null)
    return known(told, seen(found, part, findings, 'segments', shown, how))
  }
  // One material for a line that has two on record: which of them was seen is not said.
  const stretched = statedValue(built.measures.segments) ?? []
  const expected = [statedValue(built.measures.material), ...stretched.map(({ material }) => material)]
  if (found.material === null || expected.includes(found.material))
    return lacking({ gap: 'not-measured', things: ['segments'], part })
  return known(told, seen(found, part, findings, 'material', showChoice(found.material), how))
}

const stretches = (segments: NonNullable<FoundComponent['segments']> | Parameters<typeof showStretches>[0]) =>
  (showStretches(segments, null) as { readonly stretches: LineTold['segments'] }).stretches
