import { ok } from '../../base/result.ts'
import { FILING_REASONS, type FilingAct } from '../../records/filing.ts'
import type { Tx } from '../../store/database/database.ts'
import { parcelById } from '../../store/parcels.ts'
import { type PermitOnFile, permitById } from '../../store/permits.ts'
import { parcelAsked } from '../parcels/parcel-asked.ts'
import { type Answer, invalid } from '../refusal.ts'
import { systemAsked } from '../systems/system-asked.ts'
import type { FilingChangeAsked } from './filing-asked.ts'

export type FilingPlace = {
  readonly target: Pick<PermitOnFile, 'parcel' | 'system' | 'standing' | 'mergedInto'>
  /** The permit that it is merged into, or separated from. */
  readonly other: PermitOnFile | undefined
}

/** Where a change would put the permit; what is wrong with what was asked, whatever state the permit is in. */
export async function placeAsked(
  tx: Tx,
  county: string,
  permit: PermitOnFile,
  asked: FilingChangeAsked,
): Promise<Answer<FilingPlace>> {
  const reasons: readonly string[] = FILING_REASONS[asked.act]
  if (!reasons.includes(asked.reason))
    return invalid({
      pointer: '/reason',
      message: `is no reason to ${asked.act}: write one of ${reasons.join(', ')}`,
    })
  if (asked.reason === 'other' && asked.note === null)
    return invalid({ pointer: '/note', message: 'say in your own words why: the reason is "other"' })
  const { parcel, system } = permit
  const here = { parcel, system }
  switch (asked.act) {
    case 'move':
      return placeOfMove(tx, county, permit, asked)
    case 'void':
      return ok({ target: { ...here, standing: 'void', mergedInto: null }, other: undefined })
    case 'restore':
      return ok({ target: { ...here, standing: 'in-file', mergedInto: null }, other: undefined })
    case 'merge': {
      const into = asked.into ?? ''
      if (into === permit.id)
        return invalid({
          pointer: '/into',
          message: 'is this very permit: name the one that it is merged into',
        })
      const other = await permitById(tx, county, into)
      if (!other) return invalid({ pointer: '/into', message: 'is no permit of this county' })
      return ok({ target: { ...here, standing: 'merged', mergedInto: other.id }, other })
    }
    case 'separate': {
      const other = permit.mergedInto === null ? undefined : await permitById(tx, county, permit.mergedInto)
      return ok({ target: { ...here, standing: 'in-file', mergedInto: null }, other })
    }
  }
}

async function placeOfMove(
  tx: Tx,
  county: string,
  permit: PermitOnFile,
  { toParcel = '', system }: FilingChangeAsked,
): Promise<Answer<FilingPlace>> {
  const fault = (message: string) => invalid({ pointer: '/toParcel', message })
  const found = await parcelAsked(tx, county, toParcel)
  if (!found.ok) {
    const several = found.error.why === 'not-found' ? found.error.says : undefined
    return fault(several ?? `there is no parcel ${toParcel} in this county`)
  }
  const { id, number, retiredOn } = found.value
  if (id === permit.parcel) return fault(`the permit is in the file of ${number} already`)
  if (retiredOn !== null && (await parcelById(tx, county, permit.parcel))?.retiredOn === null)
    return fault(`${number} was retired on ${retiredOn}: move it to the parcel that it became`)
  const placed = await systemAsked(tx, county, id, system)
  if (!placed.ok) return placed
  const target = { parcel: id, system: placed.value.system.id, standing: permit.standing, mergedInto: null }
  return ok({ target, other: undefined })
}

/** In words, where the state of the permit does not allow it. */
export function cannotBeFiledSo(
  { standing, mergedInto }: PermitOnFile,
  act: FilingAct,
  other: PermitOnFile | undefined,
): string | undefined {
  const needs = act === 'restore' ? 'void' : act === 'separate' ? 'merged' : 'in-file'
  if (standing !== needs) {
    if (standing === 'void')
      return act === 'void' ? 'This permit is void already.' : 'This permit is void: restore it first.'
    if (standing === 'merged') return `This permit is merged into ${mergedInto}: separate it first.`
    return act === 'restore' ? 'This permit is not void.' : 'This permit is not merged into another.'
  }
  if (act !== 'merge' || !other || other.standing === 'in-file') return undefined
  return other.standing === 'void'
    ? 'The permit to merge into is void: restore it first, or merge the other way.'
    : `The permit to merge into is itself merged into ${other.mergedInto}: merge into that one.`
}
