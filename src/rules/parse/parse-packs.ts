import { err, ok, type Result } from '../../base/result.ts'
import { type RuleBook, ruleBook } from '../book.ts'
import { JURISDICTION_KINDS, type PackId, placeOf } from '../pack.ts'
import { PARAMETERS } from '../parameters.ts'
import { overlap } from '../span.ts'
import { type Fault, inOrder } from './fault.ts'
import { type ParsedPack, parsePack } from './parse-pack.ts'
import type { Path } from './yaml-tree.ts'

/** A pack's file: its path inside the folder of packs (`massachusetts/setbacks.yaml`) and its text. */
export type PackText = { readonly path: string; readonly text: string }

/** Every pack together to a rule book, or every fault of every file. */
export function parsePacks(texts: readonly PackText[]): Result<RuleBook, readonly Fault[]> {
  const faults: Fault[] = []
  const parsed: ParsedPack[] = []
  for (const { path, text } of texts) {
    const result = parsePack(path, text)
    if (result.ok) parsed.push(result.value)
    else faults.push(...result.error)
  }
  // A pack that is itself faulty still exists: whoever extends it is not to blame.
  const broken = texts
    .map(({ path }) => idOf(path))
    .filter((id) => !parsed.some(({ pack }) => pack.pack === id))
  faults.push(...betweenPacks(parsed, new Set(broken)))
  return faults.length > 0 ? err(inOrder(faults)) : ok(ruleBook(parsed.map(({ pack }) => pack)))
}

const idOf = (path: string): PackId =>
  path
    .replace(/\.ya?ml$/, '')
    .split('/')
    .slice(-2)
    .join('/')

function betweenPacks(parsed: readonly ParsedPack[], broken: ReadonlySet<PackId>): Fault[] {
  const faults: Fault[] = []
  const byId = new Map<PackId, ParsedPack>()
  const fault = (at: ParsedPack, path: Path, message: string): void => {
    faults.push({ file: at.file, ...at.tree.at(path), message })
  }
  for (const it of parsed) {
    const { pack } = it.pack
    const twin = byId.get(pack)
    if (twin) fault(it, ['pack'], `the pack ${pack} is also in ${twin.file}`)
    else byId.set(pack, it)
    if (pack !== idOf(it.file))
      fault(it, ['pack'], `the pack is named ${pack} but its file says ${idOf(it.file)}`)
  }
  for (const it of parsed) {
    for (const [path, id] of named(it)) {
      const other = byId.get(id)
      if (!other && !broken.has(id)) fault(it, path, `there is no pack ${id}`)
      else if (other && reaches(id, it.pack.pack, byId))
        fault(it, path, `${id} leads back to ${it.pack.pack}`)
      else if (other && nearness(other) < nearness(it))
        fault(
          it,
          path,
          `a ${it.pack.jurisdiction.kind} pack can't lie over a ${other.pack.jurisdiction.kind} pack`,
        )
    }
  }
  faults.push(...withinPlaces(parsed))
  return faults
}

const nearness = ({ pack }: ParsedPack): number => JURISDICTION_KINDS.indexOf(pack.jurisdiction.kind)

/** The packs that one names, each with where it names it. */
const named = ({ pack }: ParsedPack): readonly (readonly [Path, PackId])[] => [
  ...pack.extends.map((id, i) => [['extends', i], id] as const),
  ...pack.adoption.flatMap((it, i) => it.packs.map((id, j) => [['adoption', i, 'packs', j], id] as const)),
]

function reaches(
  from: PackId,
  to: PackId,
  byId: ReadonlyMap<PackId, ParsedPack>,
  seen = new Set<PackId>(),
): boolean {
  if (from === to) return true
  const it = byId.get(from)
  if (!it || seen.has(from)) return false
  seen.add(from)
  return named(it).some(([, id]) => reaches(id, to, byId, seen))
}

/** The packs of one place are one jurisdiction, and no two of them answer the same question for the same day. */
function withinPlaces(parsed: readonly ParsedPack[]): Fault[] {
  const faults: Fault[] = []
  for (const [i, it] of parsed.entries())
    for (const before of parsed.slice(0, i)) {
      if (placeOf(before.pack.pack) !== placeOf(it.pack.pack)) continue
      const [a, b] = [before.pack.jurisdiction, it.pack.jurisdiction]
      if (a.kind !== b.kind || a.name !== b.name) {
        const message = `${before.file} calls this place ${a.name} (${a.kind}), here it is ${b.name} (${b.kind})`
        faults.push({ file: it.file, ...it.tree.at(['jurisdiction']), message })
      }
      for (const [p, parameter] of it.pack.parameters.entries()) {
        if (PARAMETERS[parameter.name].layering === 'gathered') continue
        const other = before.pack.parameters.find(({ name }) => name === parameter.name)
        for (const [e, entry] of parameter.entries.entries())
          if (other?.entries.some((earlier) => overlap(earlier, entry))) {
            const message = `${before.file} answers ${parameter.name} on some of the same days`
            faults.push({ file: it.file, ...it.tree.at(['parameters', p, 'entries', e]), message })
          }
      }
    }
  return faults
}
