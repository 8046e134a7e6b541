import type { KeptInspection } from '../sending/kept-inspection.ts'
import { momentInWords } from './moment.ts'

/** How sending goes: `idle` before the first try. */
export type Going = 'idle' | 'sending' | 'no-signal'

/** Where the inspection is just now, said plainly: on this phone, or sent. */
export function keptWords(
  { change, saved, base, trouble, other, keptAt }: KeptInspection,
  going: Going,
  faulty: readonly string[],
  photosWaiting: number,
): string {
  if (change === 0 && !base) return 'Nothing entered yet. What you enter is kept on this phone.'
  const photos =
    photosWaiting === 0 ? '' : `, ${photosWaiting} photo${photosWaiting === 1 ? '' : 's'} with it`
  const isSaved = base !== null && change === saved && photosWaiting === 0
  if (isSaved) return 'Sent and saved as a draft.'
  const here = `Kept on this phone, ${timeOf(keptAt)}${photos}.`
  if (trouble) return `${here} Not sent: ${trouble.says}`
  if (other) return `${here} Not sent: another copy is different.`
  if (faulty.length > 0 && change > saved)
    return `${here} Not sent until this is fixed: ${faulty.join(', ')}.`
  if (going === 'no-signal') return `${here} Not sent yet: no signal.`
  return going === 'sending' ? `${here} Sending…` : here
}

/** The clock of the phone itself. */
function timeOf(iso: string): string {
  const there = new Date(iso)
  const local = new Date(there.getTime() - there.getTimezoneOffset() * 60_000).toISOString().slice(0, 16)
  return momentInWords(local).split(', ').at(-1) ?? ''
}
