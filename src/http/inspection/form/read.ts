import { findingsEntry } from '../../../reading/entry/findings.ts'
import { type EntryIssue, entryIssues } from '../../../reading/entry/issues.ts'
import type { FindingsRecord } from '../../../records/findings.ts'
import { entryOf } from './entry.ts'
import { filled, type InspectionForm, type PartForm } from './typed.ts'

/** What is wrong in the fields of each step, in words that stand beside the field. `start` and `review` are steps too. */
export type Faults = { readonly [step: string]: { readonly [field: string]: string } }

export type ReadForm = {
  /** Null while something in the form can't be read. */
  readonly record: FindingsRecord | null
  readonly entry: unknown
  readonly faults: Faults
}

/** Reads a form by the same parsers as everything else that is typed; nothing of it is written a second time here. */
export function readForm(form: InspectionForm): ReadForm {
  const { entry, parts } = entryOf(form)
  const read = findingsEntry.safeParse(entry)
  const own = parts.flatMap(unfinished)
  const issues = [
    ...own,
    ...(read.success ? [] : entryIssues(read.error).map((issue) => placed(issue, parts))),
  ]
  const faults: Record<string, Record<string, string>> = {}
  for (const { step, field, says } of issues) {
    faults[step] = { [field]: says, ...faults[step] }
  }
  return { record: read.success && own.length === 0 ? read.data : null, entry, faults }
}

const LEVELS = ['levelAboveOutlet', 'levelAboveInlet'] as const

type Placed = { readonly step: string; readonly field: string; readonly says: string }

/** What only the form can know: that a pair of fields was filled by half. */
function unfinished({ id, typed }: PartForm): readonly Placed[] {
  const said = filled(typed)
  const fault = (field: string, says: string): Placed => ({ step: id, field, says })
  if (said.outcome === undefined) return [fault('outcome', 'say first whether it was found')]
  if (said.outcome !== 'found') return []
  const oneTie = (said['tie.a'] === undefined) !== (said['tie.b'] === undefined)
  return [
    ...LEVELS.flatMap((level) => {
      const side = said[`${level}.side`]
      if (said[level] !== undefined)
        return side ? [] : [fault(level, 'say whether it stands above or below the invert')]
      return side && side !== 'at' ? [fault(level, `say how far ${side} the invert it stands`)] : []
    }),
    ...(oneTie
      ? [fault(said['tie.a'] ? 'tie.b' : 'tie.a', 'a place needs both ties: write this one too')]
      : []),
  ]
}

const TIE_LACKS_CORNERS = 'say at the start which house corners A and B are'
const IS_MISSING = 'write something here'

function placed({ pointer, message }: EntryIssue, parts: readonly PartForm[]): Placed {
  const [head = '', ...rest] = pointer.slice(1).split('/')
  if (head !== 'components') {
    if (head === 'notes') return { step: 'review', field: 'notes', says: message }
    return {
      step: 'start',
      field: fieldOf([head, ...rest]),
      says: head === 'inspectedOn' ? dayMissing(message) : message,
    }
  }
  const [index = '', ...inside] = rest
  const step = parts[Number(index)]?.id ?? 'review'
  if (inside.join('/') === 'tie') return { step, field: 'tie.a', says: TIE_LACKS_CORNERS }
  return { step, field: fieldOf(inside), says: /^is missing/.test(message) ? IS_MISSING : message }
}

const dayMissing = (message: string): string =>
  message.startsWith('""') ? 'write the day of the inspection' : message

/** The field that a path into the entry was typed in: `tie/b/length` in `tie.b`, `levelAboveOutlet/below` in itself. */
function fieldOf(path: readonly string[]): string {
  const [first = '', second] = path
  if (second !== undefined && ['tie', 'fix', 'reference'].includes(first)) return `${first}.${second}`
  return first
}
