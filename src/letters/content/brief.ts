import type { InspectionBrief } from '../../brief/inspection-brief.ts'
import type { WantedMeasurement } from '../../brief/measurements.ts'
import type { AsBuiltComponent } from '../../records/as-built.ts'
import { type LetterText, letterText } from '../../words/agent/letter.ts'
import { bringWords } from '../../words/bring.ts'
import type { Caution } from '../../words/cautions.ts'
import { doubtOf, doubtWords } from '../../words/gaps.ts'
import { capital, sentence } from '../../words/sentence.ts'
import { printCitation } from './evidence.ts'
import type { LetterFrame } from './frame.ts'
import { aboutIn, permitInWords, printRecord, type RecordPrinted } from './record.ts'
import { type PlanPrinted, printPlan } from './site-plan.ts'

export type BriefFacts = { readonly brief: InspectionBrief; readonly components: readonly AsBuiltComponent[] }

export type BriefPrinted = {
  readonly frame: LetterFrame
  readonly copy: LetterText
  readonly file: string
  readonly unapproved: readonly string[]
  readonly contradictions: readonly string[]
  readonly cautions: readonly Caution[]
  readonly recorded: readonly RecordPrinted[]
  readonly expected: readonly { readonly about: string; readonly says: string; readonly from: string }[]
  readonly plan: PlanPrinted | null
  /** Where to look, in words; with a plan they are the plan's own. */
  readonly words: readonly string[]
  /** What the papers say in words, with the paper. */
  readonly remarks: readonly { readonly about: string; readonly says: string; readonly from: string }[]
  readonly bring: readonly ReturnType<typeof bringWords>[]
  readonly measurements: readonly {
    readonly what: string
    readonly how: string
    readonly settles: readonly string[]
  }[]
  readonly deference: string
}

/** What an inspector takes along, most dangerous things first. */
export function printBrief(frame: LetterFrame, { brief, components }: BriefFacts): BriefPrinted {
  return {
    frame,
    copy: letterText(frame.language),
    file: brief.permits.map(permitInWords).join('; ') || 'no approved permit',
    unapproved: brief.unapproved.map(permitInWords),
    contradictions: brief.contradictions.map(doubtOf).map(doubtWords).map(sentence),
    cautions: brief.cautions,
    recorded: printRecord(brief.recorded, components),
    expected: brief.expected.map(({ about, component, says, citations }) => ({
      about: aboutIn(components, component, about),
      says: sentence(says),
      from: [
        ...new Set(
          citations
            .map((it) => printCitation({ ...it, rule: null }))
            .map(({ place, verified }) => `${place} (${verified})`),
        ),
      ].join('; '),
    })),
    plan: printPlan(brief.whereToLook.plan),
    words: brief.whereToLook.words,
    remarks: brief.remarks.map(({ permit, about, says }) => ({
      about: about ?? 'the system',
      says,
      from: `permit ${permit}`,
    })),
    bring: brief.bring.map(bringWords),
    measurements: brief.measurements.map(printMeasurement),
    deference: brief.deference,
  }
}

const printMeasurement = ({ what, how, settles }: WantedMeasurement) => ({
  what: capital(what),
  how: sentence(how),
  settles,
})
