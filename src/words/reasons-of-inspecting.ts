import type { ReasonOf } from '../reconcile/reason.ts'
import type { Step } from '../rules/values/protocol.ts'
import { LEFT_OUT_WORDS } from './nouns.ts'

/** What a step of the protocol is, as something done to a part. */
export const STEP_DONE: { readonly [S in Step]: string } = {
  locate: 'located',
  open: 'opened',
  'read-level': 'read for its liquid level',
  'see-outlet-device': 'looked into for its outlet device',
  'check-cover': 'checked for its cover',
  'test-pump': 'tested for its pump or blower',
  'test-alarm': 'tested for its alarm',
  'test-floats': 'tested for its floats',
  'check-wiring': 'checked for its wiring',
  'test-disinfection': 'tested',
  'ask-contract': 'asked about for its service contract',
  'walk-ground': 'walked',
  'count-bedrooms': 'counted',
  'ask-occupancy': 'asked',
  'ask-pumping': 'asked',
  'ask-backup': 'asked',
  'run-water': 'run',
  'locate-outflow': 'found',
}

/** What a step of the protocol is where it is done once for the whole system. */
const OF_SYSTEM: { readonly [S in Step]?: string } = {
  'walk-ground': 'the ground over the drainfield was',
  'count-bedrooms': 'the bedrooms were',
  'ask-occupancy': 'whether anyone lives there was',
  'ask-pumping': 'when it was last pumped was',
  'ask-backup': 'whether sewage came up in the house was',
  'locate-outflow': 'where the tank’s flow goes was',
  'run-water': 'the house stood empty, and water to test the system was',
}

/** What an inspection did or left out, and why. */
export function protocolWords(partWas: string, { step, end, why }: ReasonOf<'protocol'>): string {
  const subject = OF_SYSTEM[step] ?? partWas
  const not = end === 'done' ? '' : 'not '
  const because = end === 'done' || why === null ? '' : `: ${LEFT_OUT_WORDS[why]}`
  return `${subject} ${not}${STEP_DONE[step]}${because}`
}
