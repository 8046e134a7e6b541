import { openPart } from '../../reconcile/detail.ts'
import type { Answer } from '../../reconcile/kept.ts'
import type { Reason } from '../../reconcile/reason.ts'
import type { SystemTold } from '../../reconcile/status.ts'
import type { AsBuilt } from '../../records/as-built.ts'
import type { OurText } from '../../records/whose.ts'
import type { LetterCopy } from '../../words/agent/letter.ts'
import { SYSTEMS_VOICE, systemTold, theSystem } from '../../words/agent/systems.ts'
import type { Language } from '../../words/language.ts'
import { ours, oursCapital } from '../../words/ours.ts'

/** What is on file of one system; null where there is nothing and nobody has inspected. */
export type SystemFile = {
  /** Which, where the parcel has several or shares one. */
  readonly system: SystemTold | null
  readonly file: {
    readonly answer: Answer
    readonly permits: AsBuilt['permits']
    /** How many more lie in the file of a parcel that shares the system: nothing else of that one is told. */
    readonly elsewhere?: number
    readonly on: AsBuilt['on']
  } | null
}

/** Not looked for, not reached and not done, with the reason from a closed list. What nobody reached is said once. */
export function unseen(it: SystemFile, copy: LetterCopy, language: Language): readonly OurText[] {
  const { system } = it
  if (system === null) return unseenOf(it, copy)
  if (it.file?.answer.findings == null)
    return [SYSTEMS_VOICE[language].notInspected(theSystem(system, language))]
  return unseenOf(it, copy).map((line) => ours`${oursCapital(systemTold(system, language))}: ${line}`)
}

function unseenOf({ file }: SystemFile, copy: LetterCopy): readonly OurText[] {
  if (file?.answer.findings == null) return [copy.noInspection]
  const { outcomes } = file.answer
  const away = new Set(outcomes.filter(({ reason }) => isAway(reason)).map(({ subject }) => subject.key))
  return outcomes.flatMap(({ reason, subject }) => {
    if (reason.is === 'protocol')
      return reason.end === 'left-out' && reason.step !== 'locate' && !away.has(subject.key)
        ? [copy.leftOut(openPart(subject), reason.step, reason.why)]
        : []
    if (reason.is !== 'unknown') return []
    return reason.gaps.flatMap((gap) => {
      if (gap.gap === 'not-looked-for') return [copy.notLookedFor(openPart(subject))]
      return gap.gap === 'not-reached' ? [copy.notReached(openPart(subject), gap.why)] : []
    })
  })
}

const isAway = (reason: Reason): boolean =>
  reason.is === 'unknown' && reason.gaps.some(({ gap }) => gap === 'not-looked-for' || gap === 'not-reached')
