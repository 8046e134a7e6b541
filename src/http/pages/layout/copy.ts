import { DEFERENCE } from '../../../words/cautions.ts'
import type { Copy } from '../../../words/copy.ts'
import type { Language } from '../../../words/language.ts'

/** What is around every page. The places that only reviewers and firms have are English. */
export const FRAME = {
  skip: { en: 'Skip to main content', es: 'Ir al contenido principal' },
  home: { en: 'Home', es: 'Inicio' },
  searchFor: {
    en: 'Parcel number, old number or address',
    es: 'Número de parcela, número anterior o dirección',
  },
  searchHint: { en: 'Parcel number or address', es: 'Número de parcela o dirección' },
  find: { en: 'Find', es: 'Buscar' },
  pages: { en: 'Pages', es: 'Páginas' },
  changes: { en: 'What changed', es: 'Cambios' },
  account: { en: 'Account', es: 'Cuenta' },
  signOut: { en: 'Sign out', es: 'Cerrar sesión' },
  languages: { en: 'Language', es: 'Idioma' },
  deference: {
    en: DEFERENCE,
    es:
      'Los códigos locales y los profesionales con licencia deciden qué se puede abrir, quién y cómo. ' +
      'Nada de esto es una conclusión legal ni una garantía del sistema.',
  },
} satisfies Copy

/** What each language calls itself. */
export const LANGUAGE_NAMES: { readonly [L in Language]: string } = { en: 'English', es: 'Español' }
