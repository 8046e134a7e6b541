/** Letters that a figure is often read as, and the figure (common practice of proof-readers). */
const LETTER_AS_FIGURE: Record<string, string> = {
  O: '0',
  o: '0',
  Q: '0',
  D: '0',
  l: '1',
  I: '1',
  i: '1',
  '|': '1',
  '!': '1',
  ']': '1',
  '[': '1',
  Z: '2',
  z: '2',
  S: '5',
  s: '5',
  $: '5',
  B: '8',
  G: '6',
  b: '6',
  T: '7',
  g: '9',
  q: '9',
}

export type Corrected = { readonly text: string; readonly changed: boolean }

/**
 * Figures where a reader of pictures saw letters: `1,OO0` is `1,000`. Only a run that is mostly figures already, or
 * has one beside the letter, is touched; the length of the text stays the same, so that places in it stay true.
 */
export function correctedFigures(text: string): Corrected {
  let changed = false
  const marked = text.replace(/(?<=\d\s?['’‘′]\s?[-–—]?\s?)[OoQDlI|](?=\s?["”“'’])/g, (letter) => {
    changed = true
    return LETTER_AS_FIGURE[letter] ?? letter
  })
  const corrected = marked.replace(
    /[0-9OoQDlIi|![\]ZzSs$BGbTgq][0-9OoQDlIi|![\]ZzSs$BGbTgq.,]*/g,
    (run, at: number) => {
      const before = marked[at - 1] ?? ' '
      const after = marked[at + run.length] ?? ' '
      const figures = [...run].filter((character) => character >= '0' && character <= '9').length
      const letters = [...run].filter((character) => character in LETTER_AS_FIGURE).length
      if (figures === 0 || letters === 0 || letters > figures + 1) return run
      if (/[A-Za-z]/.test(before) || /[A-Za-z]/.test(after)) return run
      changed = true
      return [...run].map((character) => LETTER_AS_FIGURE[character] ?? character).join('')
    },
  )
  return { text: corrected, changed }
}

/** Figures often taken for each other: 0/O, 1/7, 1/6, 3/8, 5/S, and what a worn type or a fax adds (6/8, 0/6, 4/9). */
export const CONFUSED: readonly (readonly [string, string])[] = [
  ['1', '7'],
  ['1', '6'],
  ['3', '8'],
  ['6', '8'],
  ['0', '6'],
  ['0', '8'],
  ['5', '6'],
  ['4', '9'],
  ['1', '4'],
  ['2', '7'],
  ['5', '8'],
  ['3', '5'],
]

/** The readings of a number one figure away by a usual confusion. */
export function confusedReadings(text: string): string[] {
  const readings: string[] = []
  for (let at = 0; at < text.length; at++) {
    for (const [a, b] of CONFUSED) {
      const other = text[at] === a ? b : text[at] === b ? a : undefined
      if (other !== undefined) readings.push(text.slice(0, at) + other + text.slice(at + 1))
    }
  }
  return readings
}
