import { isPlainDate, type PlainDate } from '../../base/plain-date.ts'
import { err, ok, type Result } from '../../base/result.ts'
import type { Citation } from '../citation.ts'
import type { Pack, Parameter } from '../pack.ts'
import { packFrame } from '../pack-schema.ts'
import { isParameterName, PARAMETERS } from '../parameters.ts'
import { overlap, type Span } from '../span.ts'
import { type Fault, inOrder } from './fault.ts'
import { issueFaults } from './issues.ts'
import { type Path, type YamlTree, yamlTree } from './yaml-tree.ts'

/** A pack and where its parts stand in its file, so that faults between packs can name a line too. */
export type ParsedPack = { readonly file: string; readonly pack: Pack; readonly tree: YamlTree }

type Raw = { readonly [key: string]: unknown }
const isRaw = (it: unknown): it is Raw => typeof it === 'object' && it !== null && !Array.isArray(it)
const list = (it: unknown): readonly unknown[] => (Array.isArray(it) ? it : [])

/**
 * One pack's text to a pack, or every fault in it at its line. The frame, the values and the dates are looked at
 * apart, so that a fault in one does not hide those of another.
 */
export function parsePack(file: string, text: string): Result<ParsedPack, readonly Fault[]> {
  const tree = yamlTree(file, text)
  if (tree.broken) return err(inOrder(unique(tree.faults)))
  const faults: Fault[] = [...tree.faults]
  const frame = packFrame.safeParse(tree.data)
  if (!frame.success) faults.push(...issueFaults(file, tree, frame.error.issues))

  const fault = (path: Path, message: string): void => {
    faults.push({ file, ...tree.at(path), message })
  }
  const raw = isRaw(tree.data) ? tree.data : {}
  spanFaults(list(raw.adoption), ['adoption'], fault, true)

  const values: unknown[][] = []
  const seen = new Set<unknown>()
  for (const [i, parameter] of list(raw.parameters).entries()) {
    if (!isRaw(parameter)) continue
    const { name } = parameter
    if (typeof name === 'string' && seen.has(name))
      fault(
        ['parameters', i, 'name'],
        `the parameter ${name} stands twice in this pack: put its entries together`,
      )
    seen.add(name)
    spanFaults(list(parameter.entries), ['parameters', i, 'entries'], fault, false)
    values[i] = valuesOf(file, tree, parameter, ['parameters', i], faults, fault)
  }
  if (faults.length > 0 || !frame.success) return err(inOrder(unique(faults)))
  return ok({ file, tree, pack: assemble(frame.data, values) })
}

/** Each entry's value by the schema that its parameter's name asks for. */
function valuesOf(
  file: string,
  tree: YamlTree,
  parameter: Raw,
  path: Path,
  faults: Fault[],
  fault: (path: Path, message: string) => void,
): unknown[] {
  const { name } = parameter
  if (typeof name !== 'string' || !isParameterName(name)) return []
  const { value: schema, layering } = PARAMETERS[name]
  return list(parameter.entries).map((entry, j) => {
    if (!isRaw(entry)) return undefined
    const own = [...path, 'entries', j]
    if (layering === 'gathered' && entry.citations !== undefined)
      fault([...own, 'citations'], 'here each item carries its own citations, not the entry')
    if (layering === 'nearest' && entry.citations === undefined)
      fault(
        [...own, 'citations'],
        '"citations" is missing: say where the value stands, or that it is common practice',
      )
    if (entry.value === undefined) {
      fault([...own, 'value'], '"value" is missing')
      return undefined
    }
    const parsed = schema.safeParse(entry.value)
    if (parsed.success) return parsed.data
    faults.push(...issueFaults(file, tree, parsed.error.issues, [...own, 'value']))
    return undefined
  })
}

/** Dates in order within a span, and (for entries) no day on which two of them hold. */
function spanFaults(
  entries: readonly unknown[],
  path: Path,
  fault: (path: Path, message: string) => void,
  mayOverlap: boolean,
): void {
  const spans = entries.map((it, i): { span: Span; i: number } | null => {
    const edge = (value: unknown): PlainDate | null | undefined =>
      value === null ? null : typeof value === 'string' && isPlainDate(value) ? value : undefined
    const [from, until] = isRaw(it) ? [edge(it.from), edge(it.until)] : [undefined, undefined]
    return from === undefined || until === undefined ? null : { span: { from, until }, i }
  })
  for (const it of spans) {
    if (!it) continue
    const { from, until } = it.span
    if (from !== null && until !== null && from >= until)
      fault(
        [...path, it.i, 'until'],
        `until ${until} is not after from ${from} (until is the first day it no longer holds)`,
      )
    else if (!mayOverlap)
      for (const before of spans.slice(0, it.i))
        if (before && overlap(before.span, it.span))
          fault(
            [...path, it.i, 'from'],
            `holds on days on which entry ${before.i + 1} of this parameter holds too`,
          )
  }
}

type Frame = ReturnType<typeof packFrame.parse>

function assemble(frame: Frame, values: readonly (readonly unknown[])[]): Pack {
  const parameters = frame.parameters.map((parameter, i) => ({
    ...parameter,
    entries: parameter.entries.map((entry, j) => {
      const value = values[i]![j]
      const gathered = () => (value as readonly { citations: Citation[] }[]).flatMap((item) => item.citations)
      return { ...entry, value, citations: entry.citations ?? gathered() }
    }),
  }))
  return { ...frame, parameters: parameters as unknown as readonly Parameter[] }
}

const unique = (faults: readonly Fault[]): readonly Fault[] => [
  ...new Map(faults.map((it) => [`${it.line}:${it.col}:${it.message}`, it])).values(),
]
