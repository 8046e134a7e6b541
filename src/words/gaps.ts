import type { Aside, Gap, RuleGap } from '../reconcile/gap.ts'
import type { Contradicted, Doubt } from '../reconcile/reason.ts'
import type { Thing } from '../reconcile/thing.ts'
import type { Contradiction } from '../records/as-built.ts'
import type { Part } from '../records/part.ts'
import type { ParameterName } from '../rules/parameters.ts'
import { printDate } from './date.ts'
import { KEPT_FROM_NOUNS } from './kept-from.ts'
import { NOT_REACHED_WORDS, START_NOUNS } from './nouns.ts'
import { isOrAre, the, wasOrWere } from './part.ts'
import { figure } from './quantity.ts'
import { RULE_NOUNS } from './rules.ts'
import { counted, listed } from './sentence.ts'
import { silenceWords } from './silence.ts'
import { shown, THING_NOUNS } from './things.ts'

const thingOf = (thing: Thing, part: Part): string =>
  part.kind === 'system' ? `the ${THING_NOUNS[thing]}` : `the ${THING_NOUNS[thing]} of ${the(part)}`

const SIGHTED = { A: 'the tie from A', B: 'the tie from B', fix: 'the satellite fix' } as const

/** Why one fact is not known, as a clause. */
export function gapWords(it: Gap): string {
  switch (it.gap) {
    case 'not-on-record':
      return `the record does not give ${thingOf(it.thing, it.part)}`
    case 'unreadable':
    case 'contradictory':
      return doubtWords(it)
    case 'not-measured':
      return it.part.kind === 'system'
        ? `the inspection does not give ${listed(it.things.map((thing) => thingOf(thing, it.part)))}`
        : `the inspection does not give the ${listed(it.things.map((thing) => THING_NOUNS[thing]))} of ${the(it.part)}`
    case 'other-start':
      return `the record measures along ${the(it.part)} from ${START_NOUNS[it.recorded]}, the inspection from ${START_NOUNS[it.found]}`
    case 'no-dimensions':
      return it.where === 'inspection'
        ? `the inspection has no dimensions of ${the(it.part)}`
        : `the record gives neither the capacity nor the dimensions of ${the(it.part)}`
    case 'impossible':
      return `the dimensions of ${the(it.part)} cannot be right: ${listed(it.issues.map(({ message }) => message))}`
    case 'not-looked-for':
      return `the inspection did not look for ${the(it.part)}`
    case 'not-reached':
      return `${the(it.part)} ${wasOrWere(it.part)} not reached: ${NOT_REACHED_WORDS[it.why]}`
    case 'material-unknown':
      return `neither the record nor the inspection says what ${the(it.part)} is made of`
    case 'undated':
      return `the record does not date ${the(it.part)}`
    case 'day-unclear':
      return `the record dates ${the(it.part)} to ${printDate(it.on)} alone, and the missing part of the date decides`
    case 'share-unknown':
      return (
        `the system serves several parcels, and nothing gives the ${THING_NOUNS[it.thing]} of ${listed(it.parcels)}: ` +
        'find the permit of that parcel, or say it with the system'
      )
    case 'no-tank':
      return 'the record has no septic tank in service'
    case 'beside-or-instead':
      return besideOrInstead(it)
    case 'no-target':
    case 'which-target':
      return doubtWords(it)
    case 'no-absorption-area':
      return 'the record has no absorption area in service'
    case 'no-inspection':
      return 'there is no inspection'
    case 'no-baseline':
      return 'neither the record nor the inspection gives the distance between corners A and B'
    case 'no-ties':
      return `the inspection has no ties to ${the(it.part)}`
    case 'no-distance':
      return `neither the record nor the inspection says how far ${the(it.part)} ${isOrAre(it.part)} from ${KEPT_FROM_NOUNS[it.from]}`
    case 'no-corner-fix':
      return `the inspection has a satellite fix of ${the(it.part)} and no ties, and none of corner A with a bearing or corner B`
    case 'sightings-disagree':
      return `the inspection’s ties to ${the(it.part)} and its satellite fix do not fit one place: ${it.suspects.length === 1 ? '' : 'one of '}${listed(
        it.suspects.map((one) => SIGHTED[one]),
        'or',
      )} must be wrong`
    case 'ties-do-not-meet':
      return it.where === 'record'
        ? `the ties on record to ${the(it.part)} do not meet`
        : `the inspection’s ties to ${the(it.part)} do not meet`
  }
}

