import type { OurText } from '../../records/whose.ts'
import type { Language } from '../language.ts'
import { ours } from '../ours.ts'

/** What has come in since a letter was issued. Tells that something did, not what. */
export const SINCE_WORDS: {
  readonly [L in Language]: {
    readonly [S in 'system' | 'permit' | 'correction' | 'findings' | 'difference' | 'status']: OurText
  }
} = {
  en: {
    system: ours`A septic system was added, or what one serves has changed.`,
    permit: ours`A permit was entered or corrected.`,
    correction: ours`The county changed its record, or changed it back.`,
    findings: ours`An inspection came in, or one was changed.`,
    difference: ours`A difference appeared, changed, was decided or went away.`,
    status: ours`The status has changed.`,
  },
  es: {
    system: ours`Se agregó un sistema séptico o cambió a qué sirve uno.`,
    permit: ours`Se registró o se corrigió un permiso.`,
    correction: ours`El condado corrigió su registro o anuló una corrección.`,
    findings: ours`Se entregó o se corrigió una inspección.`,
    difference: ours`Hay una diferencia nueva, o cambió o se cerró una de antes.`,
    status: ours`El estado ha cambiado.`,
  },
}
