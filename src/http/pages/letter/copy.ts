import { LETTER_TITLES, type LetterKind } from '../../../letters/content/frame.ts'
import type { Copy, Said } from '../../../words/copy.ts'

export const LETTER_NAMES: { readonly [K in LetterKind]: Said } = {
  status: { en: LETTER_TITLES.status, es: 'Carta de estado' },
  report: { en: LETTER_TITLES.report, es: 'Informe de comparación' },
  brief: { en: LETTER_TITLES.brief, es: 'Guía de inspección' },
}

export const LETTERS = {
  get: {
    en: (name: string) => `Get a ${name.toLowerCase()}`,
    es: (name: string) => `Obtener: ${name.toLowerCase()}`,
  },
  help: {
    en: 'A dated, numbered and signed PDF. Anyone who holds the letter can check it.',
    es: 'Un PDF con fecha, número y firma. Cualquiera que tenga la carta puede verificarla.',
  },
  check: { en: 'Check', es: 'Verificar' },
  checkOf: {
    en: (number: string) => `Check letter ${number}`,
    es: (number: string) => `Verificar la carta ${number}`,
  },
  withdrawn: { en: 'Withdrawn:', es: 'Retirada:' },
} satisfies Copy
