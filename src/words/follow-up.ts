import { isNearWell } from '../reconcile/consequence.ts'
import type { Discrepancy } from '../reconcile/reconcile.ts'
import { remeasureWords, settleWhy } from './acts.ts'
import { reasonWords } from './reasons.ts'
import { sentence } from './sentence.ts'

export type Staff = 'firm' | 'reviewer'

/** What a discrepancy is and what follows from it, to the inspection firm or to the county: two sentences. */
export const discrepancyWords = (it: Discrepancy, audience: Staff): string =>
  `${sentence(reasonWords(it.outcome))} ${FOLLOW_UP[audience](it)}`.trim()

const FOLLOW_UP = { firm: toFirm, reviewer: toReviewer } as const

const isToday = ({ outcome: { reason } }: Discrepancy): boolean =>
  'occasion' in reason && reason.occasion === 'today'

function toFirm(it: Discrepancy): string {
  const { kind, outcome, act } = it
  const { reason, wouldSettle } = outcome
  switch (kind) {
    case 'capacity-below-record':
      return 'Say so in the report and keep the readings. A reviewer will check them.'
    case 'capacity-above-record':
      return 'A larger tank than recorded may have been installed without a permit.'
    case 'capacity-below-code':
      return isToday(it)
        ? 'The owner does not have to do anything about this now. Tell them before they add bedrooms.'
        : 'The tank was short of the code on the day it was permitted.'
    case 'absorption-below-code':
      return isToday(it)
        ? 'The owner does not have to do anything about this now. Tell them before they add bedrooms.'
        : 'The absorption area was short of the code on the day it was permitted.'
    case 'absorption-differs':
      return 'Check how many there are and how long each is. Keep the readings.'
    case 'measurement-unclear': {
      const remedy = wouldSettle
        ? remeasureWords(wouldSettle.measurement)
        : 'measure again with a better method'
      return isToday(it)
        ? `Nothing depends on it now. If you are there again, ${remedy}.`
        : `To settle it, ${remedy}.`
    }
    case 'bedrooms-above-design':
      return 'Say so in the report: more people may use the system than it was designed for.'
    case 'construction-below-code':
      return isToday(it)
        ? 'It was lawful in its day. The owner does not have to do anything about this now.'
        : 'Keep the readings. A reviewer will check them.'
    case 'type-not-accepted':
      return act === 'nothing-until-change'
        ? 'It may stay until it fails. Tell the owner.'
        : 'Tell the owner. A reviewer will decide.'
    case 'load-above-design':
      return 'Tell the owner what it does to the drainfield.'
    case 'field-burdened':
      return 'Show it on the sketch, and tell the owner.'
    case 'component-missing':
      return 'State how you searched. A reviewer will ask.'
    case 'component-not-on-record':
      return 'Tie it to two house corners while it is open.'
    case 'line-replaced':
      return 'Nothing is open.'
    case 'line-replaced-without-permit':
      return 'State where the new pipe begins and ends if the camera showed it.'
    case 'material-differs':
    case 'type-differs':
      return 'A photo of it will help.'
    case 'position-differs':
      return reason.is === 'distance-record'
        ? 'Check from which edge you taped, and to what, before you leave.'
        : 'Check which corners the ties run from before you leave.'
    case 'setback-short':
      return isNearWell(reason)
        ? 'Tell the owner to have the water tested.'
        : 'Say in the report how you measured it. A reviewer will decide.'
    case 'lender-distance-short':
      return 'Say so in the report: a lender may ask.'
    case 'level-high':
      if (reason.is === 'room-left') return 'Ask how often it is pumped, and read it again on another day.'
      return 'The outlet or what lies beyond it does not take the flow. Check before it is pumped.'
    case 'level-low':
      return reason.is === 'low-level' && reason.comes === 'read-again'
        ? 'Ask when it was last pumped and who lives there.'
        : 'Keep away from the edges of a leaking tank.'
    case 'solids-high':
      return reason.is === 'solids' && reason.passing
        ? 'Tell the owner to have it pumped, and look into the box: solids may have gone on to the drainfield.'
        : 'Tell the owner to have it pumped.'
    case 'condition-poor':
      return reason.is === 'cover'
        ? reason.missing || reason.outOfUse
          ? 'Cover and fence it before you leave, and tell the owner at once.'
          : 'Secure it before you leave.'
        : reason.is === 'defect'
          ? 'Keep the recording, and mark the place on the ground.'
          : 'Keep people off it, and never go into it.'
    case 'record-absent':
      return 'Measure and tie in all you find. Your findings will be the only record.'
    case 'record-unclear':
      return reason.is === 'never-approved'
        ? 'Measure and tie in all you find.'
        : act === 'correct-to-measured'
          ? 'Your measurement decides between them. Keep the readings.'
          : reason.is === 'unclear' && reason.doubt.gap === 'beside-or-instead'
            ? 'Find out which drainfields take flow: open the boxes, and run water.'
            : 'A measurement on site can settle it.'
    case 'system-not-on-record':
      return 'Say in the notes what it serves and how you know. Inspect each system by itself.'
    case 'failure-sign':
      return 'Keep people and animals away from sewage. Photograph it and say where it is.'
    case 'equipment-failed':
      return 'Leave wiring to a licensed electrician. Tell the owner before you leave.'
    case 'contract-lapsed':
      return 'Tell the owner who can service it.'
    case 'inspection-incomplete':
      return 'Do it while you are there, or state why it cannot be done.'
    case 'findings-stale':
      return 'A transfer needs a new inspection.'
  }
}

