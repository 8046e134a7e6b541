/** The process that prints: sheets come in, PDFs go out, one at a time. Ends with the process that started it. */
import { invariant } from '../../base/invariant.ts'
import type { Printed, Sheet } from './sheet.ts'
import { openTypesetter } from './typeset.ts'

/** What goes back: the print, or what is wrong with a template or a content. */
export type Answer = { readonly printed: Printed } | { readonly fault: string }

const { print } = openTypesetter()
const send = process.send?.bind(process)
invariant(send, 'the printing process is started with a channel')

process.on('message', (sheet: Sheet) => send(answer(sheet)))
process.on('disconnect', () => process.exit(0))

function answer(sheet: Sheet): Answer {
  try {
    return { printed: print(sheet) }
  } catch (fault) {
    return { fault: fault instanceof Error ? fault.message : String(fault) }
  }
}
