import type { Alias } from '../../../store/parcels.ts'
import type { Copy, Said } from '../../../words/copy.ts'

export const HEADING = {
  noAddress: { en: 'No address on file', es: 'Sin dirección en el registro' },
  retired: {
    en: (day: string) => `This parcel number was retired on ${day}.`,
    es: (day: string) => `Este número de parcela se retiró el ${day}.`,
  },
  before: { en: 'Earlier numbers:', es: 'Números anteriores:' },
} satisfies Copy

export const CHANGES_OF_NUMBER: { readonly [K in Alias['kind']]: Said } = {
  renumbered: { en: 'renumbered', es: 'cambió de número' },
  split: { en: 'split', es: 'dividida' },
  merged: { en: 'merged', es: 'unida' },
}

export const STATUS_PAGE = {
  title: { en: (number: string) => `${number}: status`, es: (number: string) => `${number}: estado` },
  letters: { en: 'Letters', es: 'Cartas' },
  limits: {
    en: 'This is what the county’s file and the last inspection show. It is not a warranty of the septic system.',
    es:
      'Esto es lo que muestran el registro del condado y la última inspección. No es una garantía ' +
      'del sistema séptico.',
  },
} satisfies Copy
