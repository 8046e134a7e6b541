import { METHODS } from '../measure/methods.ts'
import { printSignificant } from '../measure/print/number.ts'
import { ACTOR_OF, type Actor } from '../reconcile/acts.ts'
import type { Consequence } from '../reconcile/consequence.ts'
import type { Remeasurement, Settle } from '../reconcile/outcome.ts'
import type { Part } from '../records/part.ts'
import { the } from './part.ts'
import { figure } from './quantity.ts'
import { THING_NOUNS } from './things.ts'

/** Who has to act, in the middle of a sentence. */
export const ACTOR_NOUNS: { readonly [A in Actor]: string } = {
  owner: 'the owner',
  firm: 'the inspection firm',
  reviewer: 'the county',
  nobody: 'nobody',
}

/** What has to happen next, as an order without its actor: for the county's people and the inspector. */
export function actWords({ act, remeasure }: Pick<Consequence, 'act' | 'remeasure'>, about: Part): string {
  switch (act) {
    case 'correct-permit-or-accept':
      return 'correct the record, require a permit for the tank that is there, or accept it with a reason'
    case 'find-replacement-or-correct':
      return 'look for the permit of a replacement, or correct the record'
    case 'decide-whether-it-may-stay':
      return 'decide whether it may stay, and on what terms'
    case 'decide-on-bedrooms':
      return 'decide whether the bedrooms need a permit or the system must be enlarged'
    case 'decide-on-repair':
      return `decide whether ${the(about)} must be repaired or replaced`
    case 'decide-on-metal-tank':
      return 'decide whether the tank must be tested or replaced'
    case 'correct-or-search-again':
      return 'correct the record, or ask for another search'
    case 'find-paper-or-require-permit':
      return 'find its permit, or require one'
    case 'find-permit-or-require-one':
      return 'find the permit, or require one for the work done'
    case 'correct-ties':
      return 'correct the ties on record, or ask whether there are two of them'
    case 'correct-distance':
      return 'correct the distance on record, or ask what was moved since'
    case 'search-old-numbers':
      return 'search the file under old numbers, then decide what the findings may stand for'
    case 'find-approval':
      return 'look for the final approval, or ask for an inspection'
    case 'settle-the-papers':
      return 'check the permits and correct the record'
    case 'say-what-it-serves':
      return 'say with the parcel’s systems what each one serves and where it lies, or find out that it is not so'
    case 'correct-to-measured':
      return 'correct the record to the permit that the measurement bears out'
    case 'remeasure':
      return remeasure ? remeasureWords(remeasure) : 'measure again with a better method'
    case 'inspect-again':
      return 'inspect the system again'
    case 'finish-inspection':
      return 'finish the inspection, or a reviewer waives what was left out'
    case 'refill-and-read':
      return 'fill the tank with water to its outlet, and read the level again after a day'
    case 'stop-discharge':
      return 'stop the discharge, keep people and animals away from it, and have the system repaired under a permit'
    case 'replace-straight-pipe':
      return 'stop using the pipe, have a septic system put in under a permit, and have the sewage pumped and hauled until then'
    case 'cover-wiring':
      return `switch off the power to ${the(about)}, and have a licensed electrician cover the wiring at once`
    case 'renew-contract':
      return `show a service contract for ${the(about)}, or sign one with a licensed provider`
    case 'stop-use-and-fix':
      return 'use as little water as possible, and have the system checked by a licensed installer at once'
    case 'repair-equipment':
      return `have the pump, blower or alarm of ${the(about)} repaired by a licensed electrician or service provider`
    case 'check-drainfield':
      return 'decide whether the drainfield must be tested'
    case 'replace-part':
      return `have ${the(about)} replaced by a licensed installer`
    case 'install-or-accept-part':
      return `require ${the(about)} to be installed, or accept the tank without one`
    case 'replace-at-transfer':
      return `have ${the(about)} replaced under a permit when the property changes hands`
    case 'replace-system':
      return `have ${the(about)} taken out of use and replaced under a permit`
    case 'repair-or-replace':
      return `have ${the(about)} repaired or replaced by a licensed installer`
    case 'secure-cover':
      return 'have the cover secured at once'
    case 'remove-load':
      return 'take the load off the system, or enlarge the system under a permit'
    case 'clear-field':
      return 'keep it off the drainfield and lead water away from it'
    case 'cover-at-once':
      return 'cover it and fence it off at once, keep children and animals away, and have a new cover fitted'
    case 'close-and-fill':
      return 'cover it and fence it off at once, then have it pumped and crushed or filled under an abandonment permit'
    case 'keep-off':
      return `keep everyone off ${the(about)} and fence it at once, then have it replaced, or pumped and filled, under a permit`
    case 'fix-flow':
      return 'have the outlet and the drainfield checked by a licensed installer'
    case 'test-for-leaks':
      return 'have the tank tested for leaks, and repaired or replaced under a permit'
    case 'pump':
      return 'have the tank pumped by a licensed hauler'
    case 'test-water':
      return 'have the well water tested, and wait for the county’s decision on the distance'
    case 'lender-decides':
      return 'nothing by the code; a lender may require a waiver or another distance'
    case 'nothing-until-change':
      return 'nothing, until the use changes or it is replaced'
    case 'pump-advised':
      return 'nothing is required; pumping is advised'
    case 'nothing':
      return 'nothing'
  }
}

export const actorOf = ({ act }: Pick<Consequence, 'act'>): Actor => ACTOR_OF[act]

/** A reading to take, as an order: `measure the inside length of the tank again: metal tape held against the inside faces`. */
export const remeasureWords = ({ thing, part, method, first }: Remeasurement): string =>
  `measure the ${THING_NOUNS[thing]} of ${the(part)}${first ? '' : ' again'}: ${METHODS[method].says}`

/** What measuring again would bring. */
export const settleWhy = ({ varianceRemoved, now, after, settles }: Settle): string =>
  `so measured, ${printSignificant(100 * varianceRemoved, 2)}% of the variance goes: the uncertainty falls from ±${figure(now)} to ±${figure(after)}, ${settles ? 'enough to decide' : 'not enough by itself'}`
