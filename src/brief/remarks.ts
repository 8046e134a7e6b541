import type { AsBuilt } from '../records/as-built.ts'
import type { FiledPermit } from '../records/permit.ts'

/** What a paper says in words of its own: what it lies beyond, where the drive runs, how deep a lid is. */
export type PaperRemark = {
  readonly permit: string
  /** The component's name on that paper; null where the remark is about the whole. */
  readonly about: string | null
  readonly says: string
}

/**
 * The remarks and notes of the papers in force, as they stand there. Landmarks have no field of their own: papers write
 * them out, and an inspector reads them best as written.
 */
export const paperRemarks = (
  permits: readonly FiledPermit[],
  { permits: approved, unapproved }: Pick<AsBuilt, 'permits' | 'unapproved'>,
): readonly PaperRemark[] => {
  const known = new Set([...approved, ...unapproved].map(({ id }) => id))
  return permits
    .filter(({ id }) => known.has(id))
    .flatMap(({ record: { number, remarks, components } }) => [
      ...(remarks ? [{ permit: number, about: null, says: remarks }] : []),
      ...components.flatMap(({ tag, note }) => (note ? [{ permit: number, about: tag, says: note }] : [])),
    ])
}
