import type { LetterState } from '../../../operations/letters/check-letter.ts'
import type { Copy, Said } from '../../../words/copy.ts'
import { type Html, html } from '../html.ts'

export const CODE_FORM = {
  title: { en: 'Check a letter', es: 'Verificar una carta' },
  lead: {
    en: 'Find out if a letter is genuine and still matches the county’s file.',
    es: 'Averigüe si una carta es auténtica y si todavía coincide con el registro del condado.',
  },
  label: { en: 'Code of the letter', es: 'Código de la carta' },
  help: {
    en:
      'Four groups of four characters, next to the QR code on the letter. Hyphens, spaces and ' +
      'capitals do not matter.',
    es:
      'Cuatro grupos de cuatro caracteres, junto al código QR de la carta. No importan los guiones, ' +
      'los espacios ni las mayúsculas.',
  },
  submit: { en: 'Check', es: 'Verificar' },
  unknown: {
    en:
      'No letter has this code. Compare it with the letter, character by character. If it is the ' +
      'same, the letter is not genuine.',
    es:
      'Ninguna carta tiene este código. Compárelo con la carta, carácter por carácter. Si es igual, ' +
      'la carta no es auténtica.',
  },
} satisfies Copy

/** The answer in one line, and what it means for whoever holds the letter. */
export const STATES: { readonly [S in LetterState]: { readonly head: Said; readonly lead: Said } } = {
  valid: {
    head: { en: 'Genuine and up to date', es: 'Auténtica y vigente' },
    lead: {
      en: 'This letter matches the county’s file today.',
      es: 'Esta carta coincide hoy con el registro del condado.',
    },
  },
  superseded: {
    head: { en: 'Genuine, but out of date', es: 'Auténtica, pero ya no vigente' },
    lead: {
      en: 'This letter was right on its date. The file has changed since. Get a new letter before you rely on it.',
      es:
        'Esta carta era correcta en su fecha. El registro ha cambiado desde entonces. Pida una nueva ' +
        'antes de confiar en ella.',
    },
  },
  withdrawn: {
    head: { en: 'Withdrawn', es: 'Retirada' },
    lead: {
      en: 'The county has withdrawn this letter. Do not rely on it.',
      es: 'El condado ha retirado esta carta. No confíe en ella.',
    },
  },
}

export const CHECKED = {
  title: { en: (number: string) => `Letter ${number}`, es: (number: string) => `Carta ${number}` },
  result: { en: 'Result of the check', es: 'Resultado de la verificación' },
  withdrawn: {
    en: (on: Html) => html`Withdrawn on ${on}. <b>Reason:</b> `,
    es: (on: Html) => html`Retirada el ${on}. <b>Motivo:</b> `,
  },
  since: { en: 'What has changed since', es: 'Lo que ha cambiado desde entonces' },
  newer: {
    en: (number: string, on: Html) => html`Letter ${number} of ${on} replaces it.`,
    es: (number: string, on: Html) => html`La carta ${number} del ${on} la reemplaza.`,
  },
  checked: { en: 'Checked on', es: 'Verificada el' },
  another: { en: 'Check another letter', es: 'Verificar otra carta' },
  about: { en: 'What the letter is', es: 'Qué carta es' },
  compare: {
    en: 'Compare this with the letter in your hand.',
    es: 'Compare esto con la carta que tiene en la mano.',
  },
  letter: { en: 'Letter', es: 'Carta' },
  county: { en: 'County', es: 'Condado' },
  parcel: { en: 'Parcel', es: 'Parcela' },
  issued: { en: 'Issued', es: 'Emitida' },
  asOf: { en: 'As of', es: 'Datos al' },
  status: { en: 'Status on that day', es: 'Estado en esa fecha' },
  signature: {
    en: 'The signature, to check without this service',
    es: 'La firma, para verificarla sin este servicio',
  },
  keys: {
    en: (at: Html, hash: Html) => html`
      The keys are at ${at}. The SHA-256 hash of the signed PDF is ${hash}.
    `,
    es: (at: Html, hash: Html) =>
      html`Las claves están en ${at}. El hash SHA-256 del PDF firmado es ${hash}.`,
  },
  jws: { en: 'Signature (JWS, Ed25519):', es: 'Firma (JWS, Ed25519):' },
} satisfies Copy
