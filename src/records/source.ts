/** A box on a page in fractions of its width and height, origin at the top left. */
export type Box = { readonly x: number; readonly y: number; readonly w: number; readonly h: number }

/** Where a stated value came from: typed by a person from the paper, or read from a document and confirmed. */
export type Source =
  | { readonly kind: 'typed'; readonly by: string; readonly on: string }
  | {
      readonly kind: 'document'
      readonly document: string
      readonly page: number
      readonly box: Box | null
      readonly words: string
      /** The reading's own confidence, 0 to 1; null where a person typed what the page shows. */
      readonly confidence: number | null
      readonly confirmedBy: string
    }
  | { readonly kind: 'imported'; readonly import: string; readonly line: number }
  | { readonly kind: 'correction'; readonly decision: string; readonly by: string }
