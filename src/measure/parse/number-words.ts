const UNITS = (
  'zero one two three four five six seven eight nine ten eleven twelve thirteen fourteen fifteen sixteen ' +
  'seventeen eighteen nineteen'
).split(' ')
const TENS = '_ _ twenty thirty forty fifty sixty seventy eighty ninety'.split(' ')
const PARTS: Readonly<Record<string, number>> = {
  half: 2,
  halve: 2,
  third: 3,
  quarter: 4,
  fourth: 4,
  eighth: 8,
  sixteenth: 16,
}

const any = (words: readonly string[]): string => words.filter((word) => word !== '_').join('|')
const ONE = `${any(UNITS)}|${any(TENS)}|hundred|thousand`
const RUN = new RegExp(`\\b(?:an? (?=hundred|thousand))?(?:${ONE})(?:[ -](?:and )?(?:${ONE}))*\\b`, 'gi')
const FRACTION = new RegExp(
  `(?:\\band )?\\b(?:(an?|${any(UNITS)})[ -])?(${Object.keys(PARTS).join('|')})s?(?: of)?(?: an?)?\\b`,
  'gi',
)
const TWICE = /(\d[\d,]*(?:\.\d+)?) ?\( ?(\d[\d,]*(?:\.\d+)?) ?\)/g

/**
 * Numbers in words put into figures, as letters and deeds write them: `four feet six and one-half inches` is
 * `4 feet 6 1/2 inches`, `fifteen hundred gallons` is `1500 gallons`, and `two (2)`, the same said twice, is `2`. Words
 * that are no number together (`two one`), and two figures that differ, stay as they are, to be refused for it.
 */
export const numberWordsInFigures = (text: string): string =>
  text
    .replace(FRACTION, (written, count: string | undefined, part: string) => {
      const over = count === undefined || /^an?$/i.test(count) ? 1 : UNITS.indexOf(count.toLowerCase())
      const under = PARTS[part.toLowerCase()]!
      return over > 0 && over < under ? ` ${over}/${under}` : written
    })
    .replace(RUN, (written) => String(numberOf(written) ?? countAndSize(written) ?? written))
    .replace(TWICE, (written, first: string, second: string) =>
      first.replaceAll(',', '') === second.replaceAll(',', '') ? second : written,
    )
    .replace(/ +/g, ' ')
    .trim()

/** `two five hundred` is two of five hundred each, `2 500`; a count before anything below a hundred is no size. */
function countAndSize(run: string): string | undefined {
  const [count = '', ...size] = run.split(/[ -]/)
  const [many, each] = [numberOf(count), size.length === 0 ? undefined : numberOf(size.join(' '))]
  return many !== undefined && many > 0 && each !== undefined && each >= 100 ? `${many} ${each}` : undefined
}

/** Whole number of a run of number words, or undefined where they make none. */
function numberOf(run: string): number | undefined {
  let thousands = 0
  let below = 0
  for (const word of run.toLowerCase().split(/[ -]/)) {
    if (word === 'and') continue
    const unit = word === 'a' || word === 'an' ? 1 : UNITS.indexOf(word)
    const ten = TENS.indexOf(word)
    if (word === 'thousand') {
      if (thousands > 0 || below === 0) return undefined
      thousands = below * 1000
      below = 0
    } else if (word === 'hundred') {
      if (below === 0 || below >= 100) return undefined
      below *= 100
    } else if (ten >= 0) {
      if (below % 100 !== 0) return undefined
      below += ten * 10
    } else {
      const room = unit < 10 ? below % 10 === 0 && below % 100 !== 10 : below % 100 === 0
      if (!room || (unit === 0 && run.length > word.length)) return undefined
      below += unit
    }
  }
  return thousands + below
}
