import { writeFile } from 'node:fs/promises'
import type { EntryDraft } from '../../../src/reading/proposal.ts'
import { type LayoutName, makeForm } from '../../forms/make.ts'
import type { Truth } from '../../forms/truth.ts'

/** The demonstration's papers, made again: `node tests/cli/demonstration/write-papers.ts`. */
const NOISE: Truth['noise'] = {
  installer: 'Stony Ford Digging',
  fee: '$15.00',
  telephone: '555-0117',
  wellDepth: '110 ft',
}
const REAR = {
  a: 'rear left corner of house',
  b: 'rear right corner of house',
  wall: 'rear' as const,
}
const paper = (parcelNumber: string, address: string, entry: EntryDraft): Truth => ({
  parcelNumber,
  address,
  entry,
  noise: NOISE,
})

/** The paper of no-paper-but-a-system: once it is confirmed, the record agrees with what was found there. */
const card = paper('07-0476-0012', '13 Sedge Pond Rd', {
  number: '66-205',
  kind: 'new',
  issuedOn: 'May 16, 1966',
  approvedOn: 'July 22, 1966',
  bedrooms: 2,
  percRateMpi: 5,
  soilTexture: 'sandy loam',
  reference: { ...REAR, baseline: '26\'-0"' },
  components: [
    {
      tag: 'septic tank',
      kind: 'tank',
      action: 'install',
      capacity: '1,000 gal',
      material: 'concrete',
      length: '8\'-2"',
      width: '4\'-2"',
      liquidDepth: '4\'-0"',
      tie: { a: '15\'-9"', b: '20\'-1"' },
    },
    {
      tag: 'seepage pit',
      kind: 'seepage-pit',
      action: 'install',
      count: 1,
      diameter: '8 ft',
      effectiveDepth: '9 ft',
    },
  ],
})

/** The letter of no-paper-no-inspection. */
const letter = paper('07-0476-0001', '1 Sedge Pond Rd', {
  number: '81-094',
  kind: 'new',
  issuedOn: '4/13/1981',
  approvedOn: '6/26/1981',
  bedrooms: 3,
  designFlowGpd: 450,
  percRateMpi: 12,
  soilTexture: 'loam',
  components: [
    {
      tag: 'septic tank',
      kind: 'tank',
      action: 'install',
      capacity: '1,000 gal',
      material: 'concrete',
      length: '8\'-0"',
      width: '4\'-3"',
      liquidDepth: '4\'-0"',
      tie: { a: '18\'-0"', b: '27\'-6"' },
    },
    {
      tag: 'trenches',
      kind: 'trench',
      action: 'install',
      count: 3,
      length: '65 ft',
      width: '36 in',
      effectiveDepth: '12 in',
    },
  ],
})

const table = paper('07-0486-0011', '37 Larkspur Ln', {
  number: '88-0519',
  kind: 'new',
  issuedOn: '7/11/1988',
  approvedOn: '9/30/1988',
  bedrooms: 4,
  designFlowGpd: 600,
  percRateMpi: 15,
  soilTexture: 'loam',
  reference: { ...REAR, baseline: '38\'-0"' },
  components: [
    {
      tag: 'septic tank',
      kind: 'tank',
      action: 'install',
      capacity: '1,250 gal',
      material: 'concrete',
      compartments: 1,
      length: '9\'-0"',
      width: '4\'-8"',
      liquidDepth: '4\'-0"',
      tie: { a: '21\'-0"', b: '30\'-6"' },
    },
    {
      tag: 'distribution box',
      kind: 'distribution-box',
      action: 'install',
      material: 'concrete',
      tie: { a: '34\'-0"', b: '38\'-0"' },
    },
    {
      tag: 'trenches',
      kind: 'trench',
      action: 'install',
      count: 4,
      length: '65 ft',
      width: '36 in',
      effectiveDepth: '12 in',
    },
  ],
})

/** Two permits of one parcel in one document: the form of 1979 and the print-out of its repair. */
const form = paper('07-0486-0004', '33 Larkspur Ln', {
  number: '79-412',
  kind: 'new',
  issuedOn: '8/20/1979',
  approvedOn: '10/12/1979',
  bedrooms: 3,
  designFlowGpd: 450,
  percRateMpi: 10,
  soilTexture: 'sandy loam',
  reference: { ...REAR, baseline: '30\'-0"' },
  components: [
    {
      tag: 'septic tank',
      kind: 'tank',
      action: 'install',
      capacity: '1,000 gal',
      material: 'steel',
      compartments: 1,
      length: '8\'-0"',
      width: '4\'-2"',
      liquidDepth: '4\'-0"',
      tie: { a: '16\'-6"', b: '24\'-0"' },
    },
    {
      tag: 'building sewer',
      kind: 'building-sewer',
      action: 'install',
      pipeDiameter: '4 in',
      material: 'cast-iron',
    },
    {
      tag: 'seepage pit',
      kind: 'seepage-pit',
      action: 'install',
      count: 2,
      diameter: '8 ft',
      effectiveDepth: '9 ft',
    },
  ],
})
const repair = paper('07-0486-0004', '33 Larkspur Ln', {
  number: '2001-0233',
  kind: 'repair',
  issuedOn: '05/07/2001',
  approvedOn: '05/25/2001',
  bedrooms: 3,
  designFlowGpd: 450,
  percRateMpi: 10,
  soilTexture: 'sandy loam',
  components: [
    {
      tag: 'septic tank',
      kind: 'tank',
      action: 'install',
      capacity: '1,250 gal',
      material: 'concrete',
      compartments: 2,
      length: '9\'-0"',
      width: '4\'-8"',
      liquidDepth: '4\'-0"',
    },
  ],
})

const PAPERS: Record<string, readonly { readonly layout: LayoutName; readonly truth: Truth }[]> = {
  'card-of-1966': [{ layout: 'card-1958', truth: card }],
  'letter-of-1981': [{ layout: 'letter', truth: letter }],
  'form-of-1988': [{ layout: 'form-1986', truth: table }],
  'two-permits-of-one-parcel': [
    { layout: 'form-1978', truth: form },
    { layout: 'printout-1999', truth: repair },
  ],
}

for (const [name, papers] of Object.entries(PAPERS)) {
  const { pdf } = await makeForm(papers.map((it) => ({ ...it, seed: 0 })))
  await writeFile(new URL(`../../../src/cli/demonstration/papers/${name}.pdf`, import.meta.url), pdf)
}
