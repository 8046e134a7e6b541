import type { Advice } from '../reconcile/advice.ts'
import { the } from './part.ts'

/** What would help and nobody has to do, as a sentence. */
export function adviceWords({ advice, about }: Advice): string {
  switch (advice) {
    case 'riser':
      return `A riser to grade over ${the(about)}, with a secured cover, would save digging next time.`
    case 'observation-port':
      return 'An observation port would show how the drainfield takes the flow, without digging.'
    case 'effluent-filter':
      return 'An effluent filter in the outlet would keep solids out of the drainfield.'
    case 'ties':
      return `Two ties from house corners to ${the(about)} would let the next person find it.`
  }
}
