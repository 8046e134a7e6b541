import type { Said } from '../../../words/copy.ts'
import type { Language } from '../../../words/language.ts'

const WAIT: Said<(minutes: number) => string> = {
  en: (minutes) => `Too many tries. Try again in ${minutes === 1 ? '1 minute' : `${minutes} minutes`}.`,
  es: (minutes) =>
    `Demasiados intentos. Intente otra vez en ${minutes === 1 ? '1 minuto' : `${minutes} minutos`}.`,
}

/** Why nobody may try again yet: the same for a name, an address and a code. */
export const waitInWords = (seconds: number, language: Language = 'en'): string =>
  WAIT[language](Math.ceil(seconds / 60))
