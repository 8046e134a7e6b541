import { z } from 'zod'

/**
 * An entry of the service's own, with a few fields of the story's beside it. Both are checked, their faults come
 * together, and the entry is kept both as typed (to be sent to the service) and as the record it is read to.
 */
export function alongside<S extends z.ZodRawShape, E extends z.ZodType>(extra: S, entry: E) {
  const own = z.strictObject(extra)
  return z.record(z.string(), z.unknown()).transform((all, context) => {
    const names = Object.keys(extra)
    const part = (wanted: boolean) =>
      Object.fromEntries(Object.entries(all).filter(([name]) => names.includes(name) === wanted))
    const typed = part(false) as z.input<E>
    const [mine, record] = [own.safeParse(part(true)), entry.safeParse(typed)]
    if (mine.success && record.success) return { ...mine.data, typed, record: record.data }
    for (const issue of [...(mine.error?.issues ?? []), ...(record.error?.issues ?? [])])
      context.issues.push({ ...issue, input: issue.input } as z.core.$ZodRawIssue)
    return z.NEVER
  })
}
