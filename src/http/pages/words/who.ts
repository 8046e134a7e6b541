import type { Actor } from '../../../reconcile/meaning/meaning.ts'

/** Who has to act, as it is said to each. */
export const WHO: { readonly [A in Actor]: string } = {
  owner: 'the owner',
  firm: 'the inspection firm',
  reviewer: 'the county',
  nobody: 'nobody',
}
