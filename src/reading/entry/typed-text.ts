import type { Field } from '../../catalog/field.ts'

const FIGURE = /^-?(?:\d[\d,]*(?:\.\d+)?|\.\d+)$/

/**
 * What stands in one box of a form or one cell of a file, as the entry of its field takes it. What is none of what the
 * field takes stays as it was written, so that the entry's own fault can say so.
 */
export function entryOfText(field: Field, written: string, between: RegExp = /\s*[;,]\s*/): unknown {
  const text = written.trim()
  switch (field.value) {
    case 'whole':
    case 'number':
      return FIGURE.test(text) ? Number(text.replaceAll(',', '')) : text
    case 'flag':
      if (/^(?:yes|y|true|x)$/i.test(text)) return true
      return /^(?:no|n|false)$/i.test(text) ? false : text
    case 'choice':
      return chosen(field.choices, text)
    case 'choices':
    case 'lines':
      return text.split(between)
    default:
      return written
  }
}

/** A name of the trade is written with hyphens in the record: `Vitrified clay` is `vitrified-clay`. */
function chosen(choices: readonly (string | number)[], text: string): unknown {
  const plain = text.toLowerCase().replace(/\s+/g, '-')
  return choices.find((choice) => String(choice) === plain) ?? text
}
