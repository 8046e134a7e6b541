/**
 * A fault of a field as a person reads it: `Number is missing`, `Component 2, liquid depth: write a length`. What has no
 * field is the fault alone. Messages are written as what comes after the name of the field.
 */
export function faultInWords(pointer: string, message: string): string {
  const field = fieldInWords(pointer)
  const text = message.replace(/[.\s]+$/, '')
  if (field === '') return `${capital(text)}.`
  return PREDICATE.test(text) ? `${field} ${text}.` : `${field}: ${text}.`
}

const PREDICATE =
  /^(is|are|has|have|must|may|cannot|can|needs|holds|contains|does|looks|was|starts|ends|gives)\b/

/** `/components/1/liquidDepth` is `Component 2, liquid depth`. */
export function fieldInWords(pointer: string): string {
  const parts: string[] = []
  for (const key of pointer.split('/').slice(1)) {
    if (/^\d+$/.test(key) && parts.length > 0)
      parts.push(`${parts.pop()!.replace(/s$/, '')} ${Number(key) + 1}`)
    else parts.push(spaced(key))
  }
  return capital(parts.filter((part) => part !== '').join(', '))
}

const spaced = (key: string): string =>
  key
    .replace(/([a-z0-9])([A-Z])/g, '$1 $2')
    .replaceAll(/[-_.]/g, ' ')
    .toLowerCase()
    .replace(/ on$/, ' date')

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1)
