import { capital } from '../../pages/words/plain.ts'
import { answerWords, byQuestion, questionOf, questionWords } from '../form/questions.ts'
import {
  type InspectionForm,
  kindOf,
  type PartForm,
  type Typed,
  withoutPart,
  withPart,
} from '../form/typed.ts'

/** One question that two copies of an inspection answer differently. */
export type Clash = {
  /** Names it in a form: `tank/length`; a component that only one copy has is one question, `only-mine/added-1`. */
  readonly id: string
  readonly where: string
  readonly question: string
  /** Null where that copy says nothing. */
  readonly mine: string | null
  readonly theirs: string | null
  /** Which copy changed it since they were last the same; null where that is not known. */
  readonly changed: 'mine' | 'theirs' | 'both' | null
}

export type Side = 'mine' | 'theirs'

const START = 'start'
const ONLY_MINE = 'only-mine'
const ONLY_THEIRS = 'only-theirs'
const NOTES = 'review'

type Place = {
  readonly step: string
  readonly where: string
  readonly typed: Typed
  readonly part: PartForm | null
}

/** The copies laid side by side: steps that both have, and those that only one has. */
function places(form: InspectionForm): readonly Place[] {
  return [
    { step: START, where: 'Before you begin', typed: form.start, part: null },
    ...form.parts.map((part) => ({ step: part.id, where: capital(part.label), typed: part.typed, part })),
    { step: NOTES, where: 'The whole inspection', typed: { notes: form.notes }, part: null },
  ]
}

/** A component is the same in both copies by its key, or, where it is not on record, by its name. */
const sameThing = (a: Place, b: Place): boolean => {
  if (!a.part || !b.part) return a.step === b.step
  if (a.part.key !== null || b.part.key !== null) return a.part.key === b.part.key
  return a.part.label.trim().toLowerCase() === b.part.label.trim().toLowerCase()
}

/** Every difference between two copies of an inspection, in the order of the walk. Empty where they say the same. */
export function clashes(
  mine: InspectionForm,
  theirs: InspectionForm,
  base: InspectionForm | null,
): readonly Clash[] {
  const [ours, others, before] = [places(mine), places(theirs), base ? places(base) : null]
  const here = ours.flatMap((place) => {
    const other = others.find((it) => sameThing(place, it))
    if (other) return inPlace(place, other, before?.find((it) => sameThing(place, it)) ?? null)
    if (byQuestion(place.typed).size === 0) return []
    const was = before?.some((it) => sameThing(place, it))
    return [whole(place, 'mine', before ? (was ? 'theirs' : 'mine') : null)]
  })
  const there = others
    .filter((place) => !ours.some((it) => sameThing(it, place)) && byQuestion(place.typed).size > 0)
    .map((place) => {
      const was = before?.some((it) => sameThing(place, it))
      return whole(place, 'theirs', before ? (was ? 'mine' : 'theirs') : null)
    })
  return [...here, ...there]
}

function inPlace(mine: Place, theirs: Place, base: Place | null): readonly Clash[] {
  const [ours, others, before] = [mine, theirs, base].map((it) => byQuestion(it?.typed ?? {})) as [
    ReadonlyMap<string, Typed>,
    ReadonlyMap<string, Typed>,
    ReadonlyMap<string, Typed>,
  ]
  return [...new Set([...ours.keys(), ...others.keys()])].flatMap((question): Clash[] => {
    const [a, b] = [ours.get(question), others.get(question)]
    if (same(a, b)) return []
    const was = before.get(question)
    const changed = base === null ? null : same(a, was) ? 'theirs' : same(b, was) ? 'mine' : 'both'
    return [
      {
        id: `${mine.step}/${question}`,
        where: mine.where,
        question: questionWords(question, mine.part ? kindOf(mine.part) : undefined),
        mine: answerWords(question, a),
        theirs: answerWords(question, b),
        changed,
      },
    ]
  })
}

const whole = ({ step, where }: Place, side: Side, changed: Clash['changed']): Clash => ({
  id: `${side === 'mine' ? ONLY_MINE : ONLY_THEIRS}/${step}`,
  where,
  question: 'Is it there at all?',
  mine: side === 'mine' ? 'yes, with what was noted' : null,
  theirs: side === 'theirs' ? 'yes, with what was noted' : null,
  changed,
})

const same = (a: Typed | undefined, b: Typed | undefined): boolean =>
  JSON.stringify(a ?? null) === JSON.stringify(b ?? null)

/** One inspection out of two copies, each question answered by the side that was chosen for it; the rest is the same in both. */
export function settled(
  mine: InspectionForm,
  theirs: InspectionForm,
  chosen: (clash: string) => Side,
): InspectionForm {
  let form = theirs
  for (const { id } of clashes(mine, theirs, null)) {
    if (chosen(id) === 'theirs') continue
    const [step, question] = [id.slice(0, id.indexOf('/')), id.slice(id.indexOf('/') + 1)]
    const place = places(mine).find((it) => it.step === (step === ONLY_MINE ? question : step))
    if (step === START) form = { ...form, start: answered(form.start, question, mine.start) }
    else if (step === NOTES) form = { ...form, notes: mine.notes }
    else if (step === ONLY_THEIRS) form = withoutPart(form, question)
    else if (step === ONLY_MINE) form = place?.part ? withPart(form, freshId(form, place.part)) : form
    else if (place?.part) {
      const own = places(form).find((it) => sameThing(place, it))?.part
      if (own) form = withPart(form, { ...own, typed: answered(own.typed, question, place.part.typed) })
    }
  }
  return form
}

/** Two copies number what they added each for itself. */
function freshId(form: InspectionForm, part: PartForm): PartForm {
  let { id } = part
  for (let at = 1; form.parts.some((it) => it.id === id); at++) id = `added-${at}`
  return { ...part, id }
}

const answered = (typed: Typed, question: string, from: Typed): Typed => {
  const of = (all: Typed, belongs: boolean) =>
    Object.entries(all).filter(([field]) => (questionOf(field) === question) === belongs)
  return Object.fromEntries([...of(typed, false), ...of(from, true)])
}
