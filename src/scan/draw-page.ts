import { resolve } from 'node:path'
import { fileURLToPath } from 'node:url'
import { OutsideFailure } from '../base/outside-failure.ts'
import { PROGRAM, runBounded } from './bounded-child.ts'
import { DEFAULT_LIMITS } from './limits.ts'

/** What the drawing process says, once. */
export type DrawMessage =
  | { readonly type: 'drawn'; readonly width: number; readonly height: number; readonly png: string }
  | { readonly type: 'no-such-page' }
  | { readonly type: 'refused'; readonly why: 'not-a-pdf' | 'encrypted' | 'truncated' | 'damaged' }

/** A page as a picture, or why there is none. */
export type Drawing =
  | { readonly outcome: 'drawn'; readonly width: number; readonly height: number; readonly png: Buffer }
  | { readonly outcome: 'no-such-page' }
  | { readonly outcome: 'undrawable'; readonly says: string }

const SCRIPT = fileURLToPath(new URL('./child/draw.ts', import.meta.url))
/** Each drawing is a process of a hundred megabytes or so; those beyond wait for their turn. */
const AT_ONCE = 2
const turns: (() => void)[] = []
let drawing = 0

/** One page of a PDF drawn `widthPx` wide, in a child process with the limits of a page that is read. */
export async function drawPage(path: string, page: number, widthPx: number): Promise<Drawing> {
  if (drawing >= AT_ONCE) await new Promise<void>((resolve) => turns.push(resolve))
  else drawing += 1
  try {
    return await drawNow(resolve(path), page, widthPx)
  } finally {
    const next = turns.shift()
    if (next) next()
    else drawing -= 1
  }
}

async function drawNow(path: string, page: number, widthPx: number): Promise<Drawing> {
  let said: DrawMessage | undefined
  const ending = await runBounded({
    script: SCRIPT,
    args: [path, String(page), String(widthPx)],
    mayRead: [...PROGRAM, path],
    memoryBytes: DEFAULT_LIMITS.memoryBytes,
    firstMs: DEFAULT_LIMITS.openMs,
    signal: undefined,
    onMessage: (message) => {
      said = message as DrawMessage
    },
  })
  switch (said?.type) {
    case 'drawn': {
      const { width, height, png } = said
      return { outcome: 'drawn', width, height, png: Buffer.from(png, 'base64') }
    }
    case 'no-such-page':
      return { outcome: 'no-such-page' }
    case 'refused':
      return {
        outcome: 'undrawable',
        says: 'This file cannot be opened as a PDF, so its pages cannot be shown.',
      }
    case undefined:
      if (ending.how === 'ended-outside') {
        throw new OutsideFailure(`the drawing ended: ${ending.detail}`, { retryAfterSeconds: 10 })
      }
      return {
        outcome: 'undrawable',
        says: 'This page takes too long to show. Open the file itself.',
      }
  }
}
