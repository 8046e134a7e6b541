import type { Word } from '../../../reading/page-words.ts'
import type { Chance } from './chance.ts'
import type { DrawnWord, Part, Sheet } from './sheet.ts'

/** A word as a reader saw it, with the part of the page that each of its letters is of. */
export type SeenWord = Word & { readonly parts: readonly Part[] }

/**
 * What readers of pictures take letters for, by the alignment of what they read with what was printed on 1,900 words of
 * graded scans (forms that the first contact is not measured on), and what proof-readers know. An empty text is a lost letter.
 */
const MISREAD: Record<string, string> = {
  '0': 'O|o|6|8|D|Q',
  '1': 'l|I|i|7|!|t',
  '2': 'Z|z|7|?',
  '3': '8|5|S|B',
  '4': 'A|1|9|d',
  '5': 'S|s|6|3|8',
  '6': 'b|G|8|5|0',
  '7': '1|T|/|?',
  '8': 'B|3|6|S|0',
  '9': 'g|q|4|0',
  "'": '|`|"|.|,|\'|-',
  '"': "'||''|*|”|n|°",
  '.': '|,|-|',
  ',': '.||;',
  '-': '|~|.|—|_|',
  ':': '|.|;|,',
  '/': '1|I|l||7',
  a: 'o|e|s|n',
  b: 'h|6|o',
  c: 'e|o|C|',
  d: 'cl|o|a',
  e: 'c|o|s|a',
  f: 't|r|F',
  g: 'q|9|y|o',
  h: 'b|n|li',
  i: 'l|1|j|t|',
  k: 'h|x|R',
  l: '1|I|i|t|',
  m: 'rn|n|in|ni',
  n: 'r|m|u|h|ri',
  o: '0|e|a|c',
  p: 'o|n|D',
  r: 'n|t|f|',
  s: 'a|e|8|5|z',
  t: 'f|l|r|i|',
  u: 'n|o|ii|v',
  v: 'y|u|r',
  w: 'v|u|vv',
  x: 'X|k|z|',
  y: 'v|g|j',
  B: '8|R|3|E',
  C: 'G|O|c|(',
  D: 'O|0|B|U',
  E: 'F|B|L|C',
  G: '6|C|O|S',
  I: 'l|1|T||',
  L: 'I|l|1|i',
  N: 'M|H|W|A',
  O: '0|Q|D|o',
  P: 'F|R|p|D',
  R: 'B|P|K|H',
  S: '5|8|s|$',
  T: 'I|7|1|F',
  Z: '2|z|7',
  '#': '8|4|H|*',
  '[': '|L|I|(',
  ']': '|J|I|1|)',
  _: '-|~||',
}

/** How badly a picture of a page was read; each share is of words, letters or gaps. */
type Damage = {
  readonly letters: number
  readonly lostWords: number
  readonly lostGaps: number
  readonly madeGaps: number
  readonly lostLines: number
  readonly jitter: number
}

function damageOf(roll: Chance): Damage {
  const grade = roll.unit()
  const worst = grade < 0.35 ? 0.01 : grade < 0.65 ? 0.04 : grade < 0.88 ? 0.12 : 0.28
  return {
    letters: roll.between(0, worst),
    lostWords: roll.between(0, worst * 0.6),
    lostGaps: roll.chance(0.5) ? roll.between(0, 0.04) : roll.between(0, 0.3),
    madeGaps: roll.between(0, worst * 0.5),
    lostLines: roll.between(0, worst * 0.4),
    jitter: roll.between(0, 0.12),
  }
}

