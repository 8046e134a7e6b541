import type { AsBuiltComponent } from '../records/as-built.ts'
import type { FoundComponent } from '../records/findings.ts'
import { type Cited, citedInWords } from '../rules/citation.ts'
import type { Certainty, Exhibit, Subject } from './outcome.ts'
import type { Paired, Pairing } from './pairing.ts'

/** The system as a whole. */
export const SYSTEM: Subject = { key: 'system', label: 'the system', kind: 'system' }

const aboutBuilt = ({ key, label, kind }: AsBuiltComponent): Subject => ({ key, label, kind })

export const aboutPairing = ({ built }: Pairing): Subject => aboutBuilt(built)

/** A thing found: what it is on record, in service or no longer; else by the inspector's name. */
export function aboutSeen(found: FoundComponent, { pairings, former }: Paired): Subject {
  const known = [...pairings, ...former].find((paired) => paired.found === found)
  return known ? aboutBuilt(known.built) : aboutFound(found)
}

/** A thing found that is not on record is known by the name the inspector gave it. */
export const aboutFound = ({ label, kind }: FoundComponent): Subject => ({
  key: `found/${label}`,
  label,
  kind,
})

export const firm = (because: string): Certainty => ({ word: 'firm', because })
export const likely = (because: string): Certainty => ({ word: 'likely', because })
export const open = (because: string): Certainty => ({ word: 'open', because })

/** What the inspector saw, as an exhibit. */
export const seen = (
  found: FoundComponent,
  findings: string,
  what: string,
  asStated: string,
  how: string,
): Exhibit => ({
  what,
  word: 'found',
  asStated,
  asUsed: asStated,
  from: { kind: 'inspection', findings, component: found.label, how },
})

/** What a rule asks, beside what is on record and what was found. */
export const required = (what: string, figure: string, rule: Cited<unknown>): Exhibit => ({
  what,
  word: 'required',
  asStated: figure,
  asUsed: figure,
  from: { kind: 'rule', says: citedInWords(rule) },
})

/** What we allow by a convention that no code states: shown with its source, and never as required. */
export const allowed = (what: string, figure: string, rule: Cited<unknown>): Exhibit => ({
  ...required(what, figure, rule),
  word: 'derived',
})

/** What the readings come to, to be held against it. */
export const derived = (what: string, figure: string): Exhibit => ({
  what,
  word: 'derived',
  asStated: 'computed',
  asUsed: figure,
  from: { kind: 'computed' },
})

/** Pairings whose component the inspection saw. */
export type SeenPairing = Pairing & { readonly found: FoundComponent }
export const wasSeen = (pairing: Pairing): pairing is SeenPairing => pairing.found?.outcome === 'found'
