/**
 * Whose words a text is. Each kind takes plain text where it is entered and none takes another's, so that what one
 * person wrote can't be passed on as another's. Our own words are stricter: only `words/` makes them (`words/ours.ts`),
 * and a sentence for agents takes nothing else.
 */
declare const whose: unique symbol

/** An inspection firm's: labels, notes, how it describes a condition. */
export type FirmText = string & { readonly [whose]?: 'firm' }
/** A permit's or another document's: the tag of a component, a remark, a note on what can't be read. */
export type PaperText = string & { readonly [whose]?: 'paper' }
/** A reviewer's: the reason of a decision, what it requires. */
export type ReviewerText = string & { readonly [whose]?: 'reviewer' }
/** Ours, written in `words/` from typed reasons alone. */
export type OurText = string & { readonly [whose]: 'ours' }
