import type { PlainDate } from '../../base/plain-date.ts'
import type { ItemState, OpenItem, ParcelStatus, StatusWord } from '../../reconcile/status.ts'
import type { OurText } from '../../records/whose.ts'
import type { Language } from '../language.ts'
import { ours } from '../ours.ts'
import { EN } from './en.ts'
import { ES } from './es.ts'
import { ofSeveral, systemNotes, systemTold } from './systems.ts'
import type { AgentVoice } from './voice.ts'

export const VOICES: { readonly [L in Language]: AgentVoice } = { en: EN, es: ES }

/** One open thing as anybody may read it. */
export type ItemTold = {
  readonly about: OurText
  readonly says: OurText
  readonly state: ItemState
  readonly required: OurText
  readonly due: PlainDate | null
}

/** What the county waived, as anybody may read it. */
export type WaivedTold = { readonly about: OurText; readonly says: OurText; readonly why: OurText }

export type StatusTold = {
  readonly word: StatusWord
  /** The word as people read it. */
  readonly title: OurText
  readonly sentence: OurText
  readonly items: readonly ItemTold[]
  readonly waived: readonly WaivedTold[]
  /** Where the parcel has several systems, or shares one. */
  readonly systems: readonly SystemStatusTold[]
}

/** How one system stands, as anybody may read it. */
export type SystemStatusTold = {
  readonly name: OurText
  readonly word: StatusWord
  readonly title: OurText
  readonly sentence: OurText
  readonly notes: readonly OurText[]
}

/** A parcel's status in words, for everybody who may ask for it. */
export function statusWords(
  { word, items, waived, systems = [] }: ParcelStatus,
  language: Language,
): StatusTold {
  const voice = VOICES[language]
  return {
    word,
    title: voice.word[word],
    sentence: statusSentence({ word, waived, systems }, language),
    items: items.map((item) => itemWords(item, language)),
    waived: waived.map((item) => ({
      about: aboutItem(item, language),
      says: voice.says[item.kind](item),
      why: voice.decided[item.waiver],
    })),
    systems: systems.map((system) => ({
      name: systemTold(system, language),
      word: system.word,
      title: voice.word[system.word],
      sentence: voice.sentence[system.word],
      notes: systemNotes(system, language),
    })),
  }
}

/** A status in one sentence, the same wherever it is told. */
export const statusSentence = (
  { word, waived, systems = [] }: Omit<ParcelStatus, 'items'>,
  language: Language,
): OurText =>
  ofSeveral(
    word === 'resolved' && waived.length > 0
      ? VOICES[language].resolvedByWaiver
      : VOICES[language].sentence[word],
    word,
    systems,
    language,
  )

/** The part and, where the parcel has several systems, of which. */
function aboutItem({ part, system }: OpenItem, language: Language): OurText {
  const about = VOICES[language].part(part)
  return system ? ours`${about} (${systemTold(system, language)})` : about
}

export function itemWords(item: OpenItem, language: Language): ItemTold {
  const voice = VOICES[language]
  return {
    about: aboutItem(item, language),
    says: voice.says[item.kind](item),
    state: item.state,
    required: requiredWords(item, voice),
    due: item.due,
  }
}

const requiredWords = ({ required, part }: OpenItem, voice: AgentVoice): OurText =>
  required.by === 'rule' ? voice.act[required.act](part) : voice.decided[required.act]
