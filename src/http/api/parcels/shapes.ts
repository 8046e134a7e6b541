import { z } from 'zod'
import type { ParcelFile, ParcelRead } from '../../../operations/parcels/read-parcel.ts'
import type { System } from '../../../records/system.ts'
import { type Alias, MATCHES, type Parcel } from '../../../store/parcels.ts'
import { discrepancyInQueue, presentOfParcel } from '../discrepancies/shapes.ts'
import { documentInList, presentDocumentInList } from '../documents/shapes.ts'
import { findings, presentFindings } from '../findings/shapes.ts'
import { permitElsewhere, presentElsewhere } from '../permits/filing.ts'
import { permit, presentPermit } from '../permits/shapes.ts'
import { asBuilt, presentAsBuilt } from '../shapes/as-built.ts'
import { day, id } from '../shapes/basics.ts'
import { presentStatus, status } from '../shapes/status.ts'
import { presentSystem, system } from '../shapes/system.ts'

const basics = {
  id,
  number: z.string(),
  address: z.string().nullable(),
  retiredOn: day.nullable().meta({ description: 'Split or merged away on that day' }),
}

export const parcelBasics = z.object(basics).meta({
  id: 'ParcelBasics',
  examples: [
    {
      id: '01991c5e-7d7a-7a64-9f0c-2f7f0f7f6a11',
      number: '07-0412-0031',
      address: '31 Mill Pond Road',
      retiredOn: null,
    },
  ],
})
export const presentBasics = ({
  id: of,
  number,
  address,
  retiredOn,
}: Parcel): z.output<typeof parcelBasics> => ({
  id: of,
  number,
  address,
  retiredOn,
})

export const parcelFound = z
  .object({
    ...basics,
    match: z
      .object({ by: z.enum(MATCHES), says: z.string(), score: z.number() })
      .nullable()
      .meta({ description: 'How the search found it; null without a search' }),
  })
  .meta({ id: 'ParcelFound' })

const alias = z.object({
  number: z.string(),
  kind: z.enum(['renumbered', 'split', 'merged']),
  changedOn: day.nullable(),
  note: z.string().nullable(),
})
const presentAlias = (it: Alias): z.output<typeof alias> => ({ ...it })

export const parcel = z
  .object({
    ...basics,
    oldNumbers: z.array(alias),
    status,
    systems: z.array(system).optional().meta({ description: 'Those that serve the parcel or lie on it' }),
    system: id.optional().meta({ description: 'The one whose file follows' }),
    asBuilt: asBuilt.optional(),
    permits: z.array(permit).optional(),
    permitsElsewhere: z
      .array(permitElsewhere)
      .optional()
      .meta({ description: 'Void, merged, or moved to another parcel: they build nothing here' }),
    findings: z.array(findings).optional(),
    discrepancies: z
      .array(discrepancyInQueue)
      .optional()
      .meta({ description: 'Those that are open or decided, most serious first' }),
    documents: z.array(documentInList).optional(),
  })
  .meta({
    id: 'Parcel',
    description:
      'What the caller may see: an agent the status; a firm the as-built, the permits, its own findings and what ' +
      'they raised; a reviewer everything.',
  })

export const presentParcel = (
  { parcel: it, oldNumbers, status: now, file }: ParcelRead,
  role: 'reviewer' | 'firm' | 'agent',
): z.output<typeof parcel> => ({
  ...presentBasics(it),
  oldNumbers: oldNumbers.map(presentAlias),
  status: presentStatus(now),
  ...(file ? presentFile(it, file, role) : {}),
})

/** A shared system's differences lie with its home parcel, of which only the number is told. */
const homeOf = (of: System, it: Parcel): Pick<Parcel, 'number' | 'address'> => {
  const home = of.parcels.find(({ parcel: on }) => on === of.parcel)
  return of.parcel === it.id || !home ? it : { number: home.number, address: null }
}

const presentFile = (it: Parcel, file: ParcelFile, role: 'reviewer' | 'firm' | 'agent') => ({
  systems: file.systems.map((one) => presentSystem(one, file.systems)),
  system: file.system.id,
  asBuilt: presentAsBuilt(file.asBuilt),
  permits: file.permits.map(presentPermit),
  permitsElsewhere: file.permitsElsewhere.map(presentElsewhere),
  findings: file.findings.map(presentFindings),
  discrepancies: file.discrepancies.map((standing) => presentOfParcel(standing, homeOf(file.system, it))),
  ...(role === 'reviewer' ? { documents: file.documents.map(presentDocumentInList) } : {}),
})
