import { isNode, LineCounter, parseDocument } from 'yaml'
import { err, ok, type Result } from '../../base/result.ts'
import { readEntry } from '../../reading/entry/read-entry.ts'
import { type Fault, inOrder } from '../../rules/parse/fault.ts'
import { type ParcelFile, type Story, story } from './story.ts'
import { givenOf } from './systems-of-story.ts'

/** One story's text to a story, or every fault in it at its line. Keys are those of the service's own entries. */
export function parseStory(path: string, text: string): Result<Story, readonly Fault[]> {
  const lines = new LineCounter()
  const doc = parseDocument(text, { lineCounter: lines, uniqueKeys: true, strict: true, prettyErrors: false })
  const fault = (offset: number, message: string): Fault => {
    const { line, col } = lines.linePos(offset)
    return { file: path, line, col, message }
  }
  const broken = [...doc.errors, ...doc.warnings].map(({ pos, message }) =>
    fault(pos[0], `not YAML: ${message}`),
  )
  if (broken.length > 0) return err(inOrder(broken))
  const parsed = readEntry(story, doc.toJS())
  if (parsed.ok) {
    const files: readonly ParcelFile[] = parsed.value.parcels
    const parcels = files.map((file) => {
      const given = givenOf(file, files)
      return given ? { ...file, given } : file
    })
    return ok({ ...parsed.value, parcels, slug: slugOf(path) })
  }
  return err(
    inOrder(
      parsed.error.map(({ pointer, message }) =>
        fault(offsetOf(doc, pointer), `${pointer || 'the story'}: ${message}`),
      ),
    ),
  )
}

const slugOf = (path: string): string => path.replace(/^.*[\\/]/, '').replace(/\.ya?ml$/, '')

/** Where a pointer's value begins; of one that is not there, the nearest thing around it that is. */
function offsetOf(doc: ReturnType<typeof parseDocument>, pointer: string): number {
  const path = pointer
    .split('/')
    .slice(1)
    .map((part) => part.replaceAll('~1', '/').replaceAll('~0', '~'))
  for (let length = path.length; length >= 0; length--) {
    const node = length === 0 ? doc.contents : doc.getIn(path.slice(0, length), true)
    if (isNode(node) && node.range) return node.range[0]
  }
  return 0
}
