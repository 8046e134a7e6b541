import type { PlainDate } from '../../base/plain-date.ts'
import { COUNTY } from './enrol.ts'
import { PAPERS } from './load-papers.ts'
import type { DemoSignIn } from './sign-in-for.ts'

export type Guided = {
  readonly address: string
  readonly dataFolder: string
  /** Parcels loaded at this start; none where they were there already. */
  readonly loaded: number
  readonly tokens: { readonly reviewer: string; readonly firm: string; readonly agent: string }
  readonly signIns: { readonly [role in 'reviewer' | 'firm' | 'agent']: DemoSignIn }
  readonly today: PlainDate
}

/** A record and an inspection that differ: a smaller tank than permitted, and another pipe. Lengths in inches need no quoting. */
const trialOf = (today: PlainDate) => ({
  rules: COUNTY.id,
  permits: [
    {
      number: '77-501',
      kind: 'new',
      issuedOn: '5/9/77',
      approvedOn: '7/1/77',
      bedrooms: 3,
      components: [
        { tag: 'tank', kind: 'tank', capacity: '1,000 gal', material: 'concrete' },
        { tag: 'sewer', kind: 'building-sewer', material: 'cast-iron', pipeDiameter: '4 in' },
      ],
    },
  ],
  findings: {
    inspectedOn: today,
    occupancy: 'occupied',
    ground: 'dry',
    backup: false,
    bedroomsCounted: 3,
    components: [
      {
        key: 'permit-1/tank',
        label: 'tank',
        kind: 'tank',
        outcome: 'found',
        opened: 'cover-off',
        material: 'concrete',
        length: '84 in',
        width: '43 in',
        liquidDepth: '48 in',
        levelAboveOutlet: { below: '7 in' },
      },
      { key: 'permit-1/sewer', label: 'sewer', kind: 'building-sewer', outcome: 'found', material: 'pvc' },
    ],
  },
})

/** Picks lines out of an answer, so that a terminal shows sentences and not pages of JSON. */
const pick = (lines: string): string =>
  `node -p 'JSON.parse(require("fs").readFileSync(0)).${lines}.join("\\n")'`

/** What the demonstration tells whoever started it: where it is, a token for each role, and three lines to paste. */
export function guide({ address, dataFolder, loaded, tokens, signIns, today }: Guided): string {
  const get = (path: string, token: string) =>
    `curl -s '${address}${path}' -H 'Authorization: Bearer ${token}'`
  const here = `/v1/counties/${COUNTY.id}`
  const trial = [
    get('/v1/reconciliations/trial', tokens.firm),
    `-H 'Content-Type: application/json'`,
    `-d '${JSON.stringify(trialOf(today))}'`,
    `| ${pick('discrepancies.map((it) => it.severity + ": " + it.sentences.firm)')}`,
  ].join(' ')
  const queue = `${get(`${here}/discrepancies?severity=action&limit=5`, tokens.reviewer)} | ${pick(
    'items.map((it) => it.parcel.number + " " + it.kind + ": " + it.because)',
  )}`
  const status = get(`${here}/parcels/07-0433-0017/status`, tokens.agent)
  return [
    `Asfound, with the invented ${COUNTY.name}: ${address}`,
    `API documentation: ${address}/docs. Press Ctrl-C to stop.`,
    loaded > 0
      ? `Loaded ${loaded} parcels into ${dataFolder}, and ${PAPERS.length} documents to confirm.`
      : `Using the parcels in ${dataFolder}. Delete the folder to start over.`,
    '',
    'Tokens (new at each start, valid for 30 days):',
    `  reviewer  ${tokens.reviewer}`,
    `  firm      ${tokens.firm}`,
    `  agent     ${tokens.agent}`,
    '',
    `Pages: sign in at ${address}/sign-in (passwords are new at each start):`,
    ...Object.values(signIns).map(({ name, password }) => `  ${name.padEnd(8)}  ${password}`),
    '',
    '1. A firm compares a record with an inspection and sees the differences (nothing is stored):',
    trial,
    '',
    '2. The health department’s queue, most serious first:',
    queue,
    '',
    '3. What a lender can see of one parcel:',
    status,
    '',
  ].join('\n')
}
