import type { LeftOutReason, NotReachedReason } from '../../catalog/choices.ts'
import type { OpenPart } from '../../reconcile/detail.ts'
import type { DecisionAction } from '../../records/decision.ts'
import type { OurText } from '../../records/whose.ts'
import type { Step } from '../../rules/values/protocol.ts'
import type { Language } from '../language.ts'
import { ours } from '../ours.ts'
import { EN } from './en.ts'
import { leftOut as leftOutEn } from './en-parts.ts'
import { ES } from './es.ts'
import { leftOut as leftOutEs } from './es-parts.ts'

/** What a status letter says around its answer, in one language. */
export type LetterCopy = LetterText & LetterSentences

/** What stands on the page as it is. */
export type LetterText = {
  readonly title: OurText
  readonly records: OurText
  readonly numberSign: OurText
  readonly parcel: OurText
  readonly asOf: OurText
  readonly basis: OurText
  readonly page: readonly [OurText, OurText]
  readonly status: OurText
  readonly whatDiffers: OurText
  readonly columns: readonly [OurText, OurText, OurText]
  readonly nothingOpen: OurText
  readonly by: OurText
  readonly resolved: OurText
  readonly matches: OurText
  /** Of a size that was not measured. */
  readonly byRecord: OurText
  readonly nothingCompared: OurText
  readonly notInspected: OurText
  readonly everythingLookedFor: OurText
  readonly couldNotTell: OurText
  readonly takeCare: OurText
  readonly caution: OurText
  readonly noWarranty: OurText
  readonly deference: OurText
  readonly check: OurText
  readonly code: OurText
  readonly seal: OurText
  readonly checkAlt: OurText
  /** Said where English governs and the letter is in another language. */
  readonly governs: OurText | null
  readonly noFile: OurText
  readonly noApproved: OurText
  readonly file: OurText
  readonly permit: OurText
  readonly approved: OurText
  readonly noInspection: OurText
  readonly comparedWith: OurText
}

/** What is made for each letter. */
export type LetterSentences = {
  readonly more: (count: number) => OurText
  /** Permits of a shared system in another parcel's file. */
  readonly elsewhere: (count: number) => OurText
  readonly moreReviewing: (count: number) => OurText
  readonly notes: (count: number) => OurText
  readonly notLookedFor: (part: OpenPart) => OurText
  readonly notReached: (part: OpenPart, why: NotReachedReason) => OurText
  /** What the protocol asks and nobody did, with the reason where one was given. */
  readonly leftOut: (part: OpenPart, step: Step, why: LeftOutReason | null) => OurText
  readonly how: { readonly [A in DecisionAction]: OurText }
}

const EN_REASONS: { readonly [R in LeftOutReason]: OurText } = {
  buried: ours`it is buried too deep`,
  'paved-over': ours`it is paved over`,
  refused: ours`access was refused`,
  'no-time': ours`there was no time`,
  unsafe: ours`it was not safe`,
  other: ours`there was another reason`,
  'shut-off': ours`water or power was shut off`,
  'nobody-to-ask': ours`nobody was there to ask`,
  'not-stated': ours`the report does not say`,
}

const ES_REASONS: { readonly [R in LeftOutReason]: OurText } = {
  buried: ours`está enterrado muy hondo`,
  'paved-over': ours`está bajo pavimento`,
  refused: ours`no dejaron entrar`,
  'no-time': ours`faltó tiempo`,
  unsafe: ours`no era seguro`,
  other: ours`por otra razón`,
  'shut-off': ours`no había agua o luz`,
  'nobody-to-ask': ours`no había a quién preguntar`,
  'not-stated': ours`el informe no lo dice`,
}

const en: LetterCopy = {
  title: ours`Status letter`,
  records: ours`Septic system records`,
  numberSign: ours`No.`,
  parcel: ours`Parcel`,
  asOf: ours`As of`,
  basis: ours`Based on`,
  page: [ours`Page`, ours`of`],
  status: ours`Status of the septic system`,
  whatDiffers: ours`What differs, and who must act`,
  columns: [ours`What differs`, ours`Whose turn`, ours`What is required`],
  nothingOpen: ours`Nothing is open. No one has to act.`,
  by: ours`By`,
  resolved: ours`Closed items:`,
  matches: ours`What matches the record`,
  byRecord: ours`by the record, not measured`,
  nothingCompared: ours`Nothing was compared.`,
  notInspected: ours`What was not inspected`,
  everythingLookedFor: ours`The inspector looked for all that is on record.`,
  couldNotTell: ours`The record and the inspection could not tell:`,
  takeCare: ours`Take care.`,
  caution: ours`Keep off old tanks, pits and their covers. Never open, enter or lean into one. Covers give way, and air that looks clear can kill. Keep children away from any opening. Call 811 days before anyone digs. Private lines are not marked. Only licensed people should open a system.`,
  noWarranty: ours`No warranty, no legal finding.`,
  deference: ours`This letter says nothing about what was not inspected. Local codes and licensed practice govern. It is not a legal finding, and it does not warrant the system.`,
  check: ours`Check this letter`,
  code: ours`Code`,
  seal: ours`An electronic signature seals this letter. To check that it is real and still current, scan the QR code or type the address. The answer tells what has come in since.`,
  checkAlt: ours`QR code of the address where this letter can be checked:`,
  governs: null,
  noFile: ours`Nothing is on file for this parcel, and no inspection has been submitted.`,
  noApproved: ours`The county’s file, which has no approved permit`,
  file: ours`The county’s file`,
  permit: ours`permit`,
  approved: ours`approved`,
  more: (count) => ours`And ${count} more in the county’s file.`,
  elsewhere: (count) => ours`${count} in the file of another parcel that it serves`,
  moreReviewing: (count) => ours`And ${count} more that the county is reviewing.`,
  notes: (count) =>
    count === 1 ? ours`One more note needs no action.` : ours`${count} more notes need no action.`,
  noInspection: ours`No inspection has been submitted.`,
  comparedWith: ours`compared with the inspection of`,
  notLookedFor: (part) => ours`${EN.part(part)}: the inspector did not look for it.`,
  notReached: (part, why) => ours`${EN.part(part)}: not reached, because ${EN_REASONS[why]}.`,
  leftOut: (part, step, why) =>
    why === null ? leftOutEn(part, step) : ours`${leftOutEn(part, step)} Reason: ${EN_REASONS[why]}.`,
  how: EN.decided,
}

