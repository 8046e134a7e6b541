import type { TestResult } from '../catalog/choices.ts'
import type { FoundComponent } from '../records/findings.ts'

/** What of a pump, a treatment or a disinfection unit is tested by itself. */
export const DEVICES = ['pump', 'alarm', 'floats', 'timer', 'wiring', 'disinfection'] as const
export type Device = (typeof DEVICES)[number]

const tested = (result: TestResult | null | undefined): TestResult | null =>
  (result ?? 'not-tested') === 'not-tested' ? null : result!

/** What the test of a device came to; null where nobody tested it. Bare wires are as good as a device that does not work. */
export const RESULT: { readonly [D in Device]: (found: FoundComponent) => TestResult | null } = {
  pump: ({ pumpWorks }) => tested(pumpWorks),
  alarm: ({ alarmWorks }) => tested(alarmWorks),
  floats: ({ floatsWork }) => tested(floatsWork),
  timer: ({ timerWorks }) => tested(timerWorks),
  wiring: ({ wiringCovered }) =>
    wiringCovered === true ? 'works' : wiringCovered === false ? 'does-not-work' : null,
  disinfection: ({ disinfects }) => tested(disinfects),
}
