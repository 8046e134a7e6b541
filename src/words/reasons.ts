import type { AgainstLeast } from '../reconcile/asked-of-code.ts'
import type { Outcome } from '../reconcile/outcome.ts'
import type { Quantity } from '../reconcile/quantity.ts'
import type { ReasonOf, Sign, SolidsAnswer, TypeFact } from '../reconcile/reason.ts'
import { printDate } from './date.ts'
import { asideWords, doubtWords, gapWords, ruleGapWords } from './gaps.ts'
import { CONDITION_WORDS, choiceWords, KIND_ROLES, MATERIAL_NOUNS, SEARCH_NOUNS } from './nouns.ts'
import { isOrAre, itOrThem, the, wasOrWere } from './part.ts'
import { figure } from './quantity.ts'
import {
  acceptedWords,
  compartmentsWords,
  constructionWords,
  pumpingIntervalWords,
  requiredPartWords,
  requires,
} from './reasons-of-building.ts'
import { protocolWords } from './reasons-of-inspecting.ts'
import { defectWords, stretchesWords } from './reasons-of-line.ts'
import {
  burdenWords,
  flowTestWords,
  loadWords,
  otherSystemWords,
  privyRoomWords,
  roomLeftWords,
} from './reasons-of-load.ts'
import { sourceNote } from './rules.ts'
import { counted, listed } from './sentence.ts'
import { distanceRecordWords, setbackWords } from './setback.ts'
import { THING_NOUNS } from './things.ts'

type Told = Pick<Outcome, 'subject' | 'reason'>

/**
 * Why an outcome is what it is, as one clause with the numbers in it: for reviewers and inspectors, who may see the
 * permit's and the firm's own words.
 */