const es: LetterCopy = {
  title: ours`Carta de estado`,
  records: ours`Registros de sistemas sépticos`,
  numberSign: ours`N.º`,
  parcel: ours`Parcela`,
  asOf: ours`Al día`,
  basis: ours`Se basa en`,
  page: [ours`Página`, ours`de`],
  status: ours`Estado del sistema séptico`,
  whatDiffers: ours`Qué difiere y quién debe actuar`,
  columns: [ours`Qué difiere`, ours`A quién le toca`, ours`Qué se exige`],
  nothingOpen: ours`No hay nada pendiente. Nadie tiene que actuar.`,
  by: ours`Antes del`,
  resolved: ours`Asuntos cerrados:`,
  matches: ours`Qué coincide con el registro`,
  byRecord: ours`según el registro, sin medir`,
  nothingCompared: ours`No se comparó nada.`,
  notInspected: ours`Qué no se inspeccionó`,
  everythingLookedFor: ours`El inspector buscó todo lo registrado.`,
  couldNotTell: ours`El registro y la inspección no pudieron decir:`,
  takeCare: ours`Cuidado.`,
  caution: ours`No pise tanques ni pozos viejos, ni sus tapas. Nunca abra uno, ni entre, ni se asome. Las tapas ceden y el aire que parece limpio puede matar. Aleje a los niños de toda abertura. Llame al 811 días antes de cavar. Las líneas privadas no se marcan. Solo personas con licencia deben abrir un sistema.`,
  noWarranty: ours`Sin garantía ni valor legal.`,
  deference: ours`Esta carta no dice nada de lo que no se inspeccionó. Rigen las normas locales y la práctica con licencia. No es un dictamen legal ni garantiza el sistema.`,
  check: ours`Verifique esta carta`,
  code: ours`Código`,
  seal: ours`Una firma electrónica sella esta carta. Para saber si es auténtica y sigue vigente, escanee el código QR o escriba la dirección. La respuesta dice qué ha llegado desde entonces.`,
  checkAlt: ours`Código QR de la dirección donde se verifica esta carta:`,
  governs: ours`Esta carta en español es una ayuda. Si difiere de la carta en inglés, rige la carta en inglés.`,
  noFile: ours`No hay nada en el archivo de esta parcela y no se ha entregado ninguna inspección.`,
  noApproved: ours`El archivo del condado, que no tiene permiso aprobado`,
  file: ours`El archivo del condado`,
  permit: ours`permiso`,
  approved: ours`aprobado`,
  more: (count) => ours`Y ${count} más en el archivo del condado.`,
  elsewhere: (count) => ours`${count} en el archivo de otra parcela a la que sirve`,
  moreReviewing: (count) => ours`Y ${count} más que el condado revisa.`,
  notes: (count) =>
    count === 1 ? ours`Una nota más no exige nada.` : ours`${count} notas más no exigen nada.`,
  noInspection: ours`No se ha entregado ninguna inspección.`,
  comparedWith: ours`comparado con la inspección del`,
  notLookedFor: (part) => ours`${ES.part(part)}: el inspector no lo buscó.`,
  notReached: (part, why) => ours`${ES.part(part)}: no se alcanzó: ${ES_REASONS[why]}.`,
  leftOut: (part, step, why) =>
    why === null ? leftOutEs(part, step) : ours`${leftOutEs(part, step)} Razón: ${ES_REASONS[why]}.`,
  how: ES.decided,
}

export const LETTER_COPY: { readonly [L in Language]: LetterCopy } = { en, es }

/** The part that stands on the page as it is, to be printed. */
export const letterText = (language: Language): LetterText =>
  Object.fromEntries(
    Object.entries(LETTER_COPY[language]).filter(([, it]) => typeof it !== 'function'),
  ) as LetterText
