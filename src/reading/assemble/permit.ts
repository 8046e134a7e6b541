import type { ComponentKind } from '../../catalog/kinds.ts'
import type { PermitAsk } from '../asks.ts'
import { crossChecked } from '../check/apply.ts'
import type { ProposedField, ProposedPermit } from '../proposal.ts'
import type { PageReadings, Statement } from '../statement.ts'
import { choose } from './choose.ts'
import { componentFields, fieldOf } from './component-fields.ts'
import { componentsOf } from './component-list.ts'
import { entryFrom, missingFrom } from './entry.ts'
import { wallField } from './wall.ts'

/** Where the permit's own answers go. */
const PLACES: Record<PermitAsk, string> = {
  number: '/number',
  kind: '/kind',
  issuedOn: '/issuedOn',
  approvedOn: '/approvedOn',
  bedrooms: '/bedrooms',
  designFlowGpd: '/designFlowGpd',
  percRateMpi: '/percRateMpi',
  soilTexture: '/soilTexture',
  parcelNumber: '/parcelNumber',
  address: '/address',
  cornerA: '/reference/a',
  cornerB: '/reference/b',
  baseline: '/reference/baseline',
  remarks: '/remarks',
}

/** The names components go by in an entry; with a number where a permit has several of a kind. */
const TAGS: Partial<Record<ComponentKind, string>> = {
  tank: 'septic tank',
  trench: 'trenches',
  chambers: 'chambers',
}
const tagOf = (kind: ComponentKind): string => TAGS[kind] ?? kind.replace(/-/g, ' ')

/** One permit from all that its pages say. */
export function assembledPermit(pages: readonly number[], readings: PageReadings): ProposedPermit {
  const asked = (ask: PermitAsk): readonly Statement[] =>
    readings.statements.filter((statement) => statement.ask === ask)
  const own = (Object.keys(PLACES) as PermitAsk[]).flatMap((ask): ProposedField[] => {
    const chosen = choose(asked(ask))
    return chosen ? [fieldOf(PLACES[ask], chosen)] : []
  })
  const components = componentsOf(
    readings.statements.filter(({ ask }) => !(ask in PLACES)),
    readings.mentions,
  )
  const tags = new Map<string, number>()
  const parts = components.flatMap((component, index) => {
    const name = `${component.existing ? 'existing ' : ''}${tagOf(component.kind)}`
    const several =
      components.filter(({ kind, existing }) => kind === component.kind && existing === component.existing)
        .length > 1
    const nth = (tags.get(name) ?? 0) + 1
    tags.set(name, nth)
    return componentFields(component, index, several ? `${name} ${nth}` : name)
  })
  const separate = new Set(['/parcelNumber', '/address'])
  const fields = [...own.filter(({ pointer }) => !separate.has(pointer)), ...wallField(own), ...parts]
  const entry = entryFrom(fields)
  const extra = new Map(
    components.flatMap(({ statements }, index) =>
      statements
        .filter(({ ask }) => ask === 'rate')
        .map(({ ask, value }) => [`/components/${index}/${ask}`, Number(value)] as const),
    ),
  )
  const parcelNumber = own.find(({ pointer }) => pointer === '/parcelNumber') ?? null
  return {
    pages,
    fields: crossChecked(fields, entry, extra),
    entry,
    parcelNumber,
    address: own.find(({ pointer }) => pointer === '/address') ?? null,
    missing: missingFrom(entry, parcelNumber !== null),
    unsure: [],
    family: null,
  }
}
