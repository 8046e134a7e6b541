import { writeFile } from 'node:fs/promises'
import { type LayoutName, makeForm } from './make.ts'

/** The samples beside this file, made again: `node tests/forms/write-samples.ts`. */
const SAMPLES: Record<string, readonly { readonly layout: LayoutName; readonly seed: number }[]> = {
  'card-1958': [{ layout: 'card-1958', seed: 1 }],
  'ledger-1967': [{ layout: 'ledger-1967', seed: 2 }],
  'form-1978': [{ layout: 'form-1978', seed: 3 }],
  'form-1986': [{ layout: 'form-1986', seed: 4 }],
  'printout-1999': [{ layout: 'printout-1999', seed: 5 }],
  'form-2015': [{ layout: 'form-2015', seed: 6 }],
  letter: [{ layout: 'letter', seed: 7 }],
  'two-permits': [
    { layout: 'form-1978', seed: 8 },
    { layout: 'printout-1999', seed: 9 },
  ],
}

for (const [name, papers] of Object.entries(SAMPLES)) {
  const { pdf, papers: made } = await makeForm(papers)
  await writeFile(new URL(`./samples/${name}.pdf`, import.meta.url), pdf)
  const says = made.map(({ truth, pages }) => ({ pages, ...truth }))
  await writeFile(new URL(`./samples/${name}.json`, import.meta.url), `${JSON.stringify(says, null, 2)}\n`)
}
