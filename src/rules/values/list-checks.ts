import type { z } from 'zod'

type ItemOf<S> = S extends z.ZodType<readonly (infer Item)[]> ? Item : never

/** Looks at a list even where an item of it is faulty in itself, so that one fault does not hide the other. */
const evenSo = { when: ({ value }: { readonly value: unknown }): boolean => Array.isArray(value) }

const isItem = (it: unknown): boolean => it !== null && it !== undefined

/** Each item against the one before it; `wrong` must hold for no two. A faulty item compares as no number does. */
export const inOrder = <S extends z.ZodType<readonly unknown[]>>(
  list: S,
  wrong: (before: ItemOf<S>, it: ItemOf<S>) => boolean,
  message: string,
  key: string | null = null,
): S =>
  list.superRefine((items, context) => {
    for (const [i, it] of items.entries()) {
      const before = items[i - 1]
      if (isItem(before) && isItem(it) && wrong(before as ItemOf<S>, it as ItemOf<S>))
        context.addIssue({ code: 'custom', path: key === null ? [i] : [i, key], message })
    }
  }, evenSo) as unknown as S

/** No two items of one name. */
export const distinct = <S extends z.ZodType<readonly unknown[]>>(
  list: S,
  nameOf: (it: ItemOf<S>) => string | undefined,
  what: string,
  key: string | null = null,
): S =>
  list.superRefine((items, context) => {
    const seen = new Set<string>()
    for (const [i, it] of items.entries()) {
      const name = isItem(it) ? nameOf(it as ItemOf<S>) : undefined
      if (name === undefined) continue
      if (seen.has(name.toLowerCase()))
        context.addIssue({
          code: 'custom',
          path: key === null ? [i] : [i, key],
          message: `${what} "${name}" stands twice`,
        })
      seen.add(name.toLowerCase())
    }
  }, evenSo) as unknown as S