/** A page as a reader sees it: moved, scaled and askew; on a picture with letters, gaps and words lost. */
export function seenPage(sheet: Sheet, roll: Chance, isPicture: boolean): SeenWord[] {
  const scale = roll.between(0.9, 1.05)
  const [dx, dy] = [roll.between(-0.03, 0.05), roll.between(-0.03, 0.05)]
  const lean = isPicture && roll.chance(0.4) ? roll.between(-0.006, 0.006) : 0
  const damage = isPicture ? damageOf(roll) : null
  const lineHeights = isPicture && roll.chance(0.7)
  const placed = sheet.words
    .filter(({ x, y, w }) => x + w > 0 && x < sheet.width && y > 0 && y < sheet.height)
    .map((word): SeenWord => {
      const text = word.segs.map(({ t }) => t).join('')
      const parts = word.segs.flatMap(({ t, part }) => [...t].map(() => part))
      const x = (word.x / sheet.width) * scale + dx
      const shrink = isPicture && !lineHeights && !/[A-Zbdfhklt0-9]/.test(text) ? 0.72 : 1
      const shake = damage ? roll.between(-damage.jitter, damage.jitter) * word.h : 0
      return {
        text,
        parts,
        confidence: 1,
        box: {
          x,
          y: ((word.y + shake) / sheet.height) * scale + dy + x * lean,
          w: (word.w / sheet.width) * scale,
          h: (word.h / sheet.height) * scale * shrink * (damage ? roll.between(0.92, 1.1) : 1),
        },
        ...struckFlag(word, roll, isPicture),
      }
    })
  return damage ? misread(placed, roll, damage) : placed
}

function struckFlag({ struck }: DrawnWord, roll: Chance, isPicture: boolean): { struck?: true } {
  if (!isPicture) return {}
  return (struck ? roll.chance(0.85) : roll.chance(0.003)) ? { struck: true } : {}
}

function misread(words: readonly SeenWord[], roll: Chance, damage: Damage): SeenWord[] {
  const kept: SeenWord[] = []
  let lostUntil = -1
  words.forEach((word, index) => {
    if (roll.chance(damage.lostLines * 0.2)) lostUntil = index + roll.whole(1, 6)
    if (index <= lostUntil || roll.chance(damage.lostWords)) return
    // Leaders and blanks come as a few marks or not at all.
    if (/^[_.]{3,}$/.test(word.text) && roll.chance(0.6)) return
    const seen = lettersOf(word, roll, damage.letters)
    if (seen.text === '') return
    const before = kept.at(-1)
    const gap = before ? seen.box.x - before.box.x - before.box.w : 1
    const isClose =
      before && Math.abs(before.box.y - seen.box.y) < 0.3 * seen.box.h && gap >= 0 && gap < 0.9 * seen.box.h
    if (before && isClose && roll.chance(damage.lostGaps)) {
      kept[kept.length - 1] = {
        ...before,
        text: before.text + seen.text,
        parts: [...before.parts, ...seen.parts],
        box: { ...before.box, w: seen.box.x + seen.box.w - before.box.x },
      }
    } else if (seen.text.length > 3 && roll.chance(damage.madeGaps)) kept.push(...cutInTwo(seen, roll))
    else kept.push(seen)
  })
  return kept
}

function lettersOf(word: SeenWord, roll: Chance, share: number): SeenWord {
  let text = ''
  const parts: Part[] = []
  ;[...word.text].forEach((letter, at) => {
    const part = word.parts[at] ?? word.parts.at(-1)!
    const misreadAs = roll.chance(share) ? MISREAD[letter] : undefined
    const seen = misreadAs === undefined ? letter : roll.of(misreadAs)
    for (const one of seen) {
      text += one
      parts.push(part)
    }
  })
  return { ...word, text, parts }
}

function cutInTwo(word: SeenWord, roll: Chance): SeenWord[] {
  const at = roll.whole(1, word.text.length - 1)
  const share = at / word.text.length
  return [
    {
      ...word,
      text: word.text.slice(0, at),
      parts: word.parts.slice(0, at),
      box: { ...word.box, w: word.box.w * share },
    },
    {
      ...word,
      text: word.text.slice(at),
      parts: word.parts.slice(at),
      box: { ...word.box, x: word.box.x + word.box.w * share, w: word.box.w * (1 - share) },
    },
  ]
}
