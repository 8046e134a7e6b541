/**
 * A press ends after the focus has moved: what makes the page longer or shorter at that moment moves the thing that is
 * being pressed from under the thumb. So it waits until the press is over.
 */
const PRESS_MS = 250

let timer: ReturnType<typeof setTimeout> | undefined
let waiting: (() => void)[] = []

export function afterPress(what: () => void): void {
  waiting.push(what)
  clearTimeout(timer)
  timer = setTimeout(() => {
    const now = waiting
    waiting = []
    for (const it of now) it()
  }, PRESS_MS)
}
