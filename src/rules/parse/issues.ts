import type { z } from 'zod'
import type { Fault } from './fault.ts'
import { kebab, type Path, type YamlTree } from './yaml-tree.ts'

type Issue = z.core.$ZodIssue

const nameOf = (path: Path): string => {
  const last = path.at(-1)
  return typeof last === 'string' ? kebab(last) : last === undefined ? 'the file' : `item ${last + 1}`
}

/** A union that failed: the branch that came nearest is the one the writer meant. */
function nearest(branches: readonly (readonly Issue[])[]): readonly Issue[] {
  const depth = (issues: readonly Issue[]): number => Math.max(0, ...issues.map((it) => it.path.length))
  return branches.toSorted((a, b) => depth(b) - depth(a) || a.length - b.length)[0] ?? []
}

/** Schema issues as faults at their lines, in the words of the pack's own keys. */
export function issueFaults(
  file: string,
  tree: YamlTree,
  issues: readonly Issue[],
  base: Path = [],
): Fault[] {
  return issues.flatMap((issue): Fault[] => {
    const path = [...base, ...(issue.path as (string | number)[])]
    if (issue.code === 'unrecognized_keys')
      return issue.keys.map((key) => ({
        file,
        ...tree.atKey([...path, key]),
        message: `unknown key "${kebab(key)}"`,
      }))
    if (issue.code === 'invalid_union' && issue.errors.length > 0)
      return issueFaults(file, tree, nearest(issue.errors), path)
    return [{ file, ...tree.at(path), message: messageOf(issue, path, tree) }]
  })
}

function messageOf(issue: Issue, path: Path, tree: YamlTree): string {
  const name = nameOf(path)
  if (!tree.has(path)) return `"${name}" is missing`
  if (issue.code === 'invalid_value')
    return `${name} must be ${issue.values.length > 1 ? 'one of ' : ''}${issue.values.join(', ')}`
  if (issue.code === 'invalid_union') {
    const options = (issue as { options?: readonly unknown[] }).options
    return options
      ? `${name} must be one of ${options.join(', ')}`
      : `${name} is none of the values it may be`
  }
  if (issue.code === 'custom') return issue.message
  const rest = issue.message.replace(/^Invalid input: /, '').replace(/^./, (letter) => letter.toLowerCase())
  return `${name}: ${rest}`
}
