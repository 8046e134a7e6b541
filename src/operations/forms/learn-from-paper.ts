import { breathing } from '../../jobs/breathe.ts'
import type { JobRun } from '../../jobs/queue.ts'
import { together } from '../../reading/assemble/tally.ts'
import { LEAST_PAPERS, learnForm, leavesOf, referenceAmong } from '../../reading/family/learn.ts'
import { recognize } from '../../reading/family/recognize.ts'
import { isSameForm } from '../../reading/family/same-form.ts'
import { titleOf } from '../../reading/family/title.ts'
import type { ReadingContext } from '../../reading/values/answers.ts'
import { keepTallies } from '../../store/confirmations.ts'
import { countyById } from '../../store/counties.ts'
import { asService } from '../../store/database/actor.ts'
import type { Tx } from '../../store/database/database.ts'
import { transact } from '../../store/database/transact.ts'
import { recordEvent } from '../../store/events.ts'
import {
  changeForm,
  type FormOnFile,
  formsAfter,
  haveTaught,
  insertForm,
  insertTeachers,
  teachersOf,
} from '../../store/taught-forms.ts'
import { transcriptionById, transcriptionsBefore } from '../../store/transcriptions.ts'
import type { OperationContext } from '../context.ts'
import { heldAgainst } from './held-against.ts'
import { lessonsOf, type Taught } from './lesson-of.ts'

export type Learned = {
  readonly proposed: readonly string[]
  readonly grown: readonly string[]
  /** Fields of forms in force that are read no more, for confirmations contradict them. */
  readonly dropped: readonly string[]
}

/** How far back papers of the same form are looked for, and how many make the lesson: more of them teach little more. */
const LOOK_BACK = 40
const MOST_PAPERS = 8
const MOST_FORMS = 1_000

/**
 * Learns from a paper that was just confirmed. Of a form that waits to be taken up it makes a better one; where it and
 * others that were confirmed before are one form that nobody knows yet, it proposes that. A form in force is left as the
 * person took it up, and one that was withdrawn stays so. Done at least once: a second run finds it done.
 */
export const learnFromPaper = (
  context: OperationContext,
  { actor, data, report }: JobRun<'learn-form'>,
): Promise<Learned> => {
  const service = asService(actor)
  const { county } = actor
  return transact(context.database, service, async (tx) => {
    const learned = { proposed: [] as string[], grown: [] as string[], dropped: [] as string[] }
    const made = await transcriptionById(tx, county, data.transcription)
    const served = await countyById(tx, county)
    if (!made || !served) return learned
    const reading = { format: served.parcelFormat, misread: false }
    const forms = await formsAfter(tx, county, undefined, undefined, MOST_FORMS)
    const confirmed = await lessonsOf(tx, county, made)
    await keepTallies(tx, county, made.id, together(confirmed.flatMap(({ tallies }) => tallies)))
    for (const leaf of byLeaf(await newIn(tx, county, confirmed))) {
      const known = knownBy(forms, leaf[0]!)
      if (known) {
        if (known.state === 'in-force')
          learned.dropped.push(
            ...(await heldAgainst(known, leaf, { ...context, actor: service }, tx, reading)),
          )
        if (known.state === 'proposed' && (await grow(known, leaf, tx, reading))) learned.grown.push(known.id)
        continue
      }
      const alike = [...leaf, ...(await othersOf(leaf[0]!, tx))]
      const form = papersIn(alike) < LEAST_PAPERS ? null : learnForm(lessons(alike), reading)
      if (form) learned.proposed.push(await propose(form, alike, tx))
    }
    await report({ done: 1, total: 1, says: saidOf(learned) })
    return learned
  })

  async function grow(
    form: FormOnFile,
    leaf: readonly Taught[],
    tx: Tx,
    reading: ReadingContext,
  ): Promise<boolean> {
    const teachers = await teachersOf(tx, county, form.id)
    const before: Taught[] = []
    for (const id of new Set(teachers.map(({ transcription }) => transcription))) {
      const made = await transcriptionById(tx, county, id)
      const all = made ? await lessonsOf(tx, county, made) : []
      before.push(...all.filter((it) => teachers.some((known) => isOne(known, it.teacher))))
    }
    if (papersIn(before) >= MOST_PAPERS) return false
    const all = [...leaf, ...before]
    const better = learnForm(lessons(all), reading)
    if (!better) return false
    await changeForm(tx, county, form.id, { taught: better, by: null, at: context.clock(), ...shownOn(all) })
    await insertTeachers(
      tx,
      county,
      form.id,
      leaf.map(({ teacher }) => teacher),
    )
    return true
  }

  async function propose(form: FormOnFile['taught'], alike: readonly Taught[], tx: Tx): Promise<string> {
    const id = context.newId()
    const at = context.clock()
    await insertForm(tx, county, {
      id,
      name: titleOf(form),
      taught: form,
      ...shownOn(alike),
      changedBy: null,
      at,
    })
    await insertTeachers(
      tx,
      county,
      id,
      alike.map(({ teacher }) => teacher),
    )
    await recordEvent(tx, service, {
      id: context.newId(),
      kind: 'form-proposed',
      subjectKind: 'form',
      subject: id,
      parcel: null,
      body: { papers: alike.map(({ teacher }) => teacher.document) },
      at,
    })
    return id
  }

  /** Confirmed before, of the same form, and teaching none yet; the newest first. */
  async function othersOf({ teacher, lesson }: Taught, tx: Tx): Promise<readonly Taught[]> {
    const alike: Taught[] = []
    const breathe = breathing()
    for (const made of await transcriptionsBefore(tx, county, teacher.transcription, LOOK_BACK)) {
      for (const leaf of byLeaf(await newIn(tx, county, await lessonsOf(tx, county, made)))) {
        await breathe()
        const other = leaf[0]!.lesson
        if (other.leaf === lesson.leaf || isSameForm(lesson.pages[0]!, other.pages[0]!)) alike.push(...leaf)
      }
      if (papersIn(alike) >= MOST_PAPERS - 1) break
    }
    return alike
  }
}

