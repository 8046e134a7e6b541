import { isLine } from '../../catalog/kinds.ts'
import type { OpenPart } from '../../reconcile/detail.ts'
import { ours, oursCapital } from '../ours.ts'
import {
  a,
  along,
  BUILT,
  BURDENS,
  CONDITIONS,
  DEFECTS,
  EXISTING,
  FAILED,
  KEPT_FROM,
  leftOut,
  NOUNS,
  name,
  near,
  required,
  SIGNS,
  The,
  the,
} from './en-parts.ts'
import type { AgentVoice } from './voice.ts'

const HERE = { from: 0, to: null, start: null } as const
const NOW = ours`The owner does not have to do anything about this now.`

export const EN: AgentVoice = {
  word: {
    'action-needed': ours`Action needed`,
    'no-record': ours`No record`,
    'not-inspected': ours`Not inspected`,
    'out-of-date': ours`Inspection too old`,
    incomplete: ours`Inspection incomplete`,
    'under-review': ours`Under review`,
    resolved: ours`Resolved`,
    matches: ours`Matches the record`,
  },
  sentence: {
    'action-needed': ours`The septic system needs repair or other action.`,
    'no-record': ours`The county has no approved record of a septic system on this parcel.`,
    'not-inspected': ours`No inspection has been compared with the county’s record yet.`,
    'out-of-date': ours`The last inspection is too old. A new inspection is needed.`,
    incomplete: ours`The last inspection left out something it must look at.`,
    'under-review': ours`The county has questions about the septic system. It is looking into them.`,
    resolved: ours`The county has reviewed and resolved every difference. No action is needed.`,
    matches: ours`The last inspection matches the county’s record.`,
  },
  resolvedByWaiver: ours`The county has reviewed every difference. It waived part of the inspection.`,
  part: (part) =>
    part.onRecord ? oursCapital(name(part)) : oursCapital(ours`${a(part)} that is not on record`),
  says: {
    'capacity-below-record': ({ part }) => ours`${The(part)} is smaller than the county’s record says.`,
    'capacity-above-record': ({ part }) => ours`${The(part)} is larger than the county’s record says.`,
    'capacity-below-code': (item) =>
      item.detail.occasion === 'today'
        ? ours`The tank is smaller than a new one would have to be today. ${NOW}`
        : ours`The tank is smaller than the code ${required(item)} when it was permitted.`,
    'construction-below-code': (item) =>
      item.detail.occasion === 'today'
        ? ours`${BUILT[item.detail.built ?? 'freeboard']} not as a new one must be today. ${NOW}`
        : ours`${BUILT[item.detail.built ?? 'freeboard']} not as the code ${required(item)} when it was permitted.`,
    'type-not-accepted': ({ part, detail: { occasion, existing } }) =>
      occasion === 'today'
        ? ours`A new ${NOUNS[part.kind]} like this one is not allowed today. ${EXISTING[existing ?? 'until-it-fails']}`
        : ours`${The(part)} was not allowed when it was permitted.`,
    'component-missing': ({ part, detail: { requiredBy, occasion } }) =>
      requiredBy === 'rule'
        ? occasion === 'today'
          ? ours`The tank has no outlet filter. A new one must have one today. ${NOW}`
          : ours`The tank has no outlet filter. The code required one when it was permitted.`
        : part.onRecord
          ? ours`${The(part)} is on the county’s record. The inspector looked for it and did not find it.`
          : ours`The inspector looked for ${the(part)} and did not find it. Every septic tank needs one.`,
    'component-not-on-record': ({ part }) =>
      ours`The inspector found ${a(part)}. The county has no record of it.`,
    'line-replaced': ({ part }) => ours`${The(part)} was replaced under a permit.`,
    'line-replaced-without-permit': ({ part, detail: { stretch } }) =>
      stretch === null
        ? ours`${The(part)} was replaced. The county has no permit for that work.`
        : ours`Part of ${the(part)} was replaced. It lies ${along(stretch)}. The county has no permit for that work.`,
    'material-differs': ({ part }) =>
      ours`${The(part)} is made of something else than the county’s record says.`,
    'type-differs': ({ part }) => ours`${The(part)} is not the type that the county’s record shows.`,
    'position-differs': ({ part, detail: { nearTo } }) =>
      nearTo === null
        ? ours`${The(part)} is not where the county’s record puts it.`
        : ours`${The(part)} is not as far from ${KEPT_FROM[nearTo]} as the county’s record says.`,
    'setback-short': (item) =>
      item.detail.occasion === 'today'
        ? ours`${The(item.part)} is closer to ${near(item)} than a new one could be today. ${NOW}`
        : item.detail.source === 'from-memory'
          ? ours`${The(item.part)} may be too close to ${near(item)}. The county has not verified that rule.`
          : ours`${The(item.part)} is closer to ${near(item)} than the rule allows.`,
    'lender-distance-short': (item) =>
      ours`${The(item.part)} is closer to ${near(item)} than some lenders allow.`,
    'bedrooms-above-design': () => ours`The house has more bedrooms than its septic system was designed for.`,
    'absorption-below-code': (item) =>
      item.detail.occasion === 'today'
        ? ours`The drainfield is smaller than a new one would have to be today. ${NOW}`
        : ours`The drainfield is smaller than the code ${required(item)} when it was permitted.`,
    'absorption-differs': () => ours`The drainfield is not the size that the county’s record says.`,
    'level-high': ({ part, detail: { room } }) =>
      room === 'pit'
        ? ours`${The(part)} is almost full. It has too little room for the water of half a day.`
        : ours`The liquid level in ${the(part)} is too high. Wastewater is not draining as it should.`,
    'level-low': ({ part, detail }) =>
      detail.readAgain
        ? ours`The liquid level in ${the(part)} is low. It may leak, or the house may have been empty.`
        : ours`The liquid level in ${the(part)} is too low. It leaks.`,
    'solids-high': ({ part, detail }) =>
      detail.room === 'privy'
        ? ours`${The(part)} is almost full. It is due to be pumped or moved.`
        : detail.solidsPassing
          ? ours`${The(part)} is so full that solids may have reached the drainfield.`
          : ours`${The(part)} is due to be pumped.`,
    'condition-poor': ({ part, detail: { condition, defect, stretch } }) => {
      if (defect !== null)
        return ours`A camera saw ${DEFECTS[defect]} in ${the(part)}. It is ${along(stretch ?? HERE)}.`
      switch (condition) {
        case 'cover':
          return isCovered(part)
            ? ours`The cover of ${the(part)} is not secured. Keep children away from it.`
            : ours`A cover is not secured. Keep children away from it.`
        case 'open':
          return ours`${The(part)} is open, or its cover is broken. Someone can fall in and die.`
        case 'left-open':
          return ours`${The(part)} is out of use and was left open. Someone can fall in and die.`
        case 'top':
          return ours`The top of ${the(part)} does not hold a person. Keep everyone off it.`
        case 'age':
          return ours`${The(part)} is steel and older than the county’s rule expects steel to last.`
        case null:
          return ours`${The(part)} is in poor condition.`
        default:
          return ours`${The(part)} is ${CONDITIONS[condition]}.`
      }
    },
    'failure-sign': ({ detail: { sign } }) =>
      sign === null ? ours`The system shows signs of failure.` : SIGNS[sign],
    'load-above-design': ({ detail: { burden } }) => BURDENS[burden ?? 'water-use'],
    'field-burdened': ({ detail: { burden } }) => BURDENS[burden ?? 'vehicles'],
    'equipment-failed': ({ part, detail: { device } }) => FAILED[device ?? 'pump'](part),
    'contract-lapsed': ({ part }) => ours`Nobody has a contract to keep ${the(part)} working. It needs one.`,
    'inspection-incomplete': ({ part, detail: { step } }) =>
      step === null ? ours`The inspection is not complete.` : leftOut(part, step),
    'system-not-on-record': ({ detail: { otherSystem } }) =>
      otherSystem === 'serves-another-lot'
        ? ours`The septic system also serves another lot. The county has no record of that.`
        : otherSystem === 'lies-on-another-lot'
          ? ours`Part of the septic system lies on another lot. The county has no record of that.`
          : ours`The inspector found a second septic system. The county has no record of it.`,
    'record-absent': () => ours`The county has no record of a septic system on this parcel.`,
    'record-unclear': ({ detail: { neverApproved, borneOut, unsaid } }) =>
      borneOut
        ? ours`Two permits do not agree. What the inspector measured fits one of them.`
        : neverApproved
          ? ours`A permit for this parcel was never approved. It does not show that a system was built.`
          : unsaid === 'beside-or-instead'
            ? ours`A repair put in a new drainfield. Its permit does not say if the old one is still in use.`
            : unsaid === 'which-part'
              ? ours`A later permit does not say which part it replaced, changed or closed.`
              : ours`The county’s permits for this parcel do not agree with each other, or cannot be read.`,
    'measurement-unclear': ({ detail: { occasion, against } }) =>
      occasion === 'today'
        ? ours`It is too close to call whether the tank is as large as a new one must be today. ${NOW}`
        : against === 'code'
          ? ours`It is too close to call whether the tank was as large as the code required.`
          : ours`It is too close to call whether the tank is the size on record.`,
    'findings-stale': ({ detail: { workSince } }) =>
      workSince
        ? ours`Work was approved after the last inspection. It no longer describes the system.`
        : ours`The last inspection is too old to count for a transfer.`,
  },
  act: {
    'correct-permit-or-accept': () => ours`The county will decide whether the tank may stay.`,
    'find-replacement-or-correct': () => ours`The county will look for a permit, or correct its record.`,
    'decide-whether-it-may-stay': () => ours`The county will decide whether it may stay.`,
    'decide-on-bedrooms': () => ours`The county will decide whether the system must be enlarged.`,
    'decide-on-repair': (part) => ours`The county will decide whether ${the(part)} must be repaired.`,
    'decide-on-metal-tank': () => ours`The county will decide whether the tank must be tested or replaced.`,
    'correct-or-search-again': () => ours`The county will correct its record or ask for another search.`,
    'find-paper-or-require-permit': () => ours`The county will look for its permit, or require one.`,
    'find-permit-or-require-one': () => ours`The county will look for the permit, or require one.`,
    'correct-ties': () => ours`The county will check its record.`,
    'correct-distance': () => ours`The county will check its record.`,
    'search-old-numbers': () => ours`The county will search its older files.`,
    'find-approval': () => ours`The county will look for the approval, or ask for an inspection.`,
    'say-what-it-serves': () =>
      ours`The county will record what each system serves. Ask a title company about easements.`,
    'settle-the-papers': () => ours`The county will check its permits and correct the record.`,
    'correct-to-measured': () => ours`The county will correct its record.`,
    remeasure: () => ours`An inspector must measure one thing again.`,
    'inspect-again': () => ours`Have the system inspected again. The inspector must be licensed.`,
    'finish-inspection': () => ours`An inspector must come back and finish the work.`,
    'refill-and-read': () => ours`Fill the tank with water. An inspector must read the level again.`,
    'stop-discharge': () =>
      ours`Stop the discharge. Keep people and animals away from it. Have the system repaired under a permit.`,
    'replace-straight-pipe': () =>
      ours`Stop using the pipe. Put in a septic system under a permit. Have the sewage hauled away until then.`,
    'cover-wiring': () => ours`Switch the power off. Have a licensed electrician cover the wires at once.`,
    'renew-contract': () => ours`Show the county a service contract, or sign a new one.`,
    'stop-use-and-fix': () =>
      ours`Use as little water as you can. Have a licensed installer check the system at once.`,
    'repair-equipment': () => ours`Have it fixed. Use a licensed electrician or a licensed repair firm.`,
    'check-drainfield': () => ours`The county will decide whether the drainfield must be tested.`,
    'install-or-accept-part': () => ours`The county will decide whether one must be put in.`,
    'replace-at-transfer': (part) => ours`Replace ${the(part)} under a permit when the property is sold.`,
    'replace-system': (part) => ours`Stop using ${the(part)}. Replace it under a permit.`,
    'replace-part': (part) => ours`Have a licensed installer replace ${the(part)}.`,
    'repair-or-replace': (part) => ours`Have a licensed installer repair or replace ${the(part)}.`,
    'remove-load': () => ours`Take the load off, or enlarge the system under a permit.`,
    'clear-field': () => ours`Keep it off the drainfield. The county may ask for more.`,
    'secure-cover': () => ours`Have the cover secured at once.`,
    'cover-at-once': () =>
      ours`Cover it and fence it off at once. Keep children and animals away. Have a new cover fitted.`,
    'close-and-fill': () =>
      ours`Cover it and fence it off at once. Then have it pumped, and crushed or filled, under a permit.`,
    'keep-off': () => ours`Fence it off at once. Have it replaced, or pumped and filled, under a permit.`,
    'fix-flow': () => ours`Have a licensed installer find out why it does not drain. This must be fixed.`,
    'test-for-leaks': () => ours`Have the tank tested for leaks. Repair or replace it under a permit.`,
    pump: () => ours`Have a licensed hauler pump the tank.`,
    'test-water': () => ours`Have the well water tested. The county will decide about the distance.`,
    'lender-decides': () => ours`Ask the lender. The code does not require anything here.`,
    'nothing-until-change': () => NOW,
    'pump-advised': () => ours`Pumping is advised. Nobody has to do it.`,
    nothing: () => ours`Nothing is needed.`,
  },
  decided: {
    'correct-record': ours`The county corrected its record.`,
    accept: ours`The county reviewed and accepted it.`,
    'require-permit': ours`The county requires a permit for the work that was done.`,
    'require-repair': ours`The county requires a repair and a new inspection. A licensed installer must do the repair.`,
    'waive-seen-before': ours`The county waived it: it was seen before.`,
    'waive-being-replaced': ours`The county waived it: the part is being replaced under a permit.`,
    'waive-no-way-in': ours`The county waived it: nobody can reach it without doing harm.`,
    'waive-not-this-system': ours`The county waived it: this system does not need it.`,
    'ask-remeasurement': ours`The county asked the inspection firm to measure again.`,
  },
}

/** A line has no cover of its own. */
const isCovered = ({ kind }: OpenPart): boolean => kind !== 'system' && !isLine(kind)
