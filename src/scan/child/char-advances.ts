const NARROW = new Set([..."ijl.,:;'|!`"])
const SLIM = new Set([...'ftrI()[]/\\-" '])
const WIDE = new Set([...'mwMW@%_'])

/** Usual widths of letters in ems, as in common sans and serif faces; a fixed-pitch run comes out close enough. */
const advance = (character: string): number => {
  if (NARROW.has(character)) return 0.26
  if (SLIM.has(character)) return 0.33
  if (WIDE.has(character)) return 0.85
  return character >= 'A' && character <= 'Z' ? 0.68 : 0.54
}

/** Where each character of a text begins, in ems from its start; one more entry for its end. */
export function charAdvances(text: string): number[] {
  const starts = [0]
  for (let index = 0; index < text.length; index++) {
    starts.push(starts[index]! + advance(text[index]!))
  }
  return starts
}