const lessons = (taught: readonly Taught[]) => taught.map(({ lesson }) => lesson)
const papersIn = (taught: readonly Taught[]): number => leavesOf(lessons(taught)).length

/** Permits of one page together: a register's leaf teaches as one paper. */
function byLeaf(taught: readonly Taught[]): readonly (readonly Taught[])[] {
  const leaves = new Map<string, Taught[]>()
  for (const one of taught) leaves.set(one.lesson.leaf, [...(leaves.get(one.lesson.leaf) ?? []), one])
  return [...leaves.values()]
}

const isOne = (a: Taught['teacher'], b: Taught['teacher']): boolean =>
  a.transcription === b.transcription && a.permit === b.permit

async function newIn(tx: Tx, county: string, taught: readonly Taught[]): Promise<readonly Taught[]> {
  const done = await haveTaught(tx, county, [...new Set(taught.map(({ teacher }) => teacher.transcription))])
  return taught.filter(({ teacher }) => !done.some((known) => isOne(known, teacher)))
}

/** The form that the first page of a permit is: one that it is read by, else one in whatever state. */
function knownBy(forms: readonly FormOnFile[], { lesson }: Taught): FormOnFile | undefined {
  const page = lesson.pages[0]!
  const among = (some: readonly FormOnFile[]): FormOnFile | undefined => {
    const named = some.map(({ id, taught }) => ({ name: id, form: taught }))
    const found = recognize(page, page.words, named)
    return some.find(({ id }) => id === found?.name)
  }
  return among(forms.filter(({ state }) => state === 'in-force')) ?? among(forms)
}

/** The paper whose words the sheets were made of, so that its pictures show the places. */
function shownOn(alike: readonly Taught[]): { shownOn: string; shownPages: readonly number[] } {
  // The first permit of each leaf, in the order in which leaves are learned from.
  const firsts = byLeaf(alike).map((leaf) => leaf[0]!)
  const { teacher, pages } = firsts[referenceAmong(lessons(firsts))]!
  return { shownOn: teacher.document, shownPages: pages }
}

const saidOf = ({ proposed, grown, dropped }: Learned): string =>
  dropped.length > 0
    ? 'a field of a form layout is no longer read: confirmed documents contradict it'
    : proposed.length > 0
      ? 'a form layout is proposed'
      : grown.length > 0
        ? 'a proposed form layout has grown'
        : 'nothing new'
