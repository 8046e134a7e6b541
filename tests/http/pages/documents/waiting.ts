import { Readable } from 'node:stream'
import { must } from '../../../../src/base/result.ts'
import { readPaper } from '../../../../src/operations/documents/read-paper.ts'
import { takeInDocument } from '../../../../src/operations/documents/take-in-document.ts'
import { addParcel } from '../../../../src/operations/parcels/add-parcel.ts'
import { type Person, serviceIn } from '../../../../src/store/database/actor.ts'
import { type LayoutName, type MadeForm, makeForm } from '../../../forms/make.ts'
import type { TestApp } from '../../../support/app.ts'
import { COUNTY } from '../../../support/people.ts'

export type Waiting = { readonly id: string; readonly papers: MadeForm['papers'] }

let seed = 3_000
let files = 3_000

/** A paper with a permit for each layout, read and waiting to be confirmed; its parcels are in the county. */
export async function waitingPaper(
  { services }: Pick<TestApp, 'services'>,
  actor: Person,
  ...layouts: readonly LayoutName[]
): Promise<Waiting> {
  const { pdf, papers } = await makeForm(layouts.map((layout) => ({ layout, seed: ++seed })))
  return { id: await waitingOf({ services }, actor, pdf, papers), papers }
}

/** A file with these papers on it, read and waiting to be confirmed. */
export async function waitingOf(
  { services }: Pick<TestApp, 'services'>,
  actor: Person,
  pdf: Uint8Array,
  papers: readonly Pick<MadeForm['papers'][number], 'truth'>[],
): Promise<string> {
  for (const { truth } of papers) {
    must(
      await addParcel(services, serviceIn(COUNTY), {
        number: truth.parcelNumber,
        address: truth.address,
        retiredOn: null,
        oldNumbers: [],
      }),
    )
  }
  const kept = await services.files.keep(Readable.from([pdf]))
  const fileName = `box-${++files}.pdf`
  const paper = { kept, mediaType: 'application/pdf', fileName, parcel: null }
  const { document } = must(await takeInDocument(services, actor, paper))
  await readPaper(services, {
    id: document.id,
    actor,
    data: { document: document.id },
    report: async () => {},
    signal: new AbortController().signal,
  })
  return document.id
}