export function reasonWords({ subject, reason }: Told): string {
  const name = the(subject)
  switch (reason.is) {
    case 'unknown':
      return reason.gaps.map(gapWords).join('; ')
    case 'not-asked':
      return reason.asides.map(asideWords).join('; ')
    case 'no-rule':
      return reason.rules.map(ruleGapWords).join('; ')
    case 'permits-on-file':
      return `${counted(reason.count, 'approved permit')} on file by ${printDate(reason.by)}`
    case 'never-approved':
      return `permit ${listed(reason.permits)} is on file without a final approval by ${printDate(reason.by)}: it does not show that anything was built`
    case 'no-permit':
      return 'no permit for a septic system is on file for this parcel'
    case 'unclear':
      return doubtWords(reason.doubt)
    case 'capacity-record':
      return capacityRecord(name, reason)
    case 'capacity-code': {
      const holds = reason.tanks === 1 ? `${name} holds` : 'the tanks together hold'
      return `${holds} ${figure(reason.found)}; ${requires(reason.occasion)} ${figure(reason.least)} for ${design(reason)}${sourceNote(reason.source)}${close(reason.comes)}`
    }
    case 'absorption-code':
      return `the absorption area is ${figure(reason.provided)}; ${requires(reason.occasion)} ${figure(reason.least)} for ${design(reason)} ${reason.perc ? `at ${figure(reason.perc)}` : `in ${reason.soil ?? 'this soil'}`}${sourceNote(reason.source)}${close(reason.comes)}`
    case 'construction':
      return constructionWords(name, reason)
    case 'compartments':
      return compartmentsWords(reason)
    case 'required-part':
      return requiredPartWords(name, reason)
    case 'accepted':
      return acceptedWords(name, reason)
    case 'pumping-interval':
      return pumpingIntervalWords(reason)
    case 'absorption-record':
      return absorptionRecord(name, reason)
    case 'other-system':
      return otherSystemWords(reason)
    case 'bedrooms':
      return `designed for ${counted(reason.designed, 'bedroom')}; the inspection counted ${reason.counted}`
    case 'found':
      return `${name} ${wasOrWere(subject)} found`
    case 'searched': {
      const search = `${wasOrWere(subject)} searched for by ${listed(reason.by.map((method) => SEARCH_NOUNS[method]))}${reason.within ? ` within ${reason.within} of the expected place` : ''}`
      return subject.onRecord
        ? `${name} ${isOrAre(subject)} on record, ${search}, and ${wasOrWere(subject)} not found`
        : `${name} ${search} and ${wasOrWere(subject)} not found; every septic tank needs one (common practice)`
    }
    case 'still-there':
      return `${name} ${isOrAre(subject)} still there: ${outOfService('it', reason)}`
    case 'not-on-record':
      return reason.formerly
        ? `${name} ${wasOrWere(subject)} found and nothing in service on record matches; ${outOfService(the(reason.formerly.part), reason.formerly)}`
        : `${name}${role(subject)} ${wasOrWere(subject)} found and no approved permit shows ${itOrThem(subject)}`
    case 'same-material':
      return `${name} ${isOrAre(subject)} ${MATERIAL_NOUNS[reason.material]}, as recorded`
    case 'other-material':
      return `${name}: the record has ${MATERIAL_NOUNS[reason.recorded]}, the inspection found ${MATERIAL_NOUNS[reason.found]}`
    case 'other-pipe':
      return `${name}: ${pipeChanges(reason)}; no approved permit shows the change`
    case 'stretches':
      return stretchesWords(name, reason)
    case 'defect':
      return defectWords(name, reason)
    case 'replaced-under-permit':
      return `${the(reason.former)} of ${MATERIAL_NOUNS[reason.from]} was replaced by ${MATERIAL_NOUNS[reason.to]} under permit ${reason.permit}${reason.approvedOn ? `, approved ${printDate(reason.approvedOn)}` : ''}; the inspection found it so`
    case 'same-type':
      return `record and inspection agree on ${name} in ${listed(reason.facts.map((fact) => FACT_NOUNS[fact]))}`
    case 'other-type':
      return `record and inspection differ on ${name} in ${reason.facts
        .map(
          ({ fact, recorded, found }) =>
            `${FACT_NOUNS[fact]}: ${choiceWords(String(recorded))} on record, ${choiceWords(String(found))} found`,
        )
        .join('; ')}`
    case 'apart':
      return `${name} ${wasOrWere(subject)} found ${figure(reason.distance)} from where the record’s ties put ${itOrThem(subject)}${reason.elsewhere ? '' : ', no farther than measurement explains'}${reason.mirrored ? '; the record gives no side, so both places where its ties meet were compared' : ''}`
    case 'setback':
      return setbackWords(name, isOrAre(subject), reason)
    case 'distance-record':
      return distanceRecordWords(name, reason)
    case 'level':
      return `the liquid in ${name} is ${levelWords(reason.height, reason.against)}${reason.comes === 'near' ? `: too close to the tolerance of ${figure(reason.tolerance)} to call` : ''}${(reason.around ?? []).map((it) => `; ${AROUND[it]}`).join('')}`
    case 'solids':
      return `${name}, by the rule “${reason.rule}”${sourceNote(reason.source)}: ${reason.conditions.map(conditionWords).join('; ')}`
    case 'condition':
      return `${name} ${isOrAre(subject)} ${CONDITION_WORDS[reason.seen]}${reason.words ? `: ${reason.words}` : ''}`
    case 'cover':
      return reason.secured
        ? `the cover of ${name} is secured`
        : `${coverIs(name, reason)}: someone can fall in`
    case 'flow-test':
      return flowTestWords(name, reason)
    case 'room-left':
      return roomLeftWords(name, reason)
    case 'privy-room':
      return privyRoomWords(name, reason)
    case 'burden':
      return burdenWords(reason)
    case 'load':
      return loadWords(reason)
    case 'top':
      return reason.holds
        ? `the top of ${name} holds`
        : `a probe goes through the top of ${name}: it does not carry a person`
    case 'sign':
      return reason.seen ? choiceWords(reason.sign) : NO_SIGN[reason.sign]
    case 'equipment':
      return reason.device === 'wiring'
        ? `the wiring of ${name} ${reason.result === 'works' ? 'is covered' : 'lies bare'}`
        : `the ${THING_NOUNS[reason.device]} of ${name} ${choiceWords(reason.result)}`
    case 'contract':
      return `the service contract of ${name} is ${choiceWords(reason.contract)}`
    case 'protocol':
      return protocolWords(`${name} ${wasOrWere(subject)}`, reason)
    case 'low-level':
      return lowLevel(name, reason)
    case 'metal-age':
      return `${name} is steel and was permitted in ${reason.permitted}; the rule presumes failure after ${figure(reason.limit)}${sourceNote(reason.source)}`
    case 'work-since':
      return `work was approved after the inspection of ${printDate(reason.inspectedOn)}: permit ${reason.permits
        .map(({ number, approvedOn }) => `${number} (approved ${printDate(approvedOn)})`)
        .join(', ')}`
    case 'counts':
      return reason.until === null
        ? `the inspection was on ${printDate(reason.inspectedOn)}`
        : `the inspection of ${printDate(reason.inspectedOn)} ${reason.over ? 'counted' : 'counts'} for a transfer until ${printDate(reason.until)}${sourceNote(reason.source)}`
  }
}

const SURFACES: { readonly [S in ReasonOf<'absorption-record'>['surface']]: string } = {
  bottom: 'by its bottom',
  sidewall: 'by its sidewall',
  'bottom-and-sidewall': 'by its bottom and sidewall',
  'bottom-and-one-foot-of-sidewall': 'by its bottom and a foot of sidewall',
}

const absorptionRecord = (
  name: string,
  { computed, recorded, tolerance, by, surface, comes }: ReasonOf<'absorption-record'>,
): string =>
  `the dimensions of ${name} ${by === 'inspection' ? 'as found' : 'on record'} come to ${figure(computed)} ${SURFACES[surface]}; the record states ${figure(recorded)} (±${figure(tolerance)} for what is dug)${comes === 'too-rough' ? ': these dimensions are too rough to tell' : ''}`

