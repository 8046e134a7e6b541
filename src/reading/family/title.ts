import type { TaughtForm } from './taught-form.ts'

const MOST_LETTERS = 80

/** What a form calls itself: its printed words of the largest line near the top, in reading order. */
export function titleOf({ sheets }: TaughtForm): string {
  const marks = sheets[0]?.marks ?? []
  const top = marks.filter(({ box }) => box.y < 0.25)
  const tallest = top.reduce((most, { box }) => Math.max(most, box.h), 0)
  const large = top.filter(({ box }) => box.h > 0.8 * tallest).sort((a, b) => a.box.y - b.box.y)
  const [first] = large
  const line = large
    .filter(({ box }) => first && Math.abs(box.y - first.box.y) < 0.6 * first.box.h)
    .sort((a, b) => a.box.x - b.box.x)
  const words = line.map(({ text }) => text).join(' ')
  return words.slice(0, MOST_LETTERS).trim() || 'A form without a title'
}
