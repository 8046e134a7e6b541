import { SYSTEM_FIELDS, type SystemField } from '../../catalog/catalog.ts'
import { PERMIT_FIELDS } from '../../catalog/permit-fields.ts'
import { STATUS_WORDS } from '../../reconcile/status.ts'
import { VOICES } from '../../words/agent/status.ts'
import { SYSTEMS_VOICE } from '../../words/agent/systems.ts'
import { type ExportTable, instant, list, plain, text } from './column.ts'

export const EXPORTS = ['parcels', 'discrepancies', 'permits'] as const
export type ExportName = (typeof EXPORTS)[number]

/** Every table is asked for by the county that is asking, as its keys and policies have it. */
const HERE = 'asking_county()'

const point = (component: string): string =>
  `json_build_object('type', 'Point', 'coordinates', json_build_array(${component} #> '{fix,lon}', ${component} #> '{fix,lat}'))`

/** The newest inspection's fix of a tank, else of whatever has one: longitude first, WGS 84 (RFC 7946, 3.1.1 and 4). */
const PARCEL_POSITION = `(
  select ${point('c')} from (
    select f.record from findings f
    where f.county = p.county and f.parcel = p.id and f.state = 'submitted'
    order by f.inspected_on desc, f.id desc limit 1) newest
  cross join lateral jsonb_array_elements(newest.record -> 'components') as c
  where jsonb_typeof(c -> 'fix') = 'object' order by c ->> 'kind' <> 'tank', c ->> 'label' limit 1)`

/** The fix of the very component that it is about, on the inspection that raised it. */
const DISCREPANCY_POSITION = `(
  select ${point('c')} from reconciliation r
  join findings f on f.county = r.county and f.id = r.findings
  cross join lateral jsonb_array_elements(f.record -> 'components') as c
  where r.county = d.county and r.id = d.reconciliation and jsonb_typeof(c -> 'fix') = 'object'
    and (c ->> 'key' = d.body #>> '{outcome,subject,key}' or c ->> 'label' = d.body #>> '{outcome,subject,label}')
  limit 1)`

const quoted = (sentence: string): string => `'${sentence.replaceAll("'", "''")}'`

/** As `ofSeveral` puts it before the sentence. */
const OF_SEVERAL = `case
  when jsonb_array_length(coalesce(s.body -> 'systems', '[]')) < 2 then ''
  when s.word in ('matches', 'resolved') then ${quoted(`${SYSTEMS_VOICE.en.each} `)}
  else ${quoted(`${SYSTEMS_VOICE.en.one} `)} end`

/** The status sentence for each word, as people read it. */
const SENTENCE = `${OF_SEVERAL} || case
  when s.word = 'resolved' and s.body -> 'waived' <> '[]' then ${quoted(VOICES.en.resolvedByWaiver)}
  ${STATUS_WORDS.map((word) => `when s.word = '${word}' then ${quoted(VOICES.en.sentence[word])}`).join('\n  ')} end`

/** How many septic systems serve it or lie on it: its own, made by itself, where nothing is said. */
const SYSTEMS = `coalesce(nullif(jsonb_array_length(coalesce(s.body -> 'systems', '[]')), 0), 1)`

/** The label of a system of which something was said. */
const systemLabel = (of: string): string =>
  `(select y.label from system y where y.county = ${of}.county and y.id = ${of}.system)`

const PARCELS: ExportTable = {
  id: 'p.id',
  columns: [
    text('number', 'p.number'),
    text('address', 'p.address'),
    plain('retiredOn', 'p.retired_on'),
    list(
      'oldNumbers',
      'array(select a.number from parcel_alias a where a.county = p.county and a.parcel = p.id order by a.number)',
    ),
    plain('status', 's.word'),
    text('says', SENTENCE),
    plain('systems', SYSTEMS),
    plain('statusDerivedAt', instant('s.derived_at')),
    plain('statusGoodUntil', 's.good_until'),
    plain('id', 'p.id'),
  ],
  from: `parcel p left join parcel_status s on s.county = p.county and s.parcel = p.id and p.county = ${HERE}`,
  order: 'p.county, p.number',
  geometry: PARCEL_POSITION,
}