const AROUND = {
  'heavy-rain': 'it had rained heavily in the days before',
  thaw: 'the ground was thawing',
  'ground-water': 'ground water stood as high as the drainfield',
} as const

function coverIs(name: string, { missing, outOfUse }: ReasonOf<'cover'>): string {
  const was = outOfUse ? `${name}, which is out of use, was left` : missing ? `${name} is` : ''
  return missing || outOfUse
    ? `${was} ${missing ? 'open' : 'with a cover that is not secured'}`
    : `the cover of ${name} is not secured`
}

const design = ({
  bedrooms,
  flow,
}: {
  readonly bedrooms: number | null
  readonly flow?: Quantity
}): string => (bedrooms === null ? (flow ? figure(flow) : 'this use') : counted(bedrooms, 'bedroom'))

const close = (comes: AgainstLeast): string => (comes === 'too-close' ? ': too close to call' : '')

function capacityRecord(
  name: string,
  { found, recorded, tolerance, permit, comes }: ReasonOf<'capacity-record'>,
): string {
  const numbers = `${name} holds ${figure(found)}; the record says ${figure(recorded)} (±${figure(tolerance)} for nominal tank sizes)${permit === undefined ? '' : `, by permit ${permit}, which the measurement bears out against another`}`
  switch (comes) {
    case 'agrees':
    case 'smaller':
    case 'larger':
      return numbers
    case 'agrees-by-uncertainty':
      return `${numbers}: it agrees only because of the measurement’s uncertainty`
    case 'too-rough':
      return `${numbers}: these measurements are too rough to tell`
  }
}

const outOfService = (
  name: string,
  { standing, permit }: { readonly standing: 'replaced' | 'abandoned'; readonly permit: string | null },
): string => `the record has ${name} as ${standing}${permit ? ` by permit ${permit}` : ''}`

/** A tank or a well that is called so needs no explaining. */
function role({ kind, label }: Outcome['subject']): string {
  const does = KIND_ROLES[kind]
  if (does === null) return ''
  return kind === 'tank' && label.toLowerCase().includes(kind) ? '' : `, which ${does},`
}

const FACT_NOUNS: { readonly [F in TypeFact]: string } = {
  kind: 'type',
  shape: 'shape',
  compartments: 'compartments',
  count: 'number of units',
}

const pipeChanges = ({ material, size }: ReasonOf<'other-pipe'>): string =>
  [
    ...(material
      ? [
          `the record has ${MATERIAL_NOUNS[material.recorded]}, the inspection found ${MATERIAL_NOUNS[material.found]}`,
        ]
      : []),
    ...(size
      ? [`the record has ${figure(size.recorded)} pipe, the inspection found ${figure(size.found)}`]
      : []),
  ].join('; ')

const levelWords = ({ value, unit }: Quantity, against: 'outlet' | 'inlet'): string =>
  Math.abs(value * 12) < 0.05
    ? `at the ${against} invert`
    : `${figure({ value: Math.abs(value), unit })} ${value > 0 ? 'above' : 'below'} the ${against} invert`

const NO_SIGN: { readonly [S in Sign]: string } = {
  backup: 'no sewage has backed up into the house',
  'pipe-to-open': 'no pipe carries sewage to the open',
  discharge: 'no sewage discharges but to the drainfield',
  surfacing: 'no sewage or effluent is on the surface',
  dye: 'dye was used and not seen',
  'run-back': 'no liquid ran back from the outlet during pumping',
  'wet-ground': 'the ground over the drainfield is not wet',
  'lush-ground': 'the ground over the drainfield is not unusually green',
}

function lowLevel(
  name: string,
  { height, missing, inflow, vacant, comes, source }: ReasonOf<'low-level'>,
): string {
  const is = `the liquid in ${name} is ${levelWords(height, 'outlet')}, about ${figure(missing)} short`
  const since =
    inflow === null ? '' : `; about ${figure(inflow)} flowed in since it was pumped${sourceNote(source)}`
  switch (comes) {
    case 'leaks':
      return `${is}${since}${inflow === null ? '' : ', which should have filled it'}`
    case 'refilling':
      return `${is}${since}: it has not had time to refill`
    case 'read-again':
      return `${is}${since}: ${vacant ? 'the house is empty, so' : 'too little is known to say whether it leaks;'} refill it and read it again`
  }
}

const SOLIDS_COMES: { readonly [C in SolidsAnswer['comes']]: string } = {
  due: 'due',
  'not-due': 'not due',
  'too-close-to-call': 'too close to call',
  'cannot-tell': 'cannot tell',
}

function conditionWords({ of, found, limit, comes }: SolidsAnswer): string {
  const what = of === 'share' ? THING_NOUNS['solids-share'] : THING_NOUNS[of]
  if (found === null || limit === null) return `${what} not read`
  const share = of === 'share' ? ' of the liquid depth' : ''
  return `${what} ${figure(found)}${share}, to be pumped ${of === 'share' ? `above ${figure(limit)}` : `at ${figure(limit)} or less`} (${SOLIDS_COMES[comes]})`
}
