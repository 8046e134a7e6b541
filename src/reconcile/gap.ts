import type { NonEmpty } from '../base/non-empty.ts'
import type { PartialDate } from '../base/partial-date.ts'
import type { PlainDate } from '../base/plain-date.ts'
import type { LineStart, NotReachedReason } from '../catalog/choices.ts'
import type { Issue } from '../measure/issue.ts'
import type { Part } from '../records/part.ts'
import type { PaperText } from '../records/whose.ts'
import type { NotStated } from '../rules/apply/not-stated.ts'
import type { ParameterName } from '../rules/parameters.ts'
import type { KeptFrom } from './kept-from.ts'
import type { Shown, Thing } from './thing.ts'

/** Why one fact that a question needs is not known. */
export type Gap =
  | { readonly gap: 'not-on-record'; readonly thing: Thing; readonly part: Part }
  | {
      readonly gap: 'unreadable'
      readonly thing: Thing
      readonly part: Part
      readonly permit: string
      readonly note: PaperText
    }
  | {
      readonly gap: 'contradictory'
      readonly thing: Thing
      readonly part: Part
      readonly claims: readonly { readonly value: Shown; readonly permit: string }[]
    }
  | { readonly gap: 'not-measured'; readonly things: readonly Thing[]; readonly part: Part }
  /** Record and inspection measure along a line from different ends, so that their stretches can't be laid side by side. */
  | {
      readonly gap: 'other-start'
      readonly part: Part
      readonly recorded: LineStart
      readonly found: LineStart
    }
  | { readonly gap: 'no-dimensions'; readonly part: Part; readonly where: 'inspection' | 'record' }
  | { readonly gap: 'impossible'; readonly part: Part; readonly issues: readonly Issue[] }
  | { readonly gap: 'not-looked-for'; readonly part: Part }
  | { readonly gap: 'not-reached'; readonly part: Part; readonly why: NotReachedReason }
  | { readonly gap: 'material-unknown'; readonly part: Part }
  | { readonly gap: 'undated'; readonly part: Part }
  /** Dated to the month or the year alone, and the missing part decides. */
  | { readonly gap: 'day-unclear'; readonly part: Part; readonly on: PartialDate }
  /** Of a system that serves several parcels: what some of them put on it. */
  | {
      readonly gap: 'share-unknown'
      readonly thing: 'bedrooms' | 'designFlowGpd'
      readonly parcels: NonEmpty<string>
    }
  | { readonly gap: 'no-tank' }
  | { readonly gap: 'no-absorption-area' }
  /** A repair put in a field, and whether it is beside the old one or instead of it is not said. */
  | {
      readonly gap: 'beside-or-instead'
      readonly permit: string
      readonly part: Part
      readonly among: readonly Part[]
    }
  /** A permit replaces or takes out a field, and which of those that are there it means is not said. */
  | {
      readonly gap: 'no-target' | 'which-target'
      readonly verb: 'replace' | 'alter' | 'abandon'
      readonly permit: string
      readonly part: Part
      readonly among: readonly Part[]
    }
  | { readonly gap: 'no-inspection' }
  | { readonly gap: 'no-baseline' }
  | { readonly gap: 'no-ties'; readonly part: Part }
  /** Nobody stated or taped how far it is, and nothing places both. */
  | { readonly gap: 'no-distance'; readonly part: Part; readonly from: KeptFrom }
  /** It was found by satellite alone, and no corner was. */
  | { readonly gap: 'no-corner-fix'; readonly part: Part }
  /** Ties and fix do not fit one place: any of these being wrong would explain it. */
  | {
      readonly gap: 'sightings-disagree'
      readonly part: Part
      readonly suspects: readonly ('A' | 'B' | 'fix')[]
    }
  | { readonly gap: 'ties-do-not-meet'; readonly part: Part; readonly where: 'record' | 'inspection' }

/** Why a question does not arise. */
export type Aside =
  | { readonly aside: 'out-of-service'; readonly part: Part }
  | { readonly aside: 'not-metal'; readonly part: Part }
  | { readonly aside: 'just-pumped'; readonly part: Part; readonly days: number }
  | { readonly aside: 'solids-measured' }
  | { readonly aside: 'level-below-outlet'; readonly part: Part }
  | {
      readonly aside: 'other-corners'
      readonly found: readonly [string, string]
      readonly recorded: readonly [string, string]
    }

/** Why no rule answers. */
export type RuleGap =
  | { readonly state: 'undated'; readonly rule: ParameterName }
  | {
      readonly state: 'day-unclear'
      readonly rule: ParameterName
      readonly first: PlainDate
      readonly last: PlainDate
    }
  | { readonly state: 'not-yet'; readonly rule: ParameterName; readonly from: PlainDate }
  | { readonly state: 'ended'; readonly rule: ParameterName; readonly until: PlainDate }
  | { readonly state: 'no-record'; readonly rule: ParameterName }
  | { readonly state: 'silent'; readonly rule: ParameterName; readonly silence: NotStated }
