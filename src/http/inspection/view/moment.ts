import { dayInWords } from '../../pages/words/dates.ts'

/** `Oct 12, 2026, 9:14 am`: as the clock that wrote it reads, wherever the reader sits. */
export function momentInWords(iso: string): string {
  const match = /^(\d{4}-\d\d-\d\d)T(\d\d):(\d\d)/.exec(iso)
  if (!match) return iso
  const [, day = '', hour = '', minute = ''] = match
  const clock = `${Number(hour) % 12 || 12}:${minute} ${Number(hour) < 12 ? 'am' : 'pm'}`
  return `${dayInWords(day)}, ${clock}${iso.endsWith('Z') ? ' UTC' : ''}`
}