const DISCREPANCIES: ExportTable = {
  id: 'd.id',
  columns: [
    text('parcel', 'p.number'),
    text('address', 'p.address'),
    plain('system', 'd.system'),
    text('systemLabel', systemLabel('d')),
    plain('kind', 'd.kind'),
    plain('severity', 'd.severity'),
    plain('state', 'd.state'),
    text('about', `d.body #>> '{outcome,subject,label}'`),
    text('says', 'd.says'),
    plain('next', `d.body ->> 'act'`),
    plain('raisedAt', instant('d.raised_at')),
    plain('changedAt', instant('d.changed_at')),
    plain('id', 'd.id'),
  ],
  from: `discrepancy d join parcel p on p.county = d.county and p.id = d.parcel and d.county = ${HERE}`,
  order: 'd.county, d.id',
  geometry: DISCREPANCY_POSITION,
}

/** Taken out of the whole once for each row: every look into a long document unpacks all of it. */
const stated = (field: string): string => `said.record ->> '${field}'`

const statedColumn = (name: SystemField) =>
  PERMIT_FIELDS[name].value === 'line' ? text(name, stated(name)) : plain(name, stated(name))

const PERMITS: ExportTable = {
  id: 't.id',
  columns: [
    text('parcel', 'p.number'),
    plain('system', 't.system'),
    text('systemLabel', systemLabel('t')),
    text('number', 't.number'),
    plain('kind', 't.kind'),
    plain('issuedOn', 't.issued_on'),
    plain('approvedOn', 't.approved_on'),
    plain('standing', `coalesce(t.standing, 'in-file')`),
    plain('mergedInto', 't.merged_into'),
    ...SYSTEM_FIELDS.map(statedColumn),
    text('remarks', stated('remarks')),
    plain('components', `jsonb_array_length(said.record -> 'components')`),
    plain('revision', 't.revision'),
    plain('id', 't.id'),
  ],
  from: `permit t join parcel p on p.county = t.county and p.id = t.parcel and t.county = ${HERE}
    cross join lateral (select t.record -> 'record' as record offset 0) said`,
  order: 't.county, t.id',
  geometry: 'null::json',
}

export const EXPORT_TABLES: { readonly [N in ExportName]: ExportTable } = {
  parcels: PARCELS,
  discrepancies: DISCREPANCIES,
  permits: PERMITS,
}

/**
 * The same permits in the fields of the Building and Land Development Specification (its page of 1 April 2016): all that
 * it requires, in its order, then those it recommends that a septic permit can fill. It has no field for a parcel number
 * among these; `PIN` and the mapped status of a void permit are from memory.
 */
export const BLDS: ExportTable = {
  ...PERMITS,
  columns: [
    text('PermitNum', 't.number'),
    text('Description', stated('remarks')),
    plain('AppliedDate', 'null'),
    plain('IssuedDate', 't.issued_on'),
    plain('CompletedDate', 't.approved_on'),
    plain(
      'StatusCurrent',
      `case when t.standing = 'void' then 'Void' when t.standing = 'merged' then 'Merged into another permit'
        when t.approved_on is not null then 'Final approval' when t.issued_on is not null then 'Issued' end`,
    ),
    text('OriginalAddress1', 'p.address'),
    plain('OriginalAddress2', 'null'),
    plain('OriginalCity', 'null'),
    plain('OriginalState', 'null'),
    plain('OriginalZip', 'null'),
    text('Jurisdiction', 'k.name'),
    plain(
      'StatusCurrentMapped',
      `case when t.standing is not null then 'Permit Cancelled'
        when t.approved_on is not null then 'Permit Finaled' when t.issued_on is not null then 'Permit Issued' end`,
    ),
    plain('WorkClass', 't.kind'),
    plain('PermitType', `'septic'`),
    text('PIN', 'p.number'),
  ],
  from: `${PERMITS.from} join county k on k.id = t.county`,
}
