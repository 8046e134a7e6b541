import type { OtherSystem } from '../reconcile/other-systems.ts'
import type { ReasonOf } from '../reconcile/reason.ts'
import { choiceWords } from './nouns.ts'
import { figure } from './quantity.ts'
import { sourceNote } from './rules.ts'
import { counted } from './sentence.ts'

export function loadWords({ load, over, has, needs }: ReasonOf<'load'>): string {
  switch (load) {
    case 'clear-water':
      return 'a sump, roof or footing drain runs into the system'
    case 'water-use':
      return `by the meter the house uses ${has ? figure(has) : 'more'}; the system was designed for ${needs ? figure(needs) : 'less'}`
    case 'disposer':
      if (!has || !needs) return 'there is a garbage disposer; no rule asks more of the tank for one'
      return `there is a garbage disposer: the tank holds ${figure(has)}, ${over ? 'short of' : 'against'} the ${figure(needs)} that the table requires with one`
  }
}

export const burdenWords = ({ burden, seen }: ReasonOf<'burden'>): string =>
  seen ? choiceWords(burden) : `not seen: ${choiceWords(burden)}`

export function flowTestWords(
  name: string,
  { volume, minutes, before, after, takes }: ReasonOf<'flow-test'>,
): string {
  const test = `${figure(volume)} was run in${minutes === null ? '' : ` over ${counted(minutes, 'minute')}`}`
  const from = before === null ? '' : ` from ${figure(before)}`
  return `${test}; the level in ${name} went${from} to ${figure(after)} against its invert${takes ? '' : ': it does not take the flow'}`
}

const OTHER_SYSTEM_WORDS: { readonly [F in OtherSystem]: string } = {
  'second-system': 'the inspection found a second septic system on the lot',
  'serves-another-lot': 'the inspection found that the system also serves another lot',
  'lies-on-another-lot': 'the inspection found part of the system on another lot',
}

export const otherSystemWords = ({ found, onRecord }: ReasonOf<'other-system'>): string =>
  `${OTHER_SYSTEM_WORDS[found]}, ${onRecord ? 'as the county has it' : 'and the county has nothing of it'}`
/** Half a day is told as such; other shares of a day by their figure. */
const share = (days: number): string =>
  days === 0.5 ? 'half a day’s flow' : days === 1 ? 'a day’s flow' : `${days} days’ flow`

export function roomLeftWords(
  name: string,
  { room, needs, days, below, source, comes }: ReasonOf<'room-left'>,
): string {
  const near = below
    ? `; the liquid is ${figure(below.is)} below the inlet, where ${figure(below.least)} is the least`
    : ''
  return `${name} has room for ${figure(room)} below its inlet, against ${share(days)} of ${figure(needs)}${sourceNote(source)}${near}${comes === 'too-close' ? ': too close to call' : ''}`
}

export const privyRoomWords = (
  name: string,
  { room, least, source, comes }: ReasonOf<'privy-room'>,
): string =>
  `the contents of ${name} stand ${figure(room)} below the ground, where ${figure(least)} is the least${sourceNote(source)}${comes === 'too-close' ? ': too close to call' : ''}`
