import type { SystemUse } from '../../catalog/choices.ts'
import type { StatusWord, SystemStatus, SystemTold } from '../../reconcile/status.ts'
import type { OurText } from '../../records/whose.ts'
import type { Language } from '../language.ts'
import { ours, oursCapital } from '../ours.ts'

/** What is said of systems where a parcel has several, or shares one. */
type SystemsVoice = {
  /** What it serves, as a name in a list. */
  readonly uses: { readonly [U in SystemUse]: OurText }
  /** The system of it, within a sentence. */
  readonly of: (name: OurText, use: SystemUse) => OurText
  readonly notInspected: (system: OurText) => OurText
  /** Before the sentence of the parcel's word. */
  readonly one: OurText
  readonly each: OurText
  readonly shared: OurText
  readonly onlyLiesHere: OurText
  readonly title: OurText
}

const en: SystemsVoice = {
  uses: {
    main: ours`main system`,
    'main-house': ours`main house`,
    'second-house': ours`second house`,
    cottage: ours`cottage`,
    'dwelling-unit': ours`dwelling unit`,
    laundry: ours`laundry`,
    workshop: ours`workshop or barn`,
    business: ours`business`,
    'other-building': ours`other building`,
  },
  of: (name, use) => (use === 'main' ? ours`the ${name}` : ours`the system of the ${name}`),
  notInspected: (system) => ours`${oursCapital(system)} was not inspected.`,
  one: ours`This parcel has more than one septic system. For at least one:`,
  each: ours`This parcel has more than one septic system. For each:`,
  shared: ours`It is shared: it also serves another parcel or reaches onto one.`,
  onlyLiesHere: ours`It lies partly on this parcel and serves another one.`,
  title: ours`Ask a title company about an easement or agreement. The county’s record does not settle that.`,
}

const es: SystemsVoice = {
  uses: {
    main: ours`sistema principal`,
    'main-house': ours`casa principal`,
    'second-house': ours`segunda casa`,
    cottage: ours`casita`,
    'dwelling-unit': ours`vivienda`,
    laundry: ours`lavandería`,
    workshop: ours`taller o granero`,
    business: ours`negocio`,
    'other-building': ours`otro edificio`,
  },
  of: (name, use) => {
    if (use === 'main') return ours`el ${name}`
    const masculine = use === 'workshop' || use === 'business' || use === 'other-building'
    return masculine ? ours`el sistema del ${name}` : ours`el sistema de la ${name}`
  },
  notInspected: (system) => ours`No se inspeccionó ${system}.`,
  one: ours`Esta parcela tiene más de un sistema séptico. De al menos uno:`,
  each: ours`Esta parcela tiene más de un sistema séptico. De cada uno:`,
  shared: ours`Es compartido: también sirve a otra parcela o llega hasta ella.`,
  onlyLiesHere: ours`Está en parte en esta parcela y sirve a otra.`,
  title: ours`Pregunte a una compañía de títulos si hay servidumbre o acuerdo. El registro no lo decide.`,
}

export const SYSTEMS_VOICE: { readonly [L in Language]: SystemsVoice } = { en, es }

/** `cottage`, `dwelling unit B`. */
export const systemTold = ({ use, mark }: SystemTold, language: Language): OurText => {
  const name = SYSTEMS_VOICE[language].uses[use]
  return mark === null ? name : ours`${name} ${mark}`
}

export const theSystem = (told: SystemTold, language: Language): OurText =>
  SYSTEMS_VOICE[language].of(systemTold(told, language), told.use)

/** The sentence of the parcel's word, where it may be of one of several systems. */
export function ofSeveral(
  sentence: OurText,
  word: StatusWord,
  systems: readonly SystemStatus[],
  language: Language,
): OurText {
  if (systems.length < 2) return sentence
  const { one, each } = SYSTEMS_VOICE[language]
  return ours`${word === 'matches' || word === 'resolved' ? each : one} ${sentence}`
}

/** What of a system's standing is not in its word: that nobody inspected it, that it is shared. */
export function systemNotes(system: SystemStatus, language: Language): readonly OurText[] {
  const voice = SYSTEMS_VOICE[language]
  return [
    ...(system.inspected ? [] : [voice.notInspected(theSystem(system, language))]),
    ...(system.serves ? (system.shared ? [voice.shared] : []) : [voice.onlyLiesHere]),
    ...(system.shared || !system.serves ? [voice.title] : []),
  ]
}