function toReviewer(it: Discrepancy): string {
  const { kind, outcome, act } = it
  const { reason, wouldSettle, certainty } = outcome
  switch (kind) {
    case 'capacity-below-record':
      return 'Either the record is wrong or this is not the tank that was permitted.'
    case 'capacity-above-record':
      return 'A larger tank may mean a replacement that is not on file.'
    case 'capacity-below-code':
      return isToday(it)
        ? 'It counts when the use changes or the tank is replaced.'
        : 'Check whether it was permitted so, with a variance, or built short.'
    case 'absorption-below-code':
      return isToday(it)
        ? 'It counts when the use changes or the absorption area is replaced.'
        : 'Check whether it was permitted so or built short.'
    case 'absorption-differs':
      return reason.is === 'absorption-record' && reason.by === 'record'
        ? 'The permit contradicts itself: its dimensions do not come to its area.'
        : 'The record is wrong, or the drainfield was changed without a permit.'
    case 'measurement-unclear':
      return isToday(it)
        ? 'It counts when the use changes or the tank is replaced.'
        : wouldSettle
          ? `Ask the firm to ${remeasureWords(wouldSettle.measurement)} (${settleWhy(wouldSettle)}).`
          : 'Ask the firm to measure again with a better method.'
    case 'bedrooms-above-design':
      return 'Check whether the added bedrooms were permitted and what the system can carry.'
    case 'construction-below-code':
      return isToday(it)
        ? 'It counts when the tank is replaced.'
        : 'Check whether it was permitted so, with a variance, or built short.'
    case 'type-not-accepted':
      return act === 'nothing-until-change'
        ? 'It was lawful when it was built. It counts when it fails or is replaced.'
        : 'The rule does not let it stay as it is.'
    case 'load-above-design':
      return 'Decide whether the load must go or the system must be enlarged.'
    case 'field-burdened':
      return 'It shortens the life of the drainfield. Decide whether it must go.'
    case 'component-missing':
      return certainty.word === 'firm'
        ? 'The place itself was opened or seen.'
        : 'Weigh how it was searched for before you call it gone.'
    case 'component-not-on-record':
      return 'Look for its permit under an old number or address. It may be work without a permit.'
    case 'line-replaced':
      return 'The file explains what was found.'
    case 'line-replaced-without-permit':
      return 'A repair was made without a permit, or its permit is missing from the file.'
    case 'material-differs':
      return 'Either the record is wrong or the part was replaced.'
    case 'type-differs':
      return 'Either the record is wrong or something else was built.'
    case 'position-differs':
      return reason.is === 'distance-record'
        ? 'The distance on record is wrong, or one of the two was moved.'
        : 'The record’s ties are wrong, or this is not the part they meant.'
    case 'setback-short':
      return isNearWell(reason)
        ? 'Look for a variance, and have the well tested.'
        : 'Look for a variance, and decide whether it may stay.'
    case 'lender-distance-short':
      return 'The code is another question: this is a lender’s own distance.'
    case 'level-high':
      if (reason.is === 'room-left') return 'It does not drain as fast as the house fills it.'
      return 'The outlet is blocked, or the drainfield does not take the flow.'
    case 'level-low':
      return reason.is === 'low-level' && reason.comes === 'read-again'
        ? 'It may leak, or only have lost water while nobody lived there.'
        : 'It leaks below its outlet.'
    case 'solids-high':
      if (reason.is === 'solids' && reason.passing)
        return 'Solids leave a tank this full. Ask what the box and the drainfield show.'
      return act === 'pump'
        ? 'Pumping is due under that rule.'
        : 'The rule’s own text was not verified, so pumping is advised and not required.'
    case 'condition-poor':
      return reason.is === 'metal-age' ? 'An inspection or a certificate can answer the presumption.' : ''
    case 'record-absent':
      return 'Search under old numbers and addresses before you rely on the findings alone.'
    case 'record-unclear':
      return reason.is === 'never-approved'
        ? 'Look for the approval, or have someone see what was built.'
        : act === 'correct-to-measured'
          ? 'The measurement decides: correct the record to that permit, and look whether there is a second tank.'
          : reason.is === 'unclear' && reason.doubt.gap === 'beside-or-instead'
            ? 'Correct the repair permit: the new drainfield was added, or it replaces the old one. Until then their areas are not added up.'
            : 'Compare the permits and correct the record.'
    case 'system-not-on-record':
      return 'Until it is recorded, sizes are compared as if this system served this lot alone. Who may use it is for title work.'
    case 'failure-sign':
      return 'The system is not draining, even if every size is right.'
    case 'equipment-failed':
      return 'Without it the chamber can overflow, or nobody is warned.'
    case 'contract-lapsed':
      return 'Ask the owner for a contract. A unit that nobody serves stops treating.'
    case 'inspection-incomplete':
      return 'Ask the firm to finish it, or waive it with a reason.'
    case 'findings-stale':
      return 'Ask for a new inspection before you rely on the findings.'
  }
}
