import type { AsBuiltComponent } from '../records/as-built.ts'
import type { FoundComponent } from '../records/findings.ts'
import { type Part, partFound, partOnRecord } from '../records/part.ts'
import type { FirmText } from '../records/whose.ts'
import { type Citation, type Cited, type Verified, weakest } from '../rules/citation.ts'
import type { Certainty, Exhibit, ExhibitSource } from './outcome.ts'
import type { Paired, Pairing } from './pairing.ts'
import type { Basis } from './reason.ts'
import type { Shown, Thing } from './thing.ts'

export const aboutPairing = ({ built }: Pairing): Part => partOnRecord(built)

/** A thing found: what it is on record, in service or no longer; else by the inspector's name. */
export function aboutSeen(found: FoundComponent, { pairings, former }: Paired): Part {
  const built = builtFor(found, pairings, former)
  return built ? partOnRecord(built) : partFound(found)
}

const builtFor = (
  found: FoundComponent,
  ...paired: readonly (readonly {
    readonly built: AsBuiltComponent
    readonly found: FoundComponent | null
  }[])[]
): AsBuiltComponent | undefined => paired.flat().find((it) => it.found === found)?.built

export const firm = (basis: Basis): Certainty => ({ word: 'firm', basis })
export const likely = (basis: Basis): Certainty => ({ word: 'likely', basis })
export const open = (basis: Basis): Certainty => ({ word: 'open', basis })

type How = Extract<ExhibitSource, { kind: 'inspection' }>['how']

/** What the inspector saw, as an exhibit. */
export const seen = (
  found: FoundComponent,
  part: Part,
  findings: string,
  thing: Thing,
  used: Shown,
  how: How = 'seen',
  asStated: FirmText | null = null,
): Exhibit => ({
  thing,
  part,
  word: 'found',
  asStated,
  used,
  from: { kind: 'inspection', findings, component: found.label, how },
})

/** What a rule requires, beside what is on record and what was found. */
export const required = (
  thing: Thing,
  used: Shown,
  { citations }: Cited<unknown>,
  part: Part | null = null,
): Exhibit => ({
  thing,
  part,
  word: 'required',
  asStated: null,
  used,
  from: { kind: 'rule', citations },
})

/** What we allow by a convention that no code states: shown with its source, and never as required. */
export const allowed = (thing: Thing, used: Shown, rule: Cited<unknown>): Exhibit => ({
  ...required(thing, used, rule),
  word: 'derived',
})

/** What the readings come to, to be held against it. */
export const derived = (thing: Thing, used: Shown, part: Part | null = null): Exhibit => ({
  thing,
  part,
  word: 'derived',
  asStated: null,
  used,
  from: { kind: 'computed' },
})

/** The least sure status among what a rule rests on: what a sentence about it must show. */
export const sourceOf = ({ citations }: { readonly citations: readonly Citation[] }): Verified =>
  weakest(citations)

/** Pairings whose component the inspection saw. */
export type SeenPairing = Pairing & { readonly found: FoundComponent }
export const wasSeen = (pairing: Pairing): pairing is SeenPairing => pairing.found?.outcome === 'found'
