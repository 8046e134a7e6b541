import type { ItemState } from '../../reconcile/status.ts'
import type { OurText } from '../../records/whose.ts'
import type { Language } from '../language.ts'
import { ours } from '../ours.ts'

/** Whose turn it is. By itself, so that a phone that shows a status need not carry every sentence of one. */
export const STATE_TOLD: { readonly [L in Language]: { readonly [S in ItemState]: OurText } } = {
  en: {
    'owner-must-act': ours`The owner must act`,
    'inspector-must-measure': ours`An inspector must inspect again`,
    'county-reviewing': ours`The county is reviewing it`,
  },
  es: {
    'owner-must-act': ours`El dueño debe actuar`,
    'inspector-must-measure': ours`Un inspector debe volver`,
    'county-reviewing': ours`El condado lo revisa`,
  },
}
