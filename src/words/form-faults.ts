/** What is wrong with a field of the inspection form; `says` is what a parser said of the value that stands there. */
export type FormFault =
  | { readonly why: 'says'; readonly says: string }
  /** An odd value: what is asked, and what was written, which a box beside it confirms. */
  | { readonly why: 'unusual'; readonly asks: string; readonly written: string }
  | { readonly why: 'no-distance'; readonly side: 'above' | 'below' }
  | { readonly why: keyof typeof SAYS }

const SAYS = {
  nothing: 'write something here',
  'no-day': 'write the day of the inspection',
  'no-outcome': 'say first whether it was found',
  'no-side': 'say whether it stands above or below the invert',
  'one-tie': 'a place needs both ties: write this one too',
  'no-corners': 'say at the start which house corners A and B are',
  'no-kind': 'choose what it is',
} as const

/** What stands at the box that confirms an odd value. */
export const confirmWords = (written: string): string => `${written} is what I read`

/** What to do about it, to stand beside the field. */
export function formFaultWords(fault: FormFault): string {
  switch (fault.why) {
    case 'says':
      return fault.says
    case 'unusual':
      return fault.asks
    case 'no-distance':
      return `say how far ${fault.side} the invert it stands`
    default:
      return SAYS[fault.why]
  }
}
