import { createHash } from 'node:crypto'
import { Readable } from 'node:stream'
import { OutsideFailure } from '../../base/outside-failure.ts'
import { ok } from '../../base/result.ts'
import { DamagedOriginal } from '../../files/whole-file.ts'
import { picturesNamed } from '../../letters/content/photos.ts'
import type { Caller } from '../../store/access/find-token.ts'
import type { Person } from '../../store/database/actor.ts'
import { transact, withoutCounty } from '../../store/database/transact.ts'
import { countyOfLetter, type Letter, letterById, lettersOf, printedContent } from '../../store/letters.ts'
import type { Parcel } from '../../store/parcels.ts'
import type { OperationContext } from '../context.ts'
import { parcelAsked } from '../parcels/parcel-asked.ts'
import { type Answer, notFound } from '../refusal.ts'
import { picturesKept } from './report-photos.ts'

export type LetterPdf = { readonly letter: Letter; readonly pdf: Readable }

/** A parcel's letters, newest first: all for a reviewer, for others those that were given to their own organization. */
export const listLetters = (
  context: Pick<OperationContext, 'database'>,
  actor: Person,
  asked: string,
): Promise<Answer<{ readonly parcel: Parcel; readonly letters: readonly Letter[] }>> =>
  transact(context.database, actor, async (tx) => {
    const parcel = await parcelAsked(tx, actor.county, asked)
    if (!parcel.ok) return parcel
    return ok({ parcel: parcel.value, letters: await lettersOf(tx, actor.county, parcel.value.id) })
  })

/** The very bytes that were sealed. Asked for by id alone, so the county is found first. */
export async function readLetterPdf(
  context: Pick<OperationContext, 'database' | 'files' | 'letters'>,
  { account, organization, role, counties }: Caller,
  id: string,
): Promise<Answer<LetterPdf>> {
  const county = await withoutCounty(context.database, (tx) => countyOfLetter(tx, id))
  if (county === undefined || !counties.includes(county)) return notFound()
  const actor: Person = { account, organization, role, county }
  const read = await transact(context.database, actor, async (tx) => {
    const letter = await letterById(tx, county, id)
    return letter && { letter, content: await printedContent(tx, county, id) }
  })
  if (!read) return notFound()
  const { letter, content } = read
  const kept = await context.files.read(letter.pdfSha256).catch(absentWhereDamaged)
  return ok({ letter, pdf: kept ?? (await printAgain(context, letter, content)) })
}

/** A damaged letter is as good as a lost one: it is printed again, and put in its place. */
export function absentWhereDamaged(fault: unknown): undefined {
  if (fault instanceof DamagedOriginal) return undefined
  throw fault
}

/** Where the file was lost: the same content gives the same bytes, or it is not the letter that was sealed. */
async function printAgain(
  { files, letters }: Pick<OperationContext, 'files' | 'letters'>,
  { kind, number, pdfSha256 }: Letter,
  content: unknown,
): Promise<Readable> {
  const pictures = await picturesKept(files, picturesNamed(content))
  const { pdf } = await letters.print({ kind, contents: [content], mostPages: null, pictures })
  if (createHash('sha256').update(pdf).digest('hex') !== pdfSha256) {
    throw new OutsideFailure(
      `The PDF of letter ${number} is missing, and this version prints it differently: restore it from a backup`,
    )
  }
  await files.keep(Readable.from([pdf]))
  return Readable.from([pdf])
}
