import type { Document, DocumentState } from '../../../store/documents.ts'
import type { PermitElsewhere } from '../../../store/filing-changes.ts'
import type { PermitOnFile } from '../../../store/permits.ts'
import { PERMIT_STANDING_WORDS } from '../../../words/filing.ts'
import { permitPath } from '../layout/addresses.ts'
import { dayInWords } from '../words/dates.ts'
import { counted } from '../words/plain.ts'

export type PaperLine = {
  readonly name: string
  readonly says: string
  readonly remarks: string | null
  /** The page of its own. */
  readonly path?: string
}

const DOCUMENT_WORDS: { readonly [S in DocumentState]: string } = {
  received: 'waiting to be read',
  reading: 'being read',
  proposed: 'read, waiting to be confirmed',
  confirmed: 'confirmed',
  'set-aside': 'set aside',
  failed: 'could not be read',
}

/** The permits of the file, in the order of their dates. */
export const presentPermits = (county: string, permits: readonly PermitOnFile[]): readonly PaperLine[] =>
  [...permits].sort(byDate).map(({ id, record, revision }) => ({
    path: permitPath(county, id),
    name: `${record.number} (${record.kind})`,
    says: [
      record.issuedOn ? `issued ${dayInWords(record.issuedOn)}` : 'no issue date',
      record.approvedOn
        ? `approved ${dayInWords(record.approvedOn)}`
        : 'no final approval, so not part of the record',
      counted(record.components.length, 'component'),
      ...(revision > 1 ? [`changed ${revision - 1 === 1 ? 'once' : `${revision - 1} times`}`] : []),
    ].join(', '),
    remarks: record.remarks,
  }))

/** Permits that the file once counted: void, merged, or moved to another parcel. */
export const presentElsewhere = (
  county: string,
  permits: readonly PermitElsewhere[],
  parcel: string,
): readonly PaperLine[] =>
  permits.map((it) => ({
    path: permitPath(county, it.id),
    name: `${it.number} (${it.kind})`,
    says: [
      ...(it.parcel === parcel ? [] : [`moved to ${it.parcelNumber}`]),
      ...(it.standing === 'in-file' ? [] : [PERMIT_STANDING_WORDS[it.standing]]),
      'not part of this record',
    ].join(', '),
    remarks: null,
  }))

const byDate = (a: PermitOnFile, b: PermitOnFile): number => dateOf(a).localeCompare(dateOf(b))
const dateOf = ({ record }: PermitOnFile): string => record.approvedOn ?? record.issuedOn ?? '9999'

export const presentDocuments = (documents: readonly Document[]): readonly PaperLine[] =>
  documents.map(({ fileName, state, pages, reason, permits }) => ({
    name: fileName ?? 'unnamed document',
    says: [
      DOCUMENT_WORDS[state],
      ...(pages === null ? [] : [counted(pages, 'page')]),
      ...(state === 'proposed' ? [`${counted(permits.length, 'permit')} found`] : []),
    ].join(', '),
    remarks: reason,
  }))
