import { inLanguage } from './copy.ts'
import type { Language } from './language.ts'

/** What is wrong with a code as somebody typed it. */
export type CodeFault =
  | { readonly why: 'foreign-sign'; readonly sign: string }
  | { readonly why: 'length'; readonly given: number; readonly wanted: number }
  | { readonly why: 'mistyped' }

const FAULTS = {
  foreign: {
    en: (sign: string) => `No code has the character ${sign}. Please check the letter again.`,
    es: (sign: string) => `Ningún código tiene el carácter ${sign}. Revise la carta otra vez.`,
  },
  length: {
    en: (given: number, wanted: number) => `You typed ${given} characters. A code has ${wanted}.`,
    es: (given: number, wanted: number) => `Escribió ${given} caracteres. Un código tiene ${wanted}.`,
  },
  mistyped: {
    en: 'This is not a valid code. One character is wrong or two changed places.',
    es: 'Este código no es válido. Un carácter está mal o dos cambiaron de lugar.',
  },
}

export function codeFaultInWords(fault: CodeFault, language: Language): string {
  const words = inLanguage(FAULTS, language)
  switch (fault.why) {
    case 'foreign-sign':
      return words.foreign(fault.sign)
    case 'length':
      return words.length(fault.given, fault.wanted)
    case 'mistyped':
      return words.mistyped
  }
}
