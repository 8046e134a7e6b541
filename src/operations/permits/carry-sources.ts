import { canonicalText } from '../../base/canonical.ts'
import { MEASURE_NAMES } from '../../catalog/catalog.ts'
import { PERMIT_FIELDS } from '../../catalog/permit-fields.ts'
import type { FiledPermit, PermitRecord } from '../../records/permit.ts'
import { sourceAt } from '../../records/permit-claims.ts'
import type { Source } from '../../records/source.ts'

const FIELDS = Object.keys(PERMIT_FIELDS) as readonly (keyof typeof PERMIT_FIELDS)[]

/**
 * The sources of a corrected record: what reads as it did keeps the source it had, component by component under their
 * tags; all else comes from the correction.
 */
export function carrySources(old: FiledPermit, record: PermitRecord, fresh: Source): FiledPermit['sources'] {
  const sources: { [pointer: string]: Source } = { '': fresh }
  const carry = (was: unknown, is: unknown, from: string, to: string): void => {
    if (is !== null && canonicalText(was) === canonicalText(is)) sources[to] = sourceAt(old, from)
  }
  for (const field of FIELDS) carry(old.record[field], record[field], `/${field}`, `/${field}`)
  record.components.forEach((component, index) => {
    const before = old.record.components.findIndex(({ tag }) => tag === component.tag)
    const twin = old.record.components[before]
    if (!twin) return
    for (const name of [...MEASURE_NAMES, 'kind', 'action'] as const) {
      carry(twin[name], component[name], `/components/${before}/${name}`, `/components/${index}/${name}`)
    }
  })
  return sources
}
