import { joined } from './joined.ts'

/** Text that is markup already. Only `html` and `markup` make it; a plain string never is. */
export class Html {
  readonly text: string
  constructor(text: string) {
    this.text = text
  }
  toString(): string {
    return this.text
  }
}

/** What may stand in a template: text (escaped), markup (as it is), lists of either; nothing for null and false. */
export type Slot = string | number | Html | null | undefined | false | readonly Slot[]

const NAMES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
}
const DANGEROUS = /[&<>"']/
const escaped = (text: string): string =>
  DANGEROUS.test(text) ? text.replace(/[&<>"']/g, (sign) => NAMES[sign]!) : text

function written(slot: Slot): string {
  if (typeof slot === 'string') return escaped(slot)
  if (slot instanceof Html) return slot.text
  if (typeof slot === 'number') return String(slot)
  if (slot === null || slot === undefined || slot === false) return ''
  let text = ''
  for (const part of slot) text += written(part)
  return text
}

/**
 * Markup with its slots escaped, for text between tags and for attribute values in double quotes. There is no slot for
 * a tag's or an attribute's name, and none inside script or style, because no page has either inline.
 *
 * A template is laid out as a tree; `joined` says which of its line breaks are layout.
 */
export function html(strings: TemplateStringsArray, ...slots: readonly Slot[]): Html {
  const parts = joined(strings)
  let text = parts[0]!
  for (let at = 0; at < slots.length; at++) text += written(slots[at]) + parts[at + 1]!
  return new Html(text)
}

/** Markup made elsewhere that escapes for itself, as the site plan's SVG. Never for text that a person wrote. */
export const markup = (text: string): Html => new Html(text)

/** An attribute that is there or not: `<option ${flag('selected', isChosen)}>`. */
export const flag = (
  name: 'selected' | 'checked' | 'open' | 'required' | 'multiple' | 'autofocus',
  on: boolean,
): Html | null => (on ? new Html(name) : null)
