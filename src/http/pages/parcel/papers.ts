import type { Document, DocumentState } from '../../../store/documents.ts'
import type { PermitOnFile } from '../../../store/permits.ts'
import { dayInWords } from '../words/dates.ts'
import { counted } from '../words/plain.ts'

export type PaperLine = { readonly name: string; readonly says: string; readonly remarks: string | null }

const DOCUMENT_WORDS: { readonly [S in DocumentState]: string } = {
  received: 'waiting to be read',
  reading: 'being read',
  proposed: 'read, waiting to be confirmed',
  confirmed: 'confirmed',
  'set-aside': 'set aside',
  failed: 'could not be read',
}

/** The permits of the file, in the order of their dates. */
export const presentPermits = (permits: readonly PermitOnFile[]): readonly PaperLine[] =>
  [...permits].sort(byDate).map(({ record, revision }) => ({
    name: `${record.number} (${record.kind})`,
    says: [
      record.issuedOn ? `issued ${dayInWords(record.issuedOn)}` : 'no issue date',
      record.approvedOn
        ? `approved ${dayInWords(record.approvedOn)}`
        : 'no final approval, so not part of the record',
      counted(record.components.length, 'component'),
      ...(revision > 1 ? [`corrected ${revision - 1 === 1 ? 'once' : `${revision - 1} times`}`] : []),
    ].join(', '),
    remarks: record.remarks,
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
