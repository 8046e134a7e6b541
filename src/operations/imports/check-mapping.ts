import { duplicateNames } from '../../reading/entry/components.ts'
import type { EntryIssue } from '../../reading/entry/issues.ts'
import type { ImportHead, ImportKind, Mapping } from '../../store/imports.ts'
import { BESIDE, componentTarget, isTarget, kindOfTag, NEEDED, TARGETS } from './kinds.ts'

/** Every fault of a mapping for a file with these headings; none, and the file can be tried and run. */
export function mappingFaults(kind: ImportKind, head: ImportHead, mapping: Mapping): readonly EntryIssue[] {
  const faults: EntryIssue[] = []
  const fault = (pointer: string, message: string) => faults.push({ pointer, message })
  mapping.columns.forEach(({ column, to }, index) => {
    if (!head.headings.includes(column))
      fault(`/columns/${index}/column`, `the file has no column "${column}"`)
    if (to !== null && !isTarget(kind, to)) fault(`/columns/${index}/to`, unknown(kind, to))
  })
  for (const to of Object.keys(mapping.always)) {
    if (!isTarget(kind, to))
      fault(`/always/${to.replaceAll('~', '~0').replaceAll('/', '~1')}`, unknown(kind, to))
  }
  const used = mapping.columns.filter(({ to }) => to !== null)
  for (const index of duplicateNames(mapping.columns.map(({ to }) => to))) {
    fault(`/columns/${index}/to`, `another column already fills "${mapping.columns[index]!.to}"`)
  }
  const filled = new Set([...used.map(({ to }) => to!), ...Object.keys(mapping.always)])
  // Rows of NDJSON may bring their entry whole; what lies beside it has to be named all the same.
  const whole = head.separator === '' && head.headings.includes('entry')
  for (const among of NEEDED[kind]) {
    if (whole && !among.some((to) => BESIDE.has(to))) continue
    if (!among.some((to) => filled.has(to))) fault('/columns', `no column fills ${among.join(' or ')}`)
  }
  for (const tag of new Set([...filled].flatMap((to) => componentTarget(to)?.tag ?? []))) {
    if (kindOfTag(tag) === undefined && !filled.has(`components.${tag}.kind`))
      fault('/always', `component "${tag}" needs a kind: fill components.${tag}.kind`)
  }
  return faults
}

const unknown = (kind: ImportKind, to: string): string =>
  `"${to.slice(0, 100)}" is nothing that a file of ${kind} fills; there are ${TARGETS[kind].map((it) => it.to).join(', ')}${
    kind === 'parcels' ? '' : ', reference.<field> and components.<name>.<field>'
  }`