const VERBS = { replace: 'replaces', alter: 'alters', abandon: 'abandons' } as const

/** A contradiction of the file as a doubt. */
export const doubtOf = (it: Contradiction): Doubt =>
  'permit' in it ? it : { ...it, permits: it.permits.map(({ number }) => number) }

function claimsWords({ thing, part, claims, borneOut }: Contradicted): string {
  const stated = claims.map(({ value, permit }) => `${shown(value)} on ${permit}`).join(', ')
  const decided = borneOut
    ? `; the inspection measured ${figure(borneOut.found)}, which decides for permit ${borneOut.permit}`
    : ''
  return `${thingOf(thing, part)}: ${stated}${decided}`
}

const besideOrInstead = ({
  permit,
  part,
  among,
}: Extract<Doubt, { readonly gap: 'beside-or-instead' }>): string =>
  `repair permit ${permit} installs ${the(part)} and does not say whether it is beside ${listed(among.map(the), 'or')} or instead`

/** Where the file contradicts itself or can't be read. */
export function doubtWords(it: Doubt): string {
  switch (it.gap) {
    case 'unreadable':
      return `${thingOf(it.thing, it.part)} cannot be read on permit ${it.permit}: ${it.note}`
    case 'contradictory':
      return `the permits contradict each other on ${claimsWords(it)}`
    case 'put-in-twice': {
      const also = (it.on ?? []).map((on) => `; they contradict each other on ${claimsWords(on)}`)
      return `two permits each put in ${the(it.part)}, and neither says that it replaces the other${also.join('')}`
    }
    case 'beside-or-instead':
      return besideOrInstead(it)
    case 'approved-when':
      return `permit ${listed(it.permits)} was approved that month or year, and whether by this day is not known`
    case 'order-unclear':
      return `permits ${listed(it.permits)} are dated to the month or year alone, and which came first decides what is in the ground`
    case 'no-target':
      return `permit ${it.permit} ${VERBS[it.verb]} ${the(it.part)}, but no earlier permit put one in`
    case 'which-target':
      return `permit ${it.permit} ${VERBS[it.verb]} ${the(it.part)}, and does not say which of ${listed(it.among.map(the), 'or')} it means`
  }
}

/** Why a question does not arise. */
export function asideWords(it: Aside): string {
  switch (it.aside) {
    case 'out-of-service':
      return `${the(it.part)} ${isOrAre(it.part)} out of service and properly abandoned when pumped, crushed or filled`
    case 'not-metal':
      return `${the(it.part)} is not metal`
    case 'just-pumped':
      return `${the(it.part)} was pumped ${counted(it.days, 'day')} before the inspection and may not have refilled`
    case 'solids-measured':
      return 'scum and sludge were measured, and tell more than the years since the last pumping'
    case 'level-below-outlet':
      return `the liquid in ${the(it.part)} stood below the outlet, so distances to the outlet device tell nothing`
    case 'other-corners':
      return `the inspection measured from ${it.found[0]} and ${it.found[1]}, the record from ${it.recorded[0]} and ${it.recorded[1]}`
  }
}

const ruleOn = (rule: ParameterName): string => RULE_NOUNS[rule]

/** Why no rule answers. */
export function ruleGapWords(it: RuleGap): string {
  switch (it.state) {
    case 'undated':
      return `the file does not give the date that decides which rule on ${ruleOn(it.rule)} applies`
    case 'day-unclear':
      return `the rule on ${ruleOn(it.rule)} changed between ${printDate(it.first)} and ${printDate(it.last)}, and the file does not give the day`
    case 'not-yet':
      return `no rule on ${ruleOn(it.rule)} was in force yet; the first began on ${printDate(it.from)}`
    case 'ended':
      return `the rule on ${ruleOn(it.rule)} had ended on ${printDate(it.until)}`
    case 'no-record':
      return `this county’s rules have nothing on ${ruleOn(it.rule)}`
    case 'silent':
      return silenceWords(it.silence)
  }
}
