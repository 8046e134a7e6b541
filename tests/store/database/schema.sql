-- Tables

table access_event (
  id uuid not null,
  organization uuid not null,
  account uuid,
  kind text not null,
  made_by uuid,
  body jsonb not null default '{}'::jsonb,
  happened_at timestamp with time zone not null
) with row level security

table access_token (
  id uuid not null,
  account uuid not null,
  name text not null,
  hash bytea not null,
  counties text[] not null,
  writes text[] not null default '{}'::text[],
  manages boolean not null default false,
  issued_by uuid,
  created_at timestamp with time zone not null default now(),
  expires_at timestamp with time zone,
  revoked_at timestamp with time zone,
  last_used_at timestamp with time zone
) with row level security

table account (
  id uuid not null,
  organization uuid not null,
  label text not null,
  role text not null,
  administers boolean not null default false,
  suspended_at timestamp with time zone,
  erased_at timestamp with time zone,
  created_at timestamp with time zone not null default now()
) with row level security

table admission (
  county text not null,
  organization uuid not null,
  admitted_by uuid,
  admitted_at timestamp with time zone not null default now(),
  withdrawn_at timestamp with time zone
) with row level security

table audit (
  county text not null,
  number bigint not null,
  at timestamp with time zone not null,
  act text not null,
  kind text not null,
  record text not null,
  account uuid,
  organization uuid,
  role text not null,
  before_hash text,
  after_hash text,
  hash text not null
) with row level security

table audit_break (
  number bigint not null,
  noted_at timestamp with time zone not null default now(),
  says text not null
) with row level security

table audit_noting (
  one boolean not null default true,
  noted_at timestamp with time zone not null,
  faults bigint not null
) with row level security

table county (
  id text not null,
  name text not null,
  rule_pack text not null,
  parcel_format jsonb not null,
  revision integer not null default 1,
  created_at timestamp with time zone not null default now(),
  keeps_names boolean not null default false
) with row level security

table decision (
  county text not null,
  id uuid not null,
  discrepancy uuid not null,
  parcel uuid not null,
  action text not null,
  reason text not null,
  evidence_hash text not null,
  body jsonb not null default '{}'::jsonb,
  supersedes uuid,
  decided_by uuid not null,
  decided_at timestamp with time zone not null default now(),
  of_system uuid,
  system uuid not null generated as COALESCE(of_system, parcel)
) with row level security

table delivery (
  county text not null,
  id uuid not null,
  subscription uuid not null,
  parcel uuid not null,
  body text not null,
  state text not null default 'waiting'::text,
  tries integer not null default 0,
  next_at timestamp with time zone not null,
  says text,
  made_at timestamp with time zone not null default now(),
  changed_at timestamp with time zone not null default now()
) with row level security

table discrepancy (
  county text not null,
  id uuid not null,
  parcel uuid not null,
  kind text not null,
  subject text not null,
  organization uuid,
  severity text not null,
  severity_rank smallint not null generated as 
CASE severity
    WHEN 'action'::text THEN 1
    WHEN 'review'::text THEN 2
    ELSE 3
END,
  state text not null,
  evidence_hash text not null,
  reconciliation uuid not null,
  body jsonb not null,
  says text not null,
  decision uuid,
  raised_at timestamp with time zone not null,
  changed_at timestamp with time zone not null,
  revision integer not null default 1,
  of_system uuid,
  system uuid not null generated as COALESCE(of_system, parcel)
) with row level security

table discrepancy_change (
  county text not null,
  id uuid not null,
  parcel uuid not null,
  discrepancy uuid not null,
  reconciliation uuid not null,
  change text not null,
  before_hash text,
  after_hash text,
  body jsonb not null default '{}'::jsonb,
  noticed_at timestamp with time zone not null default now()
) with row level security

table document (
  county text not null,
  id uuid not null,
  parcel uuid,
  content_hash text not null,
  media_type text not null,
  file_name text,
  bytes bigint not null,
  pages integer,
  state text not null,
  reason text,
  proposals jsonb not null default '[]'::jsonb,
  revision integer not null default 1,
  received_by uuid not null,
  received_at timestamp with time zone not null default now()
) with row level security

table document_page (
  county text not null,
  document uuid not null,
  number integer not null,
  width real not null,
  height real not null,
  text text not null,
  words jsonb not null
) with row level security

table event (
  county text not null,
  id uuid not null,
  kind text not null,
  subject_kind text not null,
  subject uuid not null,
  parcel uuid,
  account uuid,
  organization uuid,
  role text not null,
  before_hash text,
  after_hash text,
  body jsonb not null default '{}'::jsonb,
  happened_at timestamp with time zone not null default now()
) with row level security

table filing_change (
  county text not null,
  id uuid not null,
  permit uuid not null,
  revision integer not null,
  act text not null,
  reason text not null,
  from_parcel uuid not null,
  to_parcel uuid not null,
  other uuid,
  changed_by uuid not null,
  changed_at timestamp with time zone not null
) with row level security

table findings (
  county text not null,
  id uuid not null,
  parcel uuid not null,
  organization uuid not null,
  state text not null,
  inspected_on date,
  record jsonb not null,
  revision integer not null default 1,
  amends uuid,
  created_by uuid not null,
  created_at timestamp with time zone not null default now(),
  changed_at timestamp with time zone not null default now(),
  submitted_by uuid,
  submitted_at timestamp with time zone,
  of_system uuid,
  system uuid not null generated as COALESCE(of_system, parcel)
) with row level security

table findings_revision (
  county text not null,
  findings uuid not null,
  revision integer not null,
  record jsonb not null,
  record_hash text not null,
  recorded_by uuid not null,
  recorded_at timestamp with time zone not null default now()
) with row level security

table form_witness (
  county text not null,
  transcription uuid not null,
  permit integer not null,
  form uuid not null,
  ask text not null,
  kind text not null,
  agrees boolean not null
) with row level security

table idempotency_key (
  county text not null,
  account uuid not null,
  key text not null,
  request_hash text not null,
  status smallint not null,
  headers jsonb not null,
  body text not null,
  answered_at timestamp with time zone not null default now()
) with row level security

table import (
  county text not null,
  id uuid not null,
  kind text not null,
  format text not null,
  content_hash text not null,
  bytes bigint not null,
  file_name text,
  head jsonb not null,
  mapping jsonb not null,
  state text not null,
  reason text,
  job uuid,
  rerun uuid,
  rows_read bigint not null default 0,
  read_to_line bigint not null default 0,
  added bigint not null default 0,
  changed bigint not null default 0,
  unchanged bigint not null default 0,
  rejected bigint not null default 0,
  revision integer not null default 1,
  made_by uuid not null,
  made_at timestamp with time zone not null,
  ended_at timestamp with time zone
) with row level security

table import_mapping (
  county text not null,
  kind text not null,
  headings text not null,
  body jsonb not null,
  mended_by uuid not null,
  mended_at timestamp with time zone not null
) with row level security

table import_rejection (
  county text not null,
  import uuid not null,
  line bigint not null,
  cells jsonb not null,
  faults jsonb not null
) with row level security

table invitation (
  id uuid not null,
  account uuid not null,
  hash bytea not null,
  made_by uuid,
  made_at timestamp with time zone not null,
  expires_at timestamp with time zone not null,
  used_at timestamp with time zone
) with row level security

table job (
  county text not null,
  id uuid not null,
  kind text not null,
  organization uuid,
  requested_by uuid,
  state text not null,
  done bigint not null default 0,
  total bigint,
  says text,
  result jsonb,
  requested_at timestamp with time zone not null default now(),
  changed_at timestamp with time zone not null default now()
) with row level security

table letter (
  county text not null,
  id uuid not null,
  parcel uuid not null,
  kind text not null,
  number text not null,
  code text not null,
  organization uuid not null,
  issued_by uuid not null,
  issued_on date not null,
  as_of date not null,
  word text not null,
  reconciliation uuid,
  content jsonb not null,
  facts jsonb not null,
  pdf_sha256 text not null,
  pdf_bytes integer not null,
  pages integer not null,
  signature text not null,
  signing_key text not null,
  issued_at timestamp with time zone not null
) with row level security

table letter_counter (
  county text not null,
  year integer not null,
  last integer not null
) with row level security

table letter_withdrawal (
  county text not null,
  letter uuid not null,
  reason text not null,
  withdrawn_by uuid not null,
  withdrawn_at timestamp with time zone not null
) with row level security

table migration (
  number integer not null,
  name text not null,
  checksum text not null,
  ran_at timestamp with time zone not null default now()
)

table organization (
  id uuid not null,
  kind text not null,
  name text not null,
  second_step text not null default 'offered'::text,
  created_at timestamp with time zone not null default now()
) with row level security

table original_fault (
  hash text not null,
  state text not null,
  found_at timestamp with time zone not null
) with row level security

table original_round (
  one boolean not null default true,
  ended_at timestamp with time zone not null,
  looked bigint not null
) with row level security

table outside_identity (
  issuer text not null,
  subject text not null,
  account uuid not null,
  bound_at timestamp with time zone not null
) with row level security

table parcel (
  county text not null,
  id uuid not null,
  number text not null,
  key text not null generated as parcel_key(number),
  loose_key text not null generated as parcel_loose_key(number),
  address text,
  house_number integer generated as house_number(address),
  street_key text generated as street_key(address),
  retired_on date,
  revision integer not null default 1,
  created_at timestamp with time zone not null default now()
) with row level security

table parcel_alias (
  county text not null,
  parcel uuid not null,
  number text not null,
  key text not null generated as parcel_key(number),
  loose_key text not null generated as parcel_loose_key(number),
  kind text not null,
  changed_on date,
  note text
) with row level security

table parcel_status (
  county text not null,
  parcel uuid not null,
  word text not null,
  good_until date,
  derived_at timestamp with time zone not null,
  body jsonb not null
) with row level security

table permit (
  county text not null,
  id uuid not null,
  parcel uuid not null,
  number text,
  kind text not null,
  issued_on text,
  approved_on text,
  record jsonb not null,
  revision integer not null default 1,
  created_at timestamp with time zone not null default now(),
  changed_at timestamp with time zone not null default now(),
  of_system uuid,
  system uuid not null generated as COALESCE(of_system, parcel),
  standing text,
  merged_into uuid
) with row level security

table permit_revision (
  county text not null,
  permit uuid not null,
  revision integer not null,
  record jsonb not null,
  record_hash text not null,
  reason text,
  transcription uuid,
  recorded_by uuid not null,
  recorded_at timestamp with time zone not null default now()
) with row level security

table photo (
  county text not null,
  id uuid not null,
  findings uuid not null,
  component text,
  content_hash text not null,
  media_type text not null,
  bytes bigint not null,
  shown_hash text not null,
  small_hash text,
  printed_hash text,
  width integer not null,
  height integer not null,
  orientation smallint not null,
  taken_at text,
  lat double precision,
  lon double precision,
  radius_ft double precision,
  added_by uuid not null,
  added_at timestamp with time zone not null default now()
) with row level security

table quota_use (
  organization uuid not null,
  what text not null,
  day date not null,
  used bigint not null
) with row level security

table reading_tally (
  county text not null,
  transcription uuid not null,
  witness text not null,
  step smallint not null,
  ask text not null,
  confirmed integer not null,
  changed integer not null
) with row level security

table reconciliation (
  county text not null,
  id uuid not null,
  parcel uuid not null,
  findings uuid,
  organization uuid,
  as_built_on date not null,
  inputs jsonb not null,
  input_hash text not null,
  engine text not null,
  result jsonb not null,
  result_hash text not null,
  occasion text not null,
  made_at timestamp with time zone not null default now(),
  of_system uuid,
  system uuid not null generated as COALESCE(of_system, parcel)
) with row level security

table recovery_code (
  account uuid not null,
  hash bytea not null,
  used_at timestamp with time zone
) with row level security

table rerun (
  county text not null,
  id uuid not null,
  cause text not null,
  state text not null,
  revision integer not null default 1,
  asked_by uuid,
  asked_at timestamp with time zone not null,
  ended_at timestamp with time zone
) with row level security

table rerun_parcel (
  county text not null,
  rerun uuid not null,
  parcel uuid not null,
  outcome text,
  says text
) with row level security

table rule_book (
  hash text not null,
  packs text not null,
  first_used_at timestamp with time zone not null default now()
) with row level security

table second_step (
  account uuid not null,
  sealed_secret bytea not null,
  confirmed_at timestamp with time zone,
  last_step bigint not null default 0
) with row level security

table session (
  hash bytea not null,
  id uuid not null default gen_random_uuid(),
  account uuid not null,
  stage text not null default 'full'::text,
  idle interval not null default '04:00:00'::interval,
  browser text,
  begun_at timestamp with time zone not null default now(),
  last_used_at timestamp with time zone not null default now(),
  ends_at timestamp with time zone not null
) with row level security

table sign_in (
  account uuid not null,
  name text not null,
  password_hash text,
  changed_at timestamp with time zone not null default now()
) with row level security

table signing_key (
  kid text not null,
  public_jwk jsonb not null,
  first_used_at timestamp with time zone not null default now(),
  retired_at timestamp with time zone
) with row level security

table street (
  county text not null,
  key text not null
) with row level security

table subscription (
  county text not null,
  id uuid not null,
  organization uuid not null,
  account uuid not null,
  address text,
  secret bytea,
  parcel uuid,
  made_at timestamp with time zone not null,
  ended_at timestamp with time zone,
  ended_because text
) with row level security

table system (
  county text not null,
  id uuid not null,
  parcel uuid not null,
  use text not null,
  label text,
  revision integer not null default 1,
  created_at timestamp with time zone not null default now()
) with row level security

table system_change (
  county text not null,
  system uuid not null,
  revision integer not null,
  body jsonb not null,
  reason text not null,
  changed_by uuid not null,
  changed_at timestamp with time zone not null
) with row level security

table system_parcel (
  county text not null,
  system uuid not null,
  parcel uuid not null,
  serves boolean not null,
  lies_on boolean not null,
  bedrooms smallint,
  design_flow_gpd integer
) with row level security

table taught_by (
  county text not null,
  transcription uuid not null,
  permit integer not null,
  form uuid not null,
  document uuid not null
) with row level security

table taught_form (
  county text not null,
  id uuid not null,
  name text not null,
  state text not null,
  taught jsonb not null,
  shown_on uuid,
  shown_pages integer[] not null default '{}'::integer[],
  revision integer not null default 1,
  made_at timestamp with time zone not null,
  changed_at timestamp with time zone not null,
  changed_by uuid
) with row level security

table throttle (
  key bytea not null,
  tries integer not null,
  wait_until timestamp with time zone,
  changed_at timestamp with time zone not null
) with row level security

table transcription (
  county text not null,
  id uuid not null,
  document uuid not null,
  body jsonb not null,
  confirmed_by uuid not null,
  confirmed_at timestamp with time zone not null default now()
) with row level security


-- Constraints

access_event: access_event_account_fkey FOREIGN KEY (account) REFERENCES account(id)

access_event: access_event_made_by_fkey FOREIGN KEY (made_by) REFERENCES account(id)

access_event: access_event_organization_fkey FOREIGN KEY (organization) REFERENCES organization(id)

access_event: access_event_pkey PRIMARY KEY (id)

access_event: append_audit TRIGGER DEFERRABLE INITIALLY DEFERRED

access_token: access_token_account_fkey FOREIGN KEY (account) REFERENCES account(id)

access_token: access_token_check CHECK ((writes <@ counties))

access_token: access_token_hash_check CHECK ((octet_length(hash) = 32))

access_token: access_token_hash_key UNIQUE (hash)

access_token: access_token_issued_by_fkey FOREIGN KEY (issued_by) REFERENCES account(id)

access_token: access_token_pkey PRIMARY KEY (id)

access_token: append_audit TRIGGER DEFERRABLE INITIALLY DEFERRED

account: account_organization_fkey FOREIGN KEY (organization) REFERENCES organization(id)

account: account_pkey PRIMARY KEY (id)

account: account_role_check CHECK ((role = ANY (ARRAY['firm'::text, 'reviewer'::text, 'agent'::text])))

account: append_audit TRIGGER DEFERRABLE INITIALLY DEFERRED

admission: admission_admitted_by_fkey FOREIGN KEY (admitted_by) REFERENCES account(id)

admission: admission_county_fkey FOREIGN KEY (county) REFERENCES county(id)

admission: admission_organization_fkey FOREIGN KEY (organization) REFERENCES organization(id)

admission: admission_pkey PRIMARY KEY (county, organization)

admission: append_audit TRIGGER DEFERRABLE INITIALLY DEFERRED

audit: audit_act_check CHECK ((act = ANY (ARRAY['made'::text, 'changed'::text, 'removed'::text, 'restated'::text])))

audit: audit_number_check CHECK ((number >= 1))

audit: audit_pkey PRIMARY KEY (county, number)

audit_break: audit_break_pkey PRIMARY KEY (number)

audit_noting: audit_noting_one_check CHECK (one)

audit_noting: audit_noting_pkey PRIMARY KEY (one)

county: append_audit TRIGGER DEFERRABLE INITIALLY DEFERRED

county: county_id_check CHECK ((id ~ '^[a-z][a-z0-9-]{1,39}$'::text))

county: county_pkey PRIMARY KEY (id)

decision: append_audit TRIGGER DEFERRABLE INITIALLY DEFERRED

decision: decision_county_discrepancy_fkey FOREIGN KEY (county, discrepancy) REFERENCES discrepancy(county, id)

decision: decision_county_of_system_fkey FOREIGN KEY (county, of_system) REFERENCES system(county, id)

decision: decision_county_supersedes_fkey FOREIGN KEY (county, supersedes) REFERENCES decision(county, id)

decision: decision_county_supersedes_key UNIQUE (county, supersedes)

decision: decision_decided_by_fkey FOREIGN KEY (decided_by) REFERENCES account(id)

decision: decision_pkey PRIMARY KEY (county, id)

decision: decision_reason_check CHECK ((btrim(reason) <> ''::text))

delivery: append_audit TRIGGER DEFERRABLE INITIALLY DEFERRED

delivery: delivery_county_parcel_fkey FOREIGN KEY (county, parcel) REFERENCES parcel(county, id)

delivery: delivery_county_subscription_fkey FOREIGN KEY (county, subscription) REFERENCES subscription(county, id)

delivery: delivery_pkey PRIMARY KEY (county, id)

delivery: delivery_state_check CHECK ((state = ANY (ARRAY['waiting'::text, 'delivered'::text, 'dead'::text])))

discrepancy: append_audit TRIGGER DEFERRABLE INITIALLY DEFERRED

discrepancy: discrepancy_county_of_system_fkey FOREIGN KEY (county, of_system) REFERENCES system(county, id)

discrepancy: discrepancy_county_parcel_fkey FOREIGN KEY (county, parcel) REFERENCES parcel(county, id)

discrepancy: discrepancy_county_reconciliation_fkey FOREIGN KEY (county, reconciliation) REFERENCES reconciliation(county, id)

discrepancy: discrepancy_county_system_kind_subject_key UNIQUE (county, system, kind, subject)

discrepancy: discrepancy_organization_fkey FOREIGN KEY (organization) REFERENCES organization(id)

discrepancy: discrepancy_pkey PRIMARY KEY (county, id)

discrepancy: discrepancy_severity_check CHECK ((severity = ANY (ARRAY['action'::text, 'review'::text, 'note'::text])))

discrepancy: discrepancy_state_check CHECK ((state = ANY (ARRAY['open'::text, 'decided'::text, 'ground-moved'::text, 'vanished'::text])))

discrepancy_change: append_audit TRIGGER DEFERRABLE INITIALLY DEFERRED

discrepancy_change: discrepancy_change_change_check CHECK ((change = ANY (ARRAY['appeared'::text, 'changed'::text, 'vanished'::text, 'returned'::text])))

discrepancy_change: discrepancy_change_county_discrepancy_fkey FOREIGN KEY (county, discrepancy) REFERENCES discrepancy(county, id)

discrepancy_change: discrepancy_change_county_reconciliation_fkey FOREIGN KEY (county, reconciliation) REFERENCES reconciliation(county, id)

discrepancy_change: discrepancy_change_pkey PRIMARY KEY (county, id)

document: append_audit TRIGGER DEFERRABLE INITIALLY DEFERRED

document: document_content_hash_check CHECK ((content_hash ~ '^[0-9a-f]{64}$'::text))

document: document_county_parcel_fkey FOREIGN KEY (county, parcel) REFERENCES parcel(county, id)

document: document_pkey PRIMARY KEY (county, id)

document: document_received_by_fkey FOREIGN KEY (received_by) REFERENCES account(id)

document: document_state_check CHECK ((state = ANY (ARRAY['received'::text, 'reading'::text, 'proposed'::text, 'confirmed'::text, 'set-aside'::text, 'failed'::text])))

document_page: append_audit TRIGGER DEFERRABLE INITIALLY DEFERRED

document_page: document_page_county_document_fkey FOREIGN KEY (county, document) REFERENCES document(county, id)

document_page: document_page_number_check CHECK ((number >= 1))

document_page: document_page_pkey PRIMARY KEY (county, document, number)

event: append_audit TRIGGER DEFERRABLE INITIALLY DEFERRED

event: event_account_fkey FOREIGN KEY (account) REFERENCES account(id)

event: event_organization_fkey FOREIGN KEY (organization) REFERENCES organization(id)

event: event_pkey PRIMARY KEY (county, id)

filing_change: append_audit TRIGGER DEFERRABLE INITIALLY DEFERRED

filing_change: filing_change_act_check CHECK ((act = ANY (ARRAY['move'::text, 'void'::text, 'restore'::text, 'merge'::text, 'separate'::text])))

filing_change: filing_change_changed_by_fkey FOREIGN KEY (changed_by) REFERENCES account(id)

filing_change: filing_change_check CHECK (((act = 'move'::text) = (from_parcel <> to_parcel)))

filing_change: filing_change_check1 CHECK (((act = ANY (ARRAY['merge'::text, 'separate'::text])) = (other IS NOT NULL)))

filing_change: filing_change_county_from_parcel_fkey FOREIGN KEY (county, from_parcel) REFERENCES parcel(county, id)

filing_change: filing_change_county_other_fkey FOREIGN KEY (county, other) REFERENCES permit(county, id)

filing_change: filing_change_county_permit_fkey FOREIGN KEY (county, permit) REFERENCES permit(county, id)

filing_change: filing_change_county_permit_revision_key UNIQUE (county, permit, revision)

filing_change: filing_change_county_to_parcel_fkey FOREIGN KEY (county, to_parcel) REFERENCES parcel(county, id)

filing_change: filing_change_pkey PRIMARY KEY (county, id)

filing_change: filing_change_reason_check CHECK ((reason ~ '^[a-z][a-z-]{1,39}$'::text))

findings: append_audit TRIGGER DEFERRABLE INITIALLY DEFERRED

findings: findings_check CHECK (((state = 'submitted'::text) = ((submitted_at IS NOT NULL) AND (submitted_by IS NOT NULL))))

findings: findings_county_amends_fkey FOREIGN KEY (county, amends) REFERENCES findings(county, id)

findings: findings_county_amends_key UNIQUE (county, amends)

findings: findings_county_of_system_fkey FOREIGN KEY (county, of_system) REFERENCES system(county, id)

findings: findings_county_parcel_fkey FOREIGN KEY (county, parcel) REFERENCES parcel(county, id)

findings: findings_created_by_fkey FOREIGN KEY (created_by) REFERENCES account(id)

findings: findings_organization_fkey FOREIGN KEY (organization) REFERENCES organization(id)

findings: findings_pkey PRIMARY KEY (county, id)

findings: findings_state_check CHECK ((state = ANY (ARRAY['draft'::text, 'submitted'::text])))

findings: findings_submitted_by_fkey FOREIGN KEY (submitted_by) REFERENCES account(id)

findings_revision: append_audit TRIGGER DEFERRABLE INITIALLY DEFERRED

findings_revision: findings_revision_county_findings_fkey FOREIGN KEY (county, findings) REFERENCES findings(county, id)

findings_revision: findings_revision_pkey PRIMARY KEY (county, findings, revision)

findings_revision: findings_revision_recorded_by_fkey FOREIGN KEY (recorded_by) REFERENCES account(id)

form_witness: form_witness_county_form_fkey FOREIGN KEY (county, form) REFERENCES taught_form(county, id)

form_witness: form_witness_county_transcription_fkey FOREIGN KEY (county, transcription) REFERENCES transcription(county, id)

form_witness: form_witness_pkey PRIMARY KEY (county, transcription, permit, form, ask, kind)

idempotency_key: idempotency_key_account_fkey FOREIGN KEY (account) REFERENCES account(id)

idempotency_key: idempotency_key_pkey PRIMARY KEY (county, account, key)

import: append_audit TRIGGER DEFERRABLE INITIALLY DEFERRED

import: import_content_hash_check CHECK ((content_hash ~ '^[0-9a-f]{64}$'::text))

import: import_county_fkey FOREIGN KEY (county) REFERENCES county(id)

import: import_county_rerun_fkey FOREIGN KEY (county, rerun) REFERENCES rerun(county, id)

import: import_format_check CHECK ((format = ANY (ARRAY['csv'::text, 'ndjson'::text])))

import: import_kind_check CHECK ((kind = ANY (ARRAY['permits'::text, 'parcels'::text, 'findings'::text])))

import: import_made_by_fkey FOREIGN KEY (made_by) REFERENCES account(id)

import: import_pkey PRIMARY KEY (county, id)

import: import_state_check CHECK ((state = ANY (ARRAY['waiting'::text, 'trying'::text, 'tried'::text, 'running'::text, 'done'::text, 'failed'::text])))

import_mapping: append_audit TRIGGER DEFERRABLE INITIALLY DEFERRED

import_mapping: import_mapping_county_fkey FOREIGN KEY (county) REFERENCES county(id)

import_mapping: import_mapping_kind_check CHECK ((kind = ANY (ARRAY['permits'::text, 'parcels'::text, 'findings'::text])))

import_mapping: import_mapping_mended_by_fkey FOREIGN KEY (mended_by) REFERENCES account(id)

import_mapping: import_mapping_pkey PRIMARY KEY (county, kind, headings)

import_rejection: import_rejection_county_import_fkey FOREIGN KEY (county, import) REFERENCES import(county, id)

import_rejection: import_rejection_pkey PRIMARY KEY (county, import, line)

invitation: append_audit TRIGGER DEFERRABLE INITIALLY DEFERRED

invitation: invitation_account_fkey FOREIGN KEY (account) REFERENCES account(id)

invitation: invitation_hash_check CHECK ((octet_length(hash) = 32))

invitation: invitation_hash_key UNIQUE (hash)

invitation: invitation_made_by_fkey FOREIGN KEY (made_by) REFERENCES account(id)

invitation: invitation_pkey PRIMARY KEY (id)

job: job_organization_fkey FOREIGN KEY (organization) REFERENCES organization(id)

job: job_pkey PRIMARY KEY (county, id)

job: job_requested_by_fkey FOREIGN KEY (requested_by) REFERENCES account(id)

job: job_state_check CHECK ((state = ANY (ARRAY['waiting'::text, 'running'::text, 'done'::text, 'failed'::text])))

letter: append_audit TRIGGER DEFERRABLE INITIALLY DEFERRED

letter: letter_code_check CHECK ((code ~ '^[0-9A-Z]{4}(-[0-9A-Z]{4}){3}$'::text))

letter: letter_county_fkey FOREIGN KEY (county) REFERENCES county(id)

letter: letter_county_number_key UNIQUE (county, number)

letter: letter_county_parcel_fkey FOREIGN KEY (county, parcel) REFERENCES parcel(county, id)

letter: letter_county_reconciliation_fkey FOREIGN KEY (county, reconciliation) REFERENCES reconciliation(county, id)

letter: letter_issued_by_fkey FOREIGN KEY (issued_by) REFERENCES account(id)

letter: letter_kind_check CHECK ((kind = ANY (ARRAY['status'::text, 'report'::text, 'brief'::text])))

letter: letter_organization_fkey FOREIGN KEY (organization) REFERENCES organization(id)

letter: letter_pdf_sha256_check CHECK ((pdf_sha256 ~ '^[0-9a-f]{64}$'::text))

letter: letter_pkey PRIMARY KEY (county, id)

letter: letter_signing_key_fkey FOREIGN KEY (signing_key) REFERENCES signing_key(kid)

letter_counter: letter_counter_county_fkey FOREIGN KEY (county) REFERENCES county(id)

letter_counter: letter_counter_last_check CHECK ((last >= 1))

letter_counter: letter_counter_pkey PRIMARY KEY (county, year)

letter_withdrawal: append_audit TRIGGER DEFERRABLE INITIALLY DEFERRED

letter_withdrawal: letter_withdrawal_county_letter_fkey FOREIGN KEY (county, letter) REFERENCES letter(county, id)

letter_withdrawal: letter_withdrawal_pkey PRIMARY KEY (county, letter)

letter_withdrawal: letter_withdrawal_reason_check CHECK ((btrim(reason) <> ''::text))

letter_withdrawal: letter_withdrawal_withdrawn_by_fkey FOREIGN KEY (withdrawn_by) REFERENCES account(id)

migration: migration_pkey PRIMARY KEY (number)

organization: append_audit TRIGGER DEFERRABLE INITIALLY DEFERRED

organization: organization_kind_check CHECK ((kind = ANY (ARRAY['county'::text, 'firm'::text, 'agent'::text])))

organization: organization_pkey PRIMARY KEY (id)

organization: organization_second_step_check CHECK ((second_step = ANY (ARRAY['offered'::text, 'required'::text])))

original_fault: original_fault_hash_check CHECK ((hash ~ '^[0-9a-f]{64}$'::text))

original_fault: original_fault_pkey PRIMARY KEY (hash)

original_fault: original_fault_state_check CHECK ((state = ANY (ARRAY['damaged'::text, 'missing'::text])))

original_round: original_round_one_check CHECK (one)

original_round: original_round_pkey PRIMARY KEY (one)

outside_identity: append_audit TRIGGER DEFERRABLE INITIALLY DEFERRED

outside_identity: outside_identity_account_fkey FOREIGN KEY (account) REFERENCES account(id)

outside_identity: outside_identity_pkey PRIMARY KEY (issuer, subject)

parcel: append_audit TRIGGER DEFERRABLE INITIALLY DEFERRED

parcel: parcel_county_fkey FOREIGN KEY (county) REFERENCES county(id)

parcel: parcel_county_number_key UNIQUE (county, number)

parcel: parcel_pkey PRIMARY KEY (county, id)

parcel_alias: append_audit TRIGGER DEFERRABLE INITIALLY DEFERRED

parcel_alias: parcel_alias_county_parcel_fkey FOREIGN KEY (county, parcel) REFERENCES parcel(county, id)

parcel_alias: parcel_alias_kind_check CHECK ((kind = ANY (ARRAY['renumbered'::text, 'split'::text, 'merged'::text])))

parcel_alias: parcel_alias_pkey PRIMARY KEY (county, parcel, number)

parcel_status: append_audit TRIGGER DEFERRABLE INITIALLY DEFERRED

parcel_status: parcel_status_county_parcel_fkey FOREIGN KEY (county, parcel) REFERENCES parcel(county, id)

parcel_status: parcel_status_pkey PRIMARY KEY (county, parcel)

permit: append_audit TRIGGER DEFERRABLE INITIALLY DEFERRED

permit: keep_revisions_in_step TRIGGER DEFERRABLE INITIALLY DEFERRED

permit: permit_approved_on_is_a_date CHECK ((approved_on ~ '^\d{4}(-\d{2}(-\d{2})?)?$'::text))

permit: permit_check CHECK ((merged_into <> id))

permit: permit_county_merged_into_fkey FOREIGN KEY (county, merged_into) REFERENCES permit(county, id)

permit: permit_county_of_system_fkey FOREIGN KEY (county, of_system) REFERENCES system(county, id)

permit: permit_county_parcel_fkey FOREIGN KEY (county, parcel) REFERENCES parcel(county, id)

permit: permit_issued_on_is_a_date CHECK ((issued_on ~ '^\d{4}(-\d{2}(-\d{2})?)?$'::text))

permit: permit_kind_check CHECK ((kind = ANY (ARRAY['new'::text, 'repair'::text, 'alteration'::text, 'abandonment'::text])))

permit: permit_merged_into_one CHECK (((COALESCE(standing, ''::text) = 'merged'::text) = (merged_into IS NOT NULL)))

permit: permit_pkey PRIMARY KEY (county, id)

permit: permit_standing_check CHECK ((standing = ANY (ARRAY['void'::text, 'merged'::text])))

permit_revision: append_audit TRIGGER DEFERRABLE INITIALLY DEFERRED

permit_revision: permit_revision_county_permit_fkey FOREIGN KEY (county, permit) REFERENCES permit(county, id)

permit_revision: permit_revision_county_transcription_fkey FOREIGN KEY (county, transcription) REFERENCES transcription(county, id)

permit_revision: permit_revision_pkey PRIMARY KEY (county, permit, revision)

permit_revision: permit_revision_recorded_by_fkey FOREIGN KEY (recorded_by) REFERENCES account(id)

photo: append_audit TRIGGER DEFERRABLE INITIALLY DEFERRED

photo: photo_added_by_fkey FOREIGN KEY (added_by) REFERENCES account(id)

photo: photo_check CHECK (((lat IS NULL) = (lon IS NULL)))

photo: photo_content_hash_check CHECK ((content_hash ~ '^[0-9a-f]{64}$'::text))

photo: photo_county_findings_content_hash_key UNIQUE (county, findings, content_hash)

photo: photo_county_findings_fkey FOREIGN KEY (county, findings) REFERENCES findings(county, id)

photo: photo_media_type_check CHECK ((media_type = ANY (ARRAY['image/jpeg'::text, 'image/png'::text, 'image/webp'::text])))

photo: photo_orientation_check CHECK (((orientation >= 1) AND (orientation <= 8)))

photo: photo_pkey PRIMARY KEY (county, id)

photo: photo_printed_hash_check CHECK ((printed_hash ~ '^[0-9a-f]{64}$'::text))

photo: photo_shown_hash_check CHECK ((shown_hash ~ '^[0-9a-f]{64}$'::text))

photo: photo_small_hash_check CHECK ((small_hash ~ '^[0-9a-f]{64}$'::text))

quota_use: quota_use_organization_fkey FOREIGN KEY (organization) REFERENCES organization(id)

quota_use: quota_use_pkey PRIMARY KEY (organization, what, day)

reading_tally: reading_tally_county_transcription_fkey FOREIGN KEY (county, transcription) REFERENCES transcription(county, id)

reading_tally: reading_tally_pkey PRIMARY KEY (county, transcription, witness, step, ask)

reading_tally: reading_tally_witness_check CHECK ((witness = ANY (ARRAY['text'::text, 'alike'::text, 'alone'::text])))

reconciliation: append_audit TRIGGER DEFERRABLE INITIALLY DEFERRED

reconciliation: reconciliation_county_findings_fkey FOREIGN KEY (county, findings) REFERENCES findings(county, id)

reconciliation: reconciliation_county_of_system_fkey FOREIGN KEY (county, of_system) REFERENCES system(county, id)

reconciliation: reconciliation_county_parcel_fkey FOREIGN KEY (county, parcel) REFERENCES parcel(county, id)

reconciliation: reconciliation_organization_fkey FOREIGN KEY (organization) REFERENCES organization(id)

reconciliation: reconciliation_pkey PRIMARY KEY (county, id)

recovery_code: recovery_code_account_fkey FOREIGN KEY (account) REFERENCES account(id)

recovery_code: recovery_code_hash_check CHECK ((octet_length(hash) = 32))

recovery_code: recovery_code_pkey PRIMARY KEY (account, hash)

rerun: rerun_asked_by_fkey FOREIGN KEY (asked_by) REFERENCES account(id)

rerun: rerun_cause_check CHECK ((cause = ANY (ARRAY['rules-changed'::text, 'engine-changed'::text, 'imported'::text, 'asked-for'::text])))

rerun: rerun_county_fkey FOREIGN KEY (county) REFERENCES county(id)

rerun: rerun_pkey PRIMARY KEY (county, id)

rerun: rerun_state_check CHECK ((state = ANY (ARRAY['gathering'::text, 'running'::text, 'paused'::text, 'done'::text])))

rerun_parcel: rerun_parcel_county_parcel_fkey FOREIGN KEY (county, parcel) REFERENCES parcel(county, id)

rerun_parcel: rerun_parcel_county_rerun_fkey FOREIGN KEY (county, rerun) REFERENCES rerun(county, id)

rerun_parcel: rerun_parcel_outcome_check CHECK ((outcome = ANY (ARRAY['unaffected'::text, 'same'::text, 'changed'::text, 'failed'::text])))

rerun_parcel: rerun_parcel_pkey PRIMARY KEY (county, rerun, parcel)

rule_book: rule_book_hash_check CHECK ((hash ~ '^[0-9a-f]{64}$'::text))

rule_book: rule_book_pkey PRIMARY KEY (hash)

second_step: append_audit TRIGGER DEFERRABLE INITIALLY DEFERRED

second_step: second_step_account_fkey FOREIGN KEY (account) REFERENCES account(id)

second_step: second_step_pkey PRIMARY KEY (account)

session: session_account_fkey FOREIGN KEY (account) REFERENCES account(id)

session: session_hash_check CHECK ((octet_length(hash) = 32))

session: session_id_key UNIQUE (id)

session: session_pkey PRIMARY KEY (hash)

session: session_stage_check CHECK ((stage = ANY (ARRAY['full'::text, 'second-step'::text, 'set-up'::text])))

sign_in: append_audit TRIGGER DEFERRABLE INITIALLY DEFERRED

sign_in: sign_in_account_fkey FOREIGN KEY (account) REFERENCES account(id)

sign_in: sign_in_name_check CHECK (((name = lower(name)) AND (name ~ '^[a-z0-9][a-z0-9._@+-]{2,79}$'::text)))

sign_in: sign_in_name_key UNIQUE (name)

sign_in: sign_in_password_hash_check CHECK ((password_hash ~~ '$argon2id$%'::text))

sign_in: sign_in_pkey PRIMARY KEY (account)

signing_key: append_audit TRIGGER DEFERRABLE INITIALLY DEFERRED

signing_key: signing_key_kid_check CHECK ((kid ~ '^[A-Za-z0-9_-]{43}$'::text))

signing_key: signing_key_pkey PRIMARY KEY (kid)

street: street_county_fkey FOREIGN KEY (county) REFERENCES county(id)

street: street_pkey PRIMARY KEY (county, key)

subscription: address_and_key_together CHECK (((address IS NULL) = (secret IS NULL)))

subscription: append_audit TRIGGER DEFERRABLE INITIALLY DEFERRED

subscription: subscription_account_fkey FOREIGN KEY (account) REFERENCES account(id)

subscription: subscription_county_fkey FOREIGN KEY (county) REFERENCES county(id)

subscription: subscription_county_parcel_fkey FOREIGN KEY (county, parcel) REFERENCES parcel(county, id)

subscription: subscription_organization_fkey FOREIGN KEY (organization) REFERENCES organization(id)

subscription: subscription_pkey PRIMARY KEY (county, id)

system: append_audit TRIGGER DEFERRABLE INITIALLY DEFERRED

system: system_county_parcel_fkey FOREIGN KEY (county, parcel) REFERENCES parcel(county, id)

system: system_label_check CHECK (((label = btrim(label)) AND ((length(label) >= 1) AND (length(label) <= 60))))

system: system_pkey PRIMARY KEY (county, id)

system: system_use_check CHECK ((use ~ '^[a-z][a-z-]{1,39}$'::text))

system_change: append_audit TRIGGER DEFERRABLE INITIALLY DEFERRED

system_change: system_change_changed_by_fkey FOREIGN KEY (changed_by) REFERENCES account(id)

system_change: system_change_county_system_fkey FOREIGN KEY (county, system) REFERENCES system(county, id)

system_change: system_change_pkey PRIMARY KEY (county, system, revision)

system_change: system_change_reason_check CHECK ((btrim(reason) <> ''::text))

system_parcel: append_audit TRIGGER DEFERRABLE INITIALLY DEFERRED

system_parcel: system_parcel_bedrooms_check CHECK (((bedrooms >= 0) AND (bedrooms <= 50)))

system_parcel: system_parcel_check CHECK ((serves OR lies_on))

system_parcel: system_parcel_check1 CHECK ((serves OR ((bedrooms IS NULL) AND (design_flow_gpd IS NULL))))

system_parcel: system_parcel_county_parcel_fkey FOREIGN KEY (county, parcel) REFERENCES parcel(county, id)

system_parcel: system_parcel_county_system_fkey FOREIGN KEY (county, system) REFERENCES system(county, id)

system_parcel: system_parcel_design_flow_gpd_check CHECK (((design_flow_gpd >= 1) AND (design_flow_gpd <= 1000000)))

system_parcel: system_parcel_pkey PRIMARY KEY (county, system, parcel)

taught_by: append_audit TRIGGER DEFERRABLE INITIALLY DEFERRED

taught_by: taught_by_county_document_fkey FOREIGN KEY (county, document) REFERENCES document(county, id)

taught_by: taught_by_county_form_fkey FOREIGN KEY (county, form) REFERENCES taught_form(county, id)

taught_by: taught_by_county_transcription_fkey FOREIGN KEY (county, transcription) REFERENCES transcription(county, id)

taught_by: taught_by_pkey PRIMARY KEY (county, transcription, permit)

taught_form: append_audit TRIGGER DEFERRABLE INITIALLY DEFERRED

taught_form: taught_form_changed_by_fkey FOREIGN KEY (changed_by) REFERENCES account(id)

taught_form: taught_form_county_fkey FOREIGN KEY (county) REFERENCES county(id)

taught_form: taught_form_county_shown_on_fkey FOREIGN KEY (county, shown_on) REFERENCES document(county, id)

taught_form: taught_form_name_check CHECK ((name <> ''::text))

taught_form: taught_form_pkey PRIMARY KEY (county, id)

taught_form: taught_form_state_check CHECK ((state = ANY (ARRAY['proposed'::text, 'in-force'::text, 'withdrawn'::text])))

throttle: throttle_key_check CHECK ((octet_length(key) = 32))

throttle: throttle_pkey PRIMARY KEY (key)

transcription: append_audit TRIGGER DEFERRABLE INITIALLY DEFERRED

transcription: transcription_confirmed_by_fkey FOREIGN KEY (confirmed_by) REFERENCES account(id)

transcription: transcription_county_document_fkey FOREIGN KEY (county, document) REFERENCES document(county, id)

transcription: transcription_pkey PRIMARY KEY (county, id)


-- Indexes

CREATE INDEX access_event_by_account ON public.access_event USING btree (account, id)

CREATE INDEX access_event_by_organization ON public.access_event USING btree (organization, id)

CREATE UNIQUE INDEX access_event_pkey ON public.access_event USING btree (id)

CREATE INDEX access_token_account ON public.access_token USING btree (account)

CREATE UNIQUE INDEX access_token_hash_key ON public.access_token USING btree (hash)

CREATE UNIQUE INDEX access_token_pkey ON public.access_token USING btree (id)

CREATE INDEX account_organization ON public.account USING btree (organization)

CREATE UNIQUE INDEX account_pkey ON public.account USING btree (id)

CREATE INDEX admission_by_organization ON public.admission USING btree (organization, county)

CREATE UNIQUE INDEX admission_pkey ON public.admission USING btree (county, organization)

CREATE INDEX audit_by_record ON public.audit USING btree (county, kind, record, number)

CREATE UNIQUE INDEX audit_pkey ON public.audit USING btree (county, number)

CREATE UNIQUE INDEX audit_break_pkey ON public.audit_break USING btree (number)

CREATE UNIQUE INDEX audit_noting_pkey ON public.audit_noting USING btree (one)

CREATE UNIQUE INDEX county_pkey ON public.county USING btree (id)

CREATE INDEX decision_by_discrepancy ON public.decision USING btree (county, discrepancy, id)

CREATE INDEX decision_by_system ON public.decision USING btree (county, system, id)

CREATE UNIQUE INDEX decision_county_supersedes_key ON public.decision USING btree (county, supersedes)

CREATE UNIQUE INDEX decision_first ON public.decision USING btree (county, discrepancy) WHERE (supersedes IS NULL)

CREATE UNIQUE INDEX decision_pkey ON public.decision USING btree (county, id)

CREATE INDEX delivery_by_subscription ON public.delivery USING btree (county, subscription, made_at DESC, id)

CREATE INDEX delivery_dead ON public.delivery USING btree (county, subscription) WHERE (state = 'dead'::text)

CREATE INDEX delivery_due ON public.delivery USING btree (county, next_at) WHERE (state = 'waiting'::text)

CREATE UNIQUE INDEX delivery_pkey ON public.delivery USING btree (county, id)

CREATE INDEX discrepancy_by_parcel ON public.discrepancy USING btree (county, parcel)

CREATE UNIQUE INDEX discrepancy_county_system_kind_subject_key ON public.discrepancy USING btree (county, system, kind, subject)

CREATE UNIQUE INDEX discrepancy_pkey ON public.discrepancy USING btree (county, id)

CREATE INDEX discrepancy_queue ON public.discrepancy USING btree (county, state, severity_rank, raised_at, id) INCLUDE (changed_at, organization)

CREATE INDEX discrepancy_queue_of_firm ON public.discrepancy USING btree (county, organization, severity_rank, raised_at, id)

CREATE INDEX discrepancy_queue_of_kind ON public.discrepancy USING btree (county, kind, state, severity_rank, raised_at, id) INCLUDE (changed_at, organization)

CREATE INDEX discrepancy_since ON public.discrepancy USING btree (county, changed_at, id)

CREATE INDEX discrepancy_change_by_discrepancy ON public.discrepancy_change USING btree (county, discrepancy, id)

CREATE INDEX discrepancy_change_by_reconciliation ON public.discrepancy_change USING btree (county, reconciliation, id)

CREATE UNIQUE INDEX discrepancy_change_pkey ON public.discrepancy_change USING btree (county, id)

CREATE INDEX document_by_content ON public.document USING btree (county, content_hash)

CREATE INDEX document_by_parcel ON public.document USING btree (county, parcel)

CREATE INDEX document_by_state ON public.document USING btree (county, state, id)

CREATE UNIQUE INDEX document_pkey ON public.document USING btree (county, id)

CREATE UNIQUE INDEX document_page_pkey ON public.document_page USING btree (county, document, number)

CREATE INDEX event_by_parcel ON public.event USING btree (county, parcel, id)

CREATE INDEX event_by_subject ON public.event USING btree (county, subject, id)

CREATE UNIQUE INDEX event_pkey ON public.event USING btree (county, id)

CREATE INDEX filing_change_by_parcel ON public.filing_change USING btree (county, from_parcel, id)

CREATE UNIQUE INDEX filing_change_county_permit_revision_key ON public.filing_change USING btree (county, permit, revision)

CREATE UNIQUE INDEX filing_change_pkey ON public.filing_change USING btree (county, id)

CREATE INDEX findings_by_organization ON public.findings USING btree (county, organization, id)

CREATE INDEX findings_by_parcel ON public.findings USING btree (county, parcel, id)

CREATE INDEX findings_by_system ON public.findings USING btree (county, system, id)

CREATE UNIQUE INDEX findings_county_amends_key ON public.findings USING btree (county, amends)

CREATE UNIQUE INDEX findings_pkey ON public.findings USING btree (county, id)

CREATE UNIQUE INDEX findings_revision_pkey ON public.findings_revision USING btree (county, findings, revision)

CREATE INDEX form_witness_by_form ON public.form_witness USING btree (county, form)

CREATE UNIQUE INDEX form_witness_pkey ON public.form_witness USING btree (county, transcription, permit, form, ask, kind)

CREATE INDEX idempotency_key_by_age ON public.idempotency_key USING btree (answered_at)

CREATE UNIQUE INDEX idempotency_key_pkey ON public.idempotency_key USING btree (county, account, key)

CREATE UNIQUE INDEX import_pkey ON public.import USING btree (county, id)

CREATE UNIQUE INDEX import_mapping_pkey ON public.import_mapping USING btree (county, kind, headings)

CREATE UNIQUE INDEX import_rejection_pkey ON public.import_rejection USING btree (county, import, line)

CREATE INDEX invitation_by_account ON public.invitation USING btree (account)

CREATE UNIQUE INDEX invitation_hash_key ON public.invitation USING btree (hash)

CREATE UNIQUE INDEX invitation_pkey ON public.invitation USING btree (id)

CREATE INDEX job_by_age ON public.job USING btree (county, requested_at, id)

CREATE INDEX job_not_done ON public.job USING btree (county, state, requested_at) WHERE (state <> 'done'::text)

CREATE UNIQUE INDEX job_pkey ON public.job USING btree (county, id)

CREATE UNIQUE INDEX letter_by_code ON public.letter USING btree (code)

CREATE INDEX letter_by_parcel ON public.letter USING btree (county, parcel, kind, issued_at DESC, id DESC)

CREATE UNIQUE INDEX letter_county_number_key ON public.letter USING btree (county, number)

CREATE UNIQUE INDEX letter_pkey ON public.letter USING btree (county, id)

CREATE UNIQUE INDEX letter_counter_pkey ON public.letter_counter USING btree (county, year)

CREATE UNIQUE INDEX letter_withdrawal_pkey ON public.letter_withdrawal USING btree (county, letter)

CREATE UNIQUE INDEX migration_pkey ON public.migration USING btree (number)

CREATE UNIQUE INDEX organization_pkey ON public.organization USING btree (id)

CREATE UNIQUE INDEX original_fault_pkey ON public.original_fault USING btree (hash)

CREATE UNIQUE INDEX original_round_pkey ON public.original_round USING btree (one)

CREATE INDEX outside_identity_by_account ON public.outside_identity USING btree (account)

CREATE UNIQUE INDEX outside_identity_pkey ON public.outside_identity USING btree (issuer, subject)

CREATE INDEX parcel_by_address ON public.parcel USING btree (county, street_key, house_number)

CREATE INDEX parcel_by_key ON public.parcel USING btree (county, key text_pattern_ops)

CREATE INDEX parcel_by_loose_key ON public.parcel USING btree (county, loose_key text_pattern_ops)

CREATE UNIQUE INDEX parcel_county_number_key ON public.parcel USING btree (county, number)

CREATE UNIQUE INDEX parcel_pkey ON public.parcel USING btree (county, id)

CREATE INDEX parcel_alias_by_key ON public.parcel_alias USING btree (county, key text_pattern_ops)

CREATE INDEX parcel_alias_by_loose_key ON public.parcel_alias USING btree (county, loose_key text_pattern_ops)

CREATE UNIQUE INDEX parcel_alias_pkey ON public.parcel_alias USING btree (county, parcel, number)

CREATE UNIQUE INDEX parcel_status_pkey ON public.parcel_status USING btree (county, parcel)

CREATE INDEX permit_by_merged_into ON public.permit USING btree (county, merged_into) WHERE (merged_into IS NOT NULL)

CREATE INDEX permit_by_number ON public.permit USING btree (county, number)

CREATE INDEX permit_by_number_key ON public.permit USING btree (county, regexp_replace(upper(number), '[^A-Z0-9]'::text, ''::text, 'g'::text))

CREATE INDEX permit_by_parcel ON public.permit USING btree (county, parcel, id)

CREATE INDEX permit_by_system ON public.permit USING btree (county, system, id)

CREATE UNIQUE INDEX permit_pkey ON public.permit USING btree (county, id)

CREATE UNIQUE INDEX permit_revision_pkey ON public.permit_revision USING btree (county, permit, revision)

CREATE UNIQUE INDEX photo_county_findings_content_hash_key ON public.photo USING btree (county, findings, content_hash)

CREATE UNIQUE INDEX photo_pkey ON public.photo USING btree (county, id)

CREATE UNIQUE INDEX quota_use_pkey ON public.quota_use USING btree (organization, what, day)

CREATE UNIQUE INDEX reading_tally_pkey ON public.reading_tally USING btree (county, transcription, witness, step, ask)

CREATE INDEX reconciliation_by_findings ON public.reconciliation USING btree (county, findings)

CREATE INDEX reconciliation_by_system ON public.reconciliation USING btree (county, system, id DESC)

CREATE UNIQUE INDEX reconciliation_pkey ON public.reconciliation USING btree (county, id)

CREATE UNIQUE INDEX recovery_code_pkey ON public.recovery_code USING btree (account, hash)

CREATE UNIQUE INDEX rerun_pkey ON public.rerun USING btree (county, id)

CREATE UNIQUE INDEX rerun_parcel_pkey ON public.rerun_parcel USING btree (county, rerun, parcel)

CREATE INDEX rerun_parcel_waiting ON public.rerun_parcel USING btree (county, rerun, parcel) WHERE (outcome IS NULL)

CREATE UNIQUE INDEX rule_book_pkey ON public.rule_book USING btree (hash)

CREATE UNIQUE INDEX second_step_pkey ON public.second_step USING btree (account)

CREATE INDEX session_by_account ON public.session USING btree (account)

CREATE UNIQUE INDEX session_id_key ON public.session USING btree (id)

CREATE UNIQUE INDEX session_pkey ON public.session USING btree (hash)

CREATE UNIQUE INDEX sign_in_name_key ON public.sign_in USING btree (name)

CREATE UNIQUE INDEX sign_in_pkey ON public.sign_in USING btree (account)

CREATE UNIQUE INDEX signing_key_pkey ON public.signing_key USING btree (kid)

CREATE INDEX street_by_likeness ON public.street USING gist (county, key gist_trgm_ops (siglen='64'))

CREATE UNIQUE INDEX street_pkey ON public.street USING btree (county, key)

CREATE INDEX subscription_by_organization ON public.subscription USING btree (county, organization, id)

CREATE INDEX subscription_by_parcel ON public.subscription USING btree (county, parcel) WHERE (ended_at IS NULL)

CREATE UNIQUE INDEX subscription_pkey ON public.subscription USING btree (county, id)

CREATE INDEX system_by_parcel ON public.system USING btree (county, parcel)

CREATE UNIQUE INDEX system_pkey ON public.system USING btree (county, id)

CREATE UNIQUE INDEX system_change_pkey ON public.system_change USING btree (county, system, revision)

CREATE INDEX system_parcel_by_parcel ON public.system_parcel USING btree (county, parcel)

CREATE UNIQUE INDEX system_parcel_pkey ON public.system_parcel USING btree (county, system, parcel)

CREATE INDEX taught_by_form ON public.taught_by USING btree (county, form)

CREATE UNIQUE INDEX taught_by_pkey ON public.taught_by USING btree (county, transcription, permit)

CREATE INDEX taught_form_by_state ON public.taught_form USING btree (county, state, id)

CREATE UNIQUE INDEX taught_form_pkey ON public.taught_form USING btree (county, id)

CREATE INDEX throttle_by_age ON public.throttle USING btree (changed_at)

CREATE UNIQUE INDEX throttle_pkey ON public.throttle USING btree (key)

CREATE INDEX transcription_by_document ON public.transcription USING btree (county, document, id)

CREATE UNIQUE INDEX transcription_pkey ON public.transcription USING btree (county, id)


-- Policies

access_event: administrator for SELECT to {asfound_service} using ((organization = asking_organization()) AND asking_administers())

access_event: door for SELECT to {asfound_service} using keeping_the_door()

access_event: own for SELECT to {asfound_service} using (account = asking_account())

access_event: own_happenings for INSERT to {asfound_service} with check ((organization = asking_organization()) OR keeping_the_door())

access_token: administrator for SELECT to {asfound_service} using ((organization_of(account) = asking_organization()) AND asking_administers())

access_token: administrator_adds for INSERT to {asfound_service} with check ((organization_of(account) = asking_organization()) AND asking_administers())

access_token: administrator_changes for UPDATE to {asfound_service} using ((organization_of(account) = asking_organization()) AND asking_administers())

access_token: door_changes for UPDATE to {asfound_service} using keeping_the_door()

access_token: door_sees for SELECT to {asfound_service} using keeping_the_door()

access_token: own for SELECT to {asfound_service} using (account = asking_account())

access_token: own_adds for INSERT to {asfound_service} with check (account = asking_account())

access_token: own_changes for UPDATE to {asfound_service} using (account = asking_account())

account: administrator_adds for INSERT to {asfound_service} with check ((organization = asking_organization()) AND asking_administers())

account: administrator_changes for UPDATE to {asfound_service} using ((organization = asking_organization()) AND asking_administers())

account: door for SELECT to {asfound_service} using keeping_the_door()

account: door_adds for INSERT to {asfound_service} with check keeping_the_door()

account: door_changes for UPDATE to {asfound_service} using keeping_the_door()

account: of_the_county for SELECT to {asfound_service} using ((asking_role() = ANY (ARRAY['reviewer'::text, 'service'::text])) AND (EXISTS ( SELECT
   FROM admission a
  WHERE ((a.county = asking_county()) AND (a.organization = account.organization)))))

account: own for SELECT to {asfound_service} using (organization = asking_organization())

admission: administrator_admits for INSERT to {asfound_service} with check ((asking_role() = 'reviewer'::text) AND asking_administers() AND asking_works_in(county))

admission: administrator_changes for UPDATE to {asfound_service} using ((asking_role() = 'reviewer'::text) AND asking_administers() AND asking_works_in(county))

admission: administrator_sees for SELECT to {asfound_service} using ((asking_role() = 'reviewer'::text) AND (asking_county() IS NULL) AND asking_works_in(county))

admission: of_the_county for SELECT to {asfound_service} using ((county = asking_county()) AND (asking_role() = ANY (ARRAY['reviewer'::text, 'service'::text])))

admission: own for SELECT to {asfound_service} using (organization = asking_organization())

audit: reviewer_reads for SELECT to {asfound_service} using ((county = asking_county()) AND (asking_role() = ANY (ARRAY['reviewer'::text, 'service'::text])))

county: anyone_reads for SELECT to {asfound_service} using true

decision: reviewer for INSERT to {asfound_service} with check ((county = asking_county()) AND (asking_role() = 'reviewer'::text))

decision: with_discrepancy for SELECT to {asfound_service} using ((county = asking_county()) AND (EXISTS ( SELECT
   FROM discrepancy d
  WHERE ((d.county = decision.county) AND (d.id = decision.discrepancy)))))

delivery: with_subscription for ALL to {asfound_service} using ((county = asking_county()) AND (EXISTS ( SELECT
   FROM subscription s
  WHERE ((s.county = delivery.county) AND (s.id = delivery.subscription)))))

discrepancy: own_reads for SELECT to {asfound_service} using ((county = asking_county()) AND (asking_role() = 'firm'::text) AND (organization = asking_organization()))

discrepancy: reviewer for ALL to {asfound_service} using ((county = asking_county()) AND (asking_role() = ANY (ARRAY['reviewer'::text, 'service'::text])))

discrepancy_change: service for ALL to {asfound_service} using ((county = asking_county()) AND (asking_role() = 'service'::text))

discrepancy_change: with_discrepancy for SELECT to {asfound_service} using ((county = asking_county()) AND (EXISTS ( SELECT
   FROM discrepancy d
  WHERE ((d.county = discrepancy_change.county) AND (d.id = discrepancy_change.discrepancy)))))

document: reviewer for ALL to {asfound_service} using ((county = asking_county()) AND (asking_role() = ANY (ARRAY['reviewer'::text, 'service'::text])))

document_page: reviewer for ALL to {asfound_service} using ((county = asking_county()) AND (asking_role() = ANY (ARRAY['reviewer'::text, 'service'::text])))

event: added for INSERT to {asfound_service} with check (county = asking_county())

event: reviewer_reads for SELECT to {asfound_service} using ((county = asking_county()) AND (asking_role() = ANY (ARRAY['reviewer'::text, 'service'::text])))

filing_change: reads for SELECT to {asfound_service} using ((county = asking_county()) AND (asking_role() = ANY (ARRAY['reviewer'::text, 'firm'::text, 'service'::text])))

filing_change: reviewer_adds for INSERT to {asfound_service} with check ((county = asking_county()) AND (asking_role() = 'reviewer'::text))

findings: own for ALL to {asfound_service} using ((county = asking_county()) AND (asking_role() = 'firm'::text) AND (organization = asking_organization()))

findings: reviewer_reads for SELECT to {asfound_service} using ((county = asking_county()) AND (asking_role() = 'reviewer'::text) AND (state = 'submitted'::text))

findings: service for ALL to {asfound_service} using ((county = asking_county()) AND (asking_role() = 'service'::text))

findings_revision: with_findings for ALL to {asfound_service} using ((county = asking_county()) AND (EXISTS ( SELECT
   FROM findings f
  WHERE ((f.county = findings_revision.county) AND (f.id = findings_revision.findings)))))

form_witness: reviewer for ALL to {asfound_service} using ((county = asking_county()) AND (asking_role() = ANY (ARRAY['reviewer'::text, 'service'::text])))

idempotency_key: own for ALL to {asfound_service} using ((county = asking_county()) AND (account = asking_account()))

import: reviewer for ALL to {asfound_service} using ((county = asking_county()) AND (asking_role() = ANY (ARRAY['reviewer'::text, 'service'::text])))

import_mapping: reviewer for ALL to {asfound_service} using ((county = asking_county()) AND (asking_role() = ANY (ARRAY['reviewer'::text, 'service'::text])))

import_rejection: reviewer for ALL to {asfound_service} using ((county = asking_county()) AND (asking_role() = ANY (ARRAY['reviewer'::text, 'service'::text])))

invitation: door for ALL to {asfound_service} using keeping_the_door()

job: own for ALL to {asfound_service} using ((county = asking_county()) AND (asking_role() = ANY (ARRAY['firm'::text, 'agent'::text])) AND (organization = asking_organization()))

job: reviewer for ALL to {asfound_service} using ((county = asking_county()) AND (asking_role() = ANY (ARRAY['reviewer'::text, 'service'::text])))

letter: own for ALL to {asfound_service} using ((county = asking_county()) AND (asking_role() = ANY (ARRAY['firm'::text, 'agent'::text])) AND (organization = asking_organization()))

letter: reviewer for ALL to {asfound_service} using ((county = asking_county()) AND (asking_role() = ANY (ARRAY['reviewer'::text, 'service'::text])))

letter_counter: service for ALL to {asfound_service} using ((county = asking_county()) AND (asking_role() = 'service'::text))

letter_withdrawal: reviewer for INSERT to {asfound_service} with check ((county = asking_county()) AND (asking_role() = 'reviewer'::text))

letter_withdrawal: with_letter for SELECT to {asfound_service} using ((county = asking_county()) AND (EXISTS ( SELECT
   FROM letter l
  WHERE ((l.county = letter_withdrawal.county) AND (l.id = letter_withdrawal.letter)))))

organization: administrator_adds for INSERT to {asfound_service} with check ((kind = ANY (ARRAY['firm'::text, 'agent'::text])) AND (asking_role() = 'reviewer'::text) AND asking_administers())

organization: administrator_sees for SELECT to {asfound_service} using ((asking_role() = 'reviewer'::text) AND (asking_county() IS NULL) AND (EXISTS ( SELECT
   FROM admission a
  WHERE (a.organization = organization.id))))

organization: door for SELECT to {asfound_service} using keeping_the_door()

organization: of_the_county for SELECT to {asfound_service} using ((asking_role() = ANY (ARRAY['reviewer'::text, 'service'::text])) AND (EXISTS ( SELECT
   FROM admission a
  WHERE ((a.county = asking_county()) AND (a.organization = organization.id)))))

organization: own for SELECT to {asfound_service} using (id = asking_organization())

outside_identity: door for ALL to {asfound_service} using keeping_the_door()

parcel: of_the_county for ALL to {asfound_service} using (county = asking_county())

parcel_alias: of_the_county for ALL to {asfound_service} using (county = asking_county())

parcel_status: derived for ALL to {asfound_service} using ((county = asking_county()) AND (asking_role() = 'service'::text))

parcel_status: of_the_county for SELECT to {asfound_service} using (county = asking_county())

permit: firm_reads for SELECT to {asfound_service} using ((county = asking_county()) AND (asking_role() = 'firm'::text))

permit: reviewer for ALL to {asfound_service} using ((county = asking_county()) AND (asking_role() = ANY (ARRAY['reviewer'::text, 'service'::text])))

permit_revision: firm_reads for SELECT to {asfound_service} using ((county = asking_county()) AND (asking_role() = 'firm'::text))

permit_revision: reviewer for ALL to {asfound_service} using ((county = asking_county()) AND (asking_role() = ANY (ARRAY['reviewer'::text, 'service'::text])))

photo: own for INSERT to {asfound_service} with check ((county = asking_county()) AND (asking_role() = 'firm'::text) AND (EXISTS ( SELECT
   FROM findings f
  WHERE ((f.county = photo.county) AND (f.id = photo.findings)))))

photo: own_draft for DELETE to {asfound_service} using ((county = asking_county()) AND (asking_role() = 'firm'::text) AND (EXISTS ( SELECT
   FROM findings f
  WHERE ((f.county = photo.county) AND (f.id = photo.findings) AND (f.state = 'draft'::text)))))

photo: with_findings for SELECT to {asfound_service} using ((county = asking_county()) AND (EXISTS ( SELECT
   FROM findings f
  WHERE ((f.county = photo.county) AND (f.id = photo.findings)))))

reading_tally: service for ALL to {asfound_service} using ((county = asking_county()) AND (asking_role() = 'service'::text))

reconciliation: reviewer_reads for SELECT to {asfound_service} using ((county = asking_county()) AND ((asking_role() = 'reviewer'::text) OR ((asking_role() = 'firm'::text) AND (organization = asking_organization()))))

reconciliation: service for ALL to {asfound_service} using ((county = asking_county()) AND (asking_role() = 'service'::text))

recovery_code: door for ALL to {asfound_service} using keeping_the_door()

rerun: reviewer for ALL to {asfound_service} using ((county = asking_county()) AND (asking_role() = ANY (ARRAY['reviewer'::text, 'service'::text])))

rerun_parcel: reviewer for ALL to {asfound_service} using ((county = asking_county()) AND (asking_role() = ANY (ARRAY['reviewer'::text, 'service'::text])))

rule_book: anyone_reads for SELECT to {asfound_service} using true

rule_book: service for INSERT to {asfound_service} with check (asking_role() = 'service'::text)

second_step: administrator for SELECT to {asfound_service} using ((organization_of(account) = asking_organization()) AND asking_administers())

second_step: door for ALL to {asfound_service} using keeping_the_door()

second_step: own for SELECT to {asfound_service} using (account = asking_account())

session: administrator for SELECT to {asfound_service} using ((organization_of(account) = asking_organization()) AND asking_administers())

session: administrator_changes for UPDATE to {asfound_service} using ((organization_of(account) = asking_organization()) AND asking_administers())

session: door for ALL to {asfound_service} using keeping_the_door()

session: own for SELECT to {asfound_service} using (account = asking_account())

session: own_changes for UPDATE to {asfound_service} using (account = asking_account())

sign_in: administrator for SELECT to {asfound_service} using ((organization_of(account) = asking_organization()) AND asking_administers())

sign_in: door for ALL to {asfound_service} using keeping_the_door()

sign_in: own for SELECT to {asfound_service} using (account = asking_account())

signing_key: anyone_reads for SELECT to {asfound_service} using true

subscription: own for ALL to {asfound_service} using ((county = asking_county()) AND (organization = asking_organization()) AND (asking_role() <> 'service'::text))

subscription: service for ALL to {asfound_service} using ((county = asking_county()) AND (asking_role() = 'service'::text))

system: reads for SELECT to {asfound_service} using ((county = asking_county()) AND (asking_role() = ANY (ARRAY['reviewer'::text, 'firm'::text, 'service'::text])))

system: reviewer for ALL to {asfound_service} using ((county = asking_county()) AND (asking_role() = 'reviewer'::text))

system_change: reviewer_adds for INSERT to {asfound_service} with check ((county = asking_county()) AND (asking_role() = 'reviewer'::text))

system_change: reviewer_reads for SELECT to {asfound_service} using ((county = asking_county()) AND (asking_role() = ANY (ARRAY['reviewer'::text, 'service'::text])))

system_parcel: reads for SELECT to {asfound_service} using ((county = asking_county()) AND (asking_role() = ANY (ARRAY['reviewer'::text, 'firm'::text, 'service'::text])))

system_parcel: reviewer for ALL to {asfound_service} using ((county = asking_county()) AND (asking_role() = 'reviewer'::text))

taught_by: reviewer for ALL to {asfound_service} using ((county = asking_county()) AND (asking_role() = ANY (ARRAY['reviewer'::text, 'service'::text])))

taught_form: reviewer for ALL to {asfound_service} using ((county = asking_county()) AND (asking_role() = ANY (ARRAY['reviewer'::text, 'service'::text])))

throttle: door for ALL to {asfound_service} using keeping_the_door()

transcription: reviewer for ALL to {asfound_service} using ((county = asking_county()) AND (asking_role() = ANY (ARRAY['reviewer'::text, 'service'::text])))


-- Triggers

CREATE CONSTRAINT TRIGGER append_audit AFTER INSERT OR DELETE OR UPDATE ON public.access_event DEFERRABLE INITIALLY DEFERRED FOR EACH ROW EXECUTE FUNCTION append_audit('', 'id', '')

CREATE TRIGGER never_changed BEFORE DELETE OR UPDATE ON public.access_event FOR EACH STATEMENT EXECUTE FUNCTION never_changed()

CREATE TRIGGER never_emptied BEFORE TRUNCATE ON public.access_event FOR EACH STATEMENT EXECUTE FUNCTION never_emptied()

CREATE CONSTRAINT TRIGGER append_audit AFTER INSERT OR DELETE OR UPDATE ON public.access_token DEFERRABLE INITIALLY DEFERRED FOR EACH ROW EXECUTE FUNCTION append_audit('', 'id', 'last_used_at')

CREATE TRIGGER never_emptied BEFORE TRUNCATE ON public.access_token FOR EACH STATEMENT EXECUTE FUNCTION never_emptied()

CREATE TRIGGER tell_of_change AFTER UPDATE OF expires_at, revoked_at ON public.access_token FOR EACH STATEMENT EXECUTE FUNCTION tell_of_access()

CREATE CONSTRAINT TRIGGER append_audit AFTER INSERT OR DELETE OR UPDATE ON public.account DEFERRABLE INITIALLY DEFERRED FOR EACH ROW EXECUTE FUNCTION append_audit('', 'id', '')

CREATE TRIGGER never_emptied BEFORE TRUNCATE ON public.account FOR EACH STATEMENT EXECUTE FUNCTION never_emptied()

CREATE TRIGGER tell_of_change AFTER UPDATE OF label, administers, suspended_at ON public.account FOR EACH STATEMENT EXECUTE FUNCTION tell_of_access()

CREATE CONSTRAINT TRIGGER append_audit AFTER INSERT OR DELETE OR UPDATE ON public.admission DEFERRABLE INITIALLY DEFERRED FOR EACH ROW EXECUTE FUNCTION append_audit('county', 'organization', '')

CREATE TRIGGER never_emptied BEFORE TRUNCATE ON public.admission FOR EACH STATEMENT EXECUTE FUNCTION never_emptied()

CREATE TRIGGER tell_of_change AFTER INSERT OR UPDATE ON public.admission FOR EACH STATEMENT EXECUTE FUNCTION tell_of_access()

CREATE TRIGGER never_changed BEFORE DELETE OR UPDATE ON public.audit FOR EACH STATEMENT EXECUTE FUNCTION never_changed()

CREATE TRIGGER never_emptied BEFORE TRUNCATE ON public.audit FOR EACH STATEMENT EXECUTE FUNCTION never_emptied()

CREATE TRIGGER never_changed BEFORE DELETE OR UPDATE ON public.audit_break FOR EACH STATEMENT EXECUTE FUNCTION never_changed()

CREATE TRIGGER never_emptied BEFORE TRUNCATE ON public.audit_break FOR EACH STATEMENT EXECUTE FUNCTION never_emptied()

CREATE CONSTRAINT TRIGGER append_audit AFTER INSERT OR DELETE OR UPDATE ON public.county DEFERRABLE INITIALLY DEFERRED FOR EACH ROW EXECUTE FUNCTION append_audit('id', 'id', '')

CREATE TRIGGER never_emptied BEFORE TRUNCATE ON public.county FOR EACH STATEMENT EXECUTE FUNCTION never_emptied()

CREATE CONSTRAINT TRIGGER append_audit AFTER INSERT OR DELETE OR UPDATE ON public.decision DEFERRABLE INITIALLY DEFERRED FOR EACH ROW EXECUTE FUNCTION append_audit('county', 'id', '')

CREATE TRIGGER never_changed BEFORE DELETE OR UPDATE ON public.decision FOR EACH STATEMENT EXECUTE FUNCTION never_changed()

CREATE TRIGGER never_emptied BEFORE TRUNCATE ON public.decision FOR EACH STATEMENT EXECUTE FUNCTION never_emptied()

CREATE CONSTRAINT TRIGGER append_audit AFTER INSERT OR DELETE OR UPDATE ON public.delivery DEFERRABLE INITIALLY DEFERRED FOR EACH ROW EXECUTE FUNCTION append_audit('county', 'id', 'state,tries,next_at,says,changed_at')

CREATE TRIGGER never_emptied BEFORE TRUNCATE ON public.delivery FOR EACH STATEMENT EXECUTE FUNCTION never_emptied()

CREATE CONSTRAINT TRIGGER append_audit AFTER INSERT OR DELETE OR UPDATE ON public.discrepancy DEFERRABLE INITIALLY DEFERRED FOR EACH ROW EXECUTE FUNCTION append_audit('county', 'id', 'severity_rank')

CREATE TRIGGER never_emptied BEFORE TRUNCATE ON public.discrepancy FOR EACH STATEMENT EXECUTE FUNCTION never_emptied()

CREATE CONSTRAINT TRIGGER append_audit AFTER INSERT OR DELETE OR UPDATE ON public.discrepancy_change DEFERRABLE INITIALLY DEFERRED FOR EACH ROW EXECUTE FUNCTION append_audit('county', 'id', '')

CREATE TRIGGER never_changed BEFORE DELETE OR UPDATE ON public.discrepancy_change FOR EACH STATEMENT EXECUTE FUNCTION never_changed()

CREATE TRIGGER never_emptied BEFORE TRUNCATE ON public.discrepancy_change FOR EACH STATEMENT EXECUTE FUNCTION never_emptied()

CREATE CONSTRAINT TRIGGER append_audit AFTER INSERT OR DELETE OR UPDATE ON public.document DEFERRABLE INITIALLY DEFERRED FOR EACH ROW EXECUTE FUNCTION append_audit('county', 'id', '')

CREATE TRIGGER keep_paper BEFORE UPDATE ON public.document FOR EACH ROW WHEN (((old.content_hash IS DISTINCT FROM new.content_hash) OR (old.bytes IS DISTINCT FROM new.bytes) OR (old.received_by IS DISTINCT FROM new.received_by) OR (old.received_at IS DISTINCT FROM new.received_at))) EXECUTE FUNCTION keep_paper()

CREATE TRIGGER never_emptied BEFORE TRUNCATE ON public.document FOR EACH STATEMENT EXECUTE FUNCTION never_emptied()

CREATE TRIGGER never_removed BEFORE DELETE ON public.document FOR EACH STATEMENT EXECUTE FUNCTION never_changed()

CREATE CONSTRAINT TRIGGER append_audit AFTER INSERT OR DELETE OR UPDATE ON public.document_page DEFERRABLE INITIALLY DEFERRED FOR EACH ROW EXECUTE FUNCTION append_audit('county', 'document,number', '')

CREATE TRIGGER never_emptied BEFORE TRUNCATE ON public.document_page FOR EACH STATEMENT EXECUTE FUNCTION never_emptied()

CREATE CONSTRAINT TRIGGER append_audit AFTER INSERT OR DELETE OR UPDATE ON public.event DEFERRABLE INITIALLY DEFERRED FOR EACH ROW EXECUTE FUNCTION append_audit('county', 'id', '')

CREATE TRIGGER never_changed BEFORE DELETE OR UPDATE ON public.event FOR EACH STATEMENT EXECUTE FUNCTION never_changed()

CREATE TRIGGER never_emptied BEFORE TRUNCATE ON public.event FOR EACH STATEMENT EXECUTE FUNCTION never_emptied()

CREATE CONSTRAINT TRIGGER append_audit AFTER INSERT OR DELETE OR UPDATE ON public.filing_change DEFERRABLE INITIALLY DEFERRED FOR EACH ROW EXECUTE FUNCTION append_audit('county', 'id', '')

CREATE TRIGGER never_changed BEFORE DELETE OR UPDATE ON public.filing_change FOR EACH STATEMENT EXECUTE FUNCTION never_changed()

CREATE TRIGGER never_emptied BEFORE TRUNCATE ON public.filing_change FOR EACH STATEMENT EXECUTE FUNCTION never_emptied()

CREATE CONSTRAINT TRIGGER append_audit AFTER INSERT OR DELETE OR UPDATE ON public.findings DEFERRABLE INITIALLY DEFERRED FOR EACH ROW EXECUTE FUNCTION append_audit('county', 'id', '')

CREATE TRIGGER keep_submitted BEFORE UPDATE ON public.findings FOR EACH ROW WHEN ((old.state = 'submitted'::text)) EXECUTE FUNCTION keep_submitted_findings()

CREATE TRIGGER keep_submitted_there BEFORE DELETE ON public.findings FOR EACH ROW WHEN ((old.state = 'submitted'::text)) EXECUTE FUNCTION keep_submitted_findings()

CREATE TRIGGER never_emptied BEFORE TRUNCATE ON public.findings FOR EACH STATEMENT EXECUTE FUNCTION never_emptied()

CREATE CONSTRAINT TRIGGER append_audit AFTER INSERT OR DELETE OR UPDATE ON public.findings_revision DEFERRABLE INITIALLY DEFERRED FOR EACH ROW EXECUTE FUNCTION append_audit('county', 'findings,revision', '')

CREATE TRIGGER never_changed BEFORE DELETE OR UPDATE ON public.findings_revision FOR EACH STATEMENT EXECUTE FUNCTION never_changed()

CREATE TRIGGER never_emptied BEFORE TRUNCATE ON public.findings_revision FOR EACH STATEMENT EXECUTE FUNCTION never_emptied()

CREATE CONSTRAINT TRIGGER append_audit AFTER INSERT OR DELETE OR UPDATE ON public.import DEFERRABLE INITIALLY DEFERRED FOR EACH ROW EXECUTE FUNCTION append_audit('county', 'id', 'state,reason,job,rerun,rows_read,read_to_line,added,changed,unchanged,rejected,revision,ended_at')

CREATE TRIGGER never_emptied BEFORE TRUNCATE ON public.import FOR EACH STATEMENT EXECUTE FUNCTION never_emptied()

CREATE CONSTRAINT TRIGGER append_audit AFTER INSERT OR DELETE OR UPDATE ON public.import_mapping DEFERRABLE INITIALLY DEFERRED FOR EACH ROW EXECUTE FUNCTION append_audit('county', 'kind,headings', '')

CREATE TRIGGER never_emptied BEFORE TRUNCATE ON public.import_mapping FOR EACH STATEMENT EXECUTE FUNCTION never_emptied()

CREATE CONSTRAINT TRIGGER append_audit AFTER INSERT OR DELETE OR UPDATE ON public.invitation DEFERRABLE INITIALLY DEFERRED FOR EACH ROW EXECUTE FUNCTION append_audit('', 'id', '')

CREATE TRIGGER never_emptied BEFORE TRUNCATE ON public.invitation FOR EACH STATEMENT EXECUTE FUNCTION never_emptied()

CREATE CONSTRAINT TRIGGER append_audit AFTER INSERT OR DELETE OR UPDATE ON public.letter DEFERRABLE INITIALLY DEFERRED FOR EACH ROW EXECUTE FUNCTION append_audit('county', 'id', '')

CREATE TRIGGER never_changed BEFORE DELETE OR UPDATE ON public.letter FOR EACH STATEMENT EXECUTE FUNCTION never_changed()

CREATE TRIGGER never_emptied BEFORE TRUNCATE ON public.letter FOR EACH STATEMENT EXECUTE FUNCTION never_emptied()

CREATE CONSTRAINT TRIGGER append_audit AFTER INSERT OR DELETE OR UPDATE ON public.letter_withdrawal DEFERRABLE INITIALLY DEFERRED FOR EACH ROW EXECUTE FUNCTION append_audit('county', 'letter', '')

CREATE TRIGGER never_changed BEFORE DELETE OR UPDATE ON public.letter_withdrawal FOR EACH STATEMENT EXECUTE FUNCTION never_changed()

CREATE TRIGGER never_emptied BEFORE TRUNCATE ON public.letter_withdrawal FOR EACH STATEMENT EXECUTE FUNCTION never_emptied()

CREATE CONSTRAINT TRIGGER append_audit AFTER INSERT OR DELETE OR UPDATE ON public.organization DEFERRABLE INITIALLY DEFERRED FOR EACH ROW EXECUTE FUNCTION append_audit('', 'id', '')

CREATE TRIGGER never_emptied BEFORE TRUNCATE ON public.organization FOR EACH STATEMENT EXECUTE FUNCTION never_emptied()

CREATE CONSTRAINT TRIGGER append_audit AFTER INSERT OR DELETE OR UPDATE ON public.outside_identity DEFERRABLE INITIALLY DEFERRED FOR EACH ROW EXECUTE FUNCTION append_audit('', 'issuer,subject', '')

CREATE TRIGGER never_emptied BEFORE TRUNCATE ON public.outside_identity FOR EACH STATEMENT EXECUTE FUNCTION never_emptied()

CREATE CONSTRAINT TRIGGER append_audit AFTER INSERT OR DELETE OR UPDATE ON public.parcel DEFERRABLE INITIALLY DEFERRED FOR EACH ROW EXECUTE FUNCTION append_audit('county', 'id', 'key,loose_key,house_number,street_key')

CREATE TRIGGER never_emptied BEFORE TRUNCATE ON public.parcel FOR EACH STATEMENT EXECUTE FUNCTION never_emptied()

CREATE TRIGGER note_streets_of_changed AFTER UPDATE ON public.parcel REFERENCING NEW TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION note_streets()

CREATE TRIGGER note_streets_of_new AFTER INSERT ON public.parcel REFERENCING NEW TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION note_streets()

CREATE CONSTRAINT TRIGGER append_audit AFTER INSERT OR DELETE OR UPDATE ON public.parcel_alias DEFERRABLE INITIALLY DEFERRED FOR EACH ROW EXECUTE FUNCTION append_audit('county', 'parcel,number', 'key,loose_key')

CREATE TRIGGER never_emptied BEFORE TRUNCATE ON public.parcel_alias FOR EACH STATEMENT EXECUTE FUNCTION never_emptied()

CREATE CONSTRAINT TRIGGER append_audit AFTER INSERT OR DELETE OR UPDATE ON public.parcel_status DEFERRABLE INITIALLY DEFERRED FOR EACH ROW EXECUTE FUNCTION append_audit('county', 'parcel', 'derived_at')

CREATE TRIGGER never_emptied BEFORE TRUNCATE ON public.parcel_status FOR EACH STATEMENT EXECUTE FUNCTION never_emptied()

CREATE TRIGGER tell_of_changed_status AFTER UPDATE OF word ON public.parcel_status FOR EACH ROW WHEN ((old.word IS DISTINCT FROM new.word)) EXECUTE FUNCTION tell_of_status()

CREATE TRIGGER tell_of_first_status AFTER INSERT ON public.parcel_status FOR EACH ROW EXECUTE FUNCTION tell_of_status()

CREATE CONSTRAINT TRIGGER append_audit AFTER INSERT OR DELETE OR UPDATE ON public.permit DEFERRABLE INITIALLY DEFERRED FOR EACH ROW EXECUTE FUNCTION append_audit('county', 'id', '')

CREATE CONSTRAINT TRIGGER keep_revisions_in_step AFTER INSERT OR UPDATE ON public.permit DEFERRABLE INITIALLY DEFERRED FOR EACH ROW EXECUTE FUNCTION keep_revisions_in_step()

CREATE TRIGGER never_emptied BEFORE TRUNCATE ON public.permit FOR EACH STATEMENT EXECUTE FUNCTION never_emptied()

CREATE TRIGGER never_removed BEFORE DELETE ON public.permit FOR EACH STATEMENT EXECUTE FUNCTION never_changed()

CREATE CONSTRAINT TRIGGER append_audit AFTER INSERT OR DELETE OR UPDATE ON public.permit_revision DEFERRABLE INITIALLY DEFERRED FOR EACH ROW EXECUTE FUNCTION append_audit('county', 'permit,revision', '')

CREATE TRIGGER never_changed BEFORE DELETE OR UPDATE ON public.permit_revision FOR EACH STATEMENT EXECUTE FUNCTION never_changed()

CREATE TRIGGER never_emptied BEFORE TRUNCATE ON public.permit_revision FOR EACH STATEMENT EXECUTE FUNCTION never_emptied()

CREATE CONSTRAINT TRIGGER append_audit AFTER INSERT OR DELETE OR UPDATE ON public.photo DEFERRABLE INITIALLY DEFERRED FOR EACH ROW EXECUTE FUNCTION append_audit('county', 'id', '')

CREATE TRIGGER never_emptied BEFORE TRUNCATE ON public.photo FOR EACH STATEMENT EXECUTE FUNCTION never_emptied()

CREATE CONSTRAINT TRIGGER append_audit AFTER INSERT OR DELETE OR UPDATE ON public.reconciliation DEFERRABLE INITIALLY DEFERRED FOR EACH ROW EXECUTE FUNCTION append_audit('county', 'id', '')

CREATE TRIGGER never_changed BEFORE DELETE OR UPDATE ON public.reconciliation FOR EACH STATEMENT EXECUTE FUNCTION never_changed()

CREATE TRIGGER never_emptied BEFORE TRUNCATE ON public.reconciliation FOR EACH STATEMENT EXECUTE FUNCTION never_emptied()

CREATE TRIGGER never_changed BEFORE DELETE OR UPDATE ON public.rule_book FOR EACH STATEMENT EXECUTE FUNCTION never_changed()

CREATE TRIGGER never_emptied BEFORE TRUNCATE ON public.rule_book FOR EACH STATEMENT EXECUTE FUNCTION never_emptied()

CREATE CONSTRAINT TRIGGER append_audit AFTER INSERT OR DELETE OR UPDATE ON public.second_step DEFERRABLE INITIALLY DEFERRED FOR EACH ROW EXECUTE FUNCTION append_audit('', 'account', 'last_step')

CREATE TRIGGER never_emptied BEFORE TRUNCATE ON public.second_step FOR EACH STATEMENT EXECUTE FUNCTION never_emptied()

CREATE TRIGGER tell_of_change AFTER UPDATE OF ends_at ON public.session FOR EACH STATEMENT EXECUTE FUNCTION tell_of_access()

CREATE TRIGGER tell_of_removal AFTER DELETE ON public.session FOR EACH STATEMENT EXECUTE FUNCTION tell_of_access()

CREATE CONSTRAINT TRIGGER append_audit AFTER INSERT OR DELETE OR UPDATE ON public.sign_in DEFERRABLE INITIALLY DEFERRED FOR EACH ROW EXECUTE FUNCTION append_audit('', 'account', '')

CREATE TRIGGER never_emptied BEFORE TRUNCATE ON public.sign_in FOR EACH STATEMENT EXECUTE FUNCTION never_emptied()

CREATE CONSTRAINT TRIGGER append_audit AFTER INSERT OR DELETE OR UPDATE ON public.signing_key DEFERRABLE INITIALLY DEFERRED FOR EACH ROW EXECUTE FUNCTION append_audit('', 'kid', '')

CREATE TRIGGER never_emptied BEFORE TRUNCATE ON public.signing_key FOR EACH STATEMENT EXECUTE FUNCTION never_emptied()

CREATE CONSTRAINT TRIGGER append_audit AFTER INSERT OR DELETE OR UPDATE ON public.subscription DEFERRABLE INITIALLY DEFERRED FOR EACH ROW EXECUTE FUNCTION append_audit('county', 'id', '')

CREATE TRIGGER never_emptied BEFORE TRUNCATE ON public.subscription FOR EACH STATEMENT EXECUTE FUNCTION never_emptied()

CREATE CONSTRAINT TRIGGER append_audit AFTER INSERT OR DELETE OR UPDATE ON public.system DEFERRABLE INITIALLY DEFERRED FOR EACH ROW EXECUTE FUNCTION append_audit('county', 'id', '')

CREATE TRIGGER never_emptied BEFORE TRUNCATE ON public.system FOR EACH STATEMENT EXECUTE FUNCTION never_emptied()

CREATE CONSTRAINT TRIGGER append_audit AFTER INSERT OR DELETE OR UPDATE ON public.system_change DEFERRABLE INITIALLY DEFERRED FOR EACH ROW EXECUTE FUNCTION append_audit('county', 'system,revision', '')

CREATE TRIGGER never_changed BEFORE DELETE OR UPDATE ON public.system_change FOR EACH STATEMENT EXECUTE FUNCTION never_changed()

CREATE TRIGGER never_emptied BEFORE TRUNCATE ON public.system_change FOR EACH STATEMENT EXECUTE FUNCTION never_emptied()

CREATE CONSTRAINT TRIGGER append_audit AFTER INSERT OR DELETE OR UPDATE ON public.system_parcel DEFERRABLE INITIALLY DEFERRED FOR EACH ROW EXECUTE FUNCTION append_audit('county', 'system,parcel', '')

CREATE TRIGGER never_emptied BEFORE TRUNCATE ON public.system_parcel FOR EACH STATEMENT EXECUTE FUNCTION never_emptied()

CREATE CONSTRAINT TRIGGER append_audit AFTER INSERT OR DELETE OR UPDATE ON public.taught_by DEFERRABLE INITIALLY DEFERRED FOR EACH ROW EXECUTE FUNCTION append_audit('county', 'transcription,permit', '')

CREATE TRIGGER never_emptied BEFORE TRUNCATE ON public.taught_by FOR EACH STATEMENT EXECUTE FUNCTION never_emptied()

CREATE CONSTRAINT TRIGGER append_audit AFTER INSERT OR DELETE OR UPDATE ON public.taught_form DEFERRABLE INITIALLY DEFERRED FOR EACH ROW EXECUTE FUNCTION append_audit('county', 'id', '')

CREATE TRIGGER never_emptied BEFORE TRUNCATE ON public.taught_form FOR EACH STATEMENT EXECUTE FUNCTION never_emptied()

CREATE CONSTRAINT TRIGGER append_audit AFTER INSERT OR DELETE OR UPDATE ON public.transcription DEFERRABLE INITIALLY DEFERRED FOR EACH ROW EXECUTE FUNCTION append_audit('county', 'id', '')

CREATE TRIGGER never_changed BEFORE DELETE OR UPDATE ON public.transcription FOR EACH STATEMENT EXECUTE FUNCTION never_changed()

CREATE TRIGGER never_emptied BEFORE TRUNCATE ON public.transcription FOR EACH STATEMENT EXECUTE FUNCTION never_emptied()


-- Functions

CREATE OR REPLACE FUNCTION public.address_key(address text)
 RETURNS text
 LANGUAGE sql
 IMMUTABLE PARALLEL SAFE STRICT
RETURN btrim(replace(replace(replace(replace(replace(replace(replace(replace(replace(replace(replace(replace(replace(((' '::text || translate(lower(address), '.,;:#-/_%\''"()'::text, '          '::text)) || ' '::text), '  '::text, ' '::text), '  '::text, ' '::text), ' rd '::text, ' road '::text), ' st '::text, ' street '::text), ' str '::text, ' street '::text), ' ln '::text, ' lane '::text), ' la '::text, ' lane '::text), ' ave '::text, ' avenue '::text), ' av '::text, ' avenue '::text), ' dr '::text, ' drive '::text), ' ct '::text, ' court '::text), ' hwy '::text, ' highway '::text), ' rte '::text, ' route '::text))

CREATE OR REPLACE FUNCTION public.append_audit()
 RETURNS trigger
 LANGUAGE plpgsql
 SECURITY DEFINER
 SET search_path TO 'pg_catalog', 'public'
 SET "TimeZone" TO 'UTC'
AS $function$
declare
  left_out constant text[] := string_to_array(tg_argv[2], ',');
  was constant jsonb := case when tg_op <> 'INSERT' then to_jsonb(old) - left_out end;
  becomes constant jsonb := case when tg_op <> 'DELETE' then to_jsonb(new) - left_out end;
  hash_before constant text := record_hash(was);
  hash_after constant text := record_hash(becomes);
  named constant jsonb := coalesce(becomes, was);
begin
  if hash_before = hash_after then return null; end if;
  perform append_audit_entry(
    coalesce(named ->> nullif(tg_argv[0], ''), '*'),
    case tg_op when 'INSERT' then 'made' when 'UPDATE' then 'changed' else 'removed' end,
    tg_table_name,
    (select string_agg(named ->> key, '/' order by place)
      from unnest(string_to_array(tg_argv[1], ',')) with ordinality as keys (key, place)),
    hash_before, hash_after);
  return null;
end
$function$

CREATE OR REPLACE FUNCTION public.append_audit_entry(chain text, did text, of_kind text, of_record text, hash_before text, hash_after text)
 RETURNS void
 LANGUAGE plpgsql
 SET search_path TO 'pg_catalog', 'public'
 SET enable_seqscan TO 'off'
 SET enable_bitmapscan TO 'off'
 SET enable_sort TO 'off'
AS $function$
declare
  last record;
  this bigint;
  moment timestamptz;
  entry text;
  who constant uuid := asking_account();
  of_organization constant uuid := asking_organization();
  as_role constant text := coalesce(asking_role(), 'owner');
begin
  perform pg_advisory_xact_lock(hashtextextended('audit ' || chain, 0));
  -- The collation of a variable is that of whatever it was called with, and with another one the key is no use.
  select number, hash into last from audit where county = chain collate "default" order by number desc limit 1;
  this := coalesce(last.number, 0) + 1;
  moment := clock_timestamp();
  entry := format('{"account":%s,"act":%s,"afterHash":%s,"at":"%s","beforeHash":%s,"county":%s,"kind":%s,"number":%s,'
    '"organization":%s,"record":%s,"role":%s}',
    coalesce(to_json(who)::text, 'null'), to_json(did), coalesce(to_json(hash_after)::text, 'null'),
    to_char(moment at time zone 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS.US"Z"'), coalesce(to_json(hash_before)::text, 'null'),
    to_json(chain), to_json(of_kind), this, coalesce(to_json(of_organization)::text, 'null'), to_json(of_record),
    to_json(as_role));
  insert into audit
    (county, number, at, act, kind, record, account, organization, role, before_hash, after_hash, hash)
  values
    (chain, this, moment, did, of_kind, of_record, who, of_organization, as_role, hash_before, hash_after,
     encode(sha256(convert_to(coalesce(last.hash, repeat('0', 64)) || entry, 'UTF8')), 'hex'));
end
$function$

-- may call: owner=X/owner

CREATE OR REPLACE FUNCTION public.asking_account()
 RETURNS uuid
 LANGUAGE sql
 STABLE PARALLEL SAFE
RETURN (NULLIF(current_setting('asfound.account'::text, true), ''::text))::uuid

CREATE OR REPLACE FUNCTION public.asking_administers()
 RETURNS boolean
 LANGUAGE sql
 STABLE SECURITY DEFINER
 SET search_path TO 'pg_catalog', 'public'
AS $function$
  select exists (select from account where id = asking_account() and administers and suspended_at is null)
$function$

-- may call: owner=X/owner, asfound_service=X/owner

CREATE OR REPLACE FUNCTION public.asking_county()
 RETURNS text
 LANGUAGE sql
 STABLE PARALLEL SAFE
RETURN NULLIF(current_setting('asfound.county'::text, true), ''::text)

CREATE OR REPLACE FUNCTION public.asking_organization()
 RETURNS uuid
 LANGUAGE sql
 STABLE PARALLEL SAFE
RETURN (NULLIF(current_setting('asfound.organization'::text, true), ''::text))::uuid

CREATE OR REPLACE FUNCTION public.asking_role()
 RETURNS text
 LANGUAGE sql
 STABLE PARALLEL SAFE
RETURN NULLIF(current_setting('asfound.role'::text, true), ''::text)

CREATE OR REPLACE FUNCTION public.asking_works_in(asked text)
 RETURNS boolean
 LANGUAGE sql
 STABLE SECURITY DEFINER
 SET search_path TO 'pg_catalog', 'public'
AS $function$
  select exists (select from admission
    where county = asked and organization = asking_organization() and withdrawn_at is null)
$function$

-- may call: owner=X/owner, asfound_service=X/owner

CREATE OR REPLACE FUNCTION public.counties_with_deliveries_due(at timestamp with time zone)
 RETURNS SETOF text
 LANGUAGE sql
 STABLE SECURITY DEFINER
 SET search_path TO 'pg_catalog', 'public'
AS $function$
  select c.id from county c
  where exists (select from delivery d where d.county = c.id and d.state = 'waiting' and d.next_at <= at)
$function$

-- may call: owner=X/owner, asfound_service=X/owner

CREATE OR REPLACE FUNCTION public.county_of_letter(asked uuid)
 RETURNS text
 LANGUAGE sql
 STABLE SECURITY DEFINER
 SET search_path TO 'pg_catalog', 'public'
AS $function$
  select l.county from letter l where l.id = asked
$function$

-- may call: owner=X/owner, asfound_service=X/owner

CREATE OR REPLACE FUNCTION public.end_session(session_hash bytea)
 RETURNS void
 LANGUAGE sql
 SECURITY DEFINER
 SET search_path TO 'pg_catalog', 'public'
AS $function$
  update session set ends_at = least(ends_at, now()) where hash = session_hash
$function$

-- may call: owner=X/owner, asfound_service=X/owner

CREATE OR REPLACE FUNCTION public.find_access_token(token_hash bytea)
 RETURNS TABLE(token uuid, account uuid, organization uuid, role text, administers boolean, manages boolean, counties text[], writes text[], expires_at timestamp with time zone)
 LANGUAGE plpgsql
 SECURITY DEFINER
 SET search_path TO 'pg_catalog', 'public'
AS $function$
#variable_conflict use_column
begin
  return query
    select t.id, a.id, a.organization, a.role, a.administers, t.manages, here.counties,
      array(select unnest(t.writes) intersect select unnest(here.counties) order by 1), t.expires_at
    from access_token t join account a on a.id = t.account
    cross join lateral (select array(
      select d.county from admission d
      where d.organization = a.organization and d.withdrawn_at is null and d.county = any (t.counties)
      order by d.county)) as here (counties)
    where t.hash = token_hash and t.revoked_at is null and a.suspended_at is null
      and (t.expires_at is null or t.expires_at > now());
  if found then
    update access_token set last_used_at = now()
      where hash = token_hash and (last_used_at is null or last_used_at < now() - interval '1 minute');
  end if;
end
$function$

-- may call: owner=X/owner, asfound_service=X/owner

CREATE OR REPLACE FUNCTION public.find_session(session_hash bytea)
 RETURNS TABLE(session uuid, stage text, account uuid, organization uuid, role text, administers boolean, counties text[], ends_at timestamp with time zone)
 LANGUAGE plpgsql
 SECURITY DEFINER
 SET search_path TO 'pg_catalog', 'public'
AS $function$
#variable_conflict use_column
begin
  return query
    select s.id, s.stage, a.id, a.organization, a.role, a.administers, array(
      select d.county from admission d
      where d.organization = a.organization and d.withdrawn_at is null order by d.county), s.ends_at
    from session s join account a on a.id = s.account
    where s.hash = session_hash and a.suspended_at is null and s.ends_at > now()
      and s.last_used_at > now() - s.idle;
  if found then
    update session set last_used_at = now()
      where hash = session_hash and last_used_at < now() - interval '1 minute';
  end if;
end
$function$

-- may call: owner=X/owner, asfound_service=X/owner

CREATE OR REPLACE FUNCTION public.house_number(address text)
 RETURNS integer
 LANGUAGE sql
 IMMUTABLE PARALLEL SAFE STRICT
RETURN ("substring"(address, '^\s*(\d{1,7})[[:alpha:]]?\s'::text))::integer

CREATE OR REPLACE FUNCTION public.keep_paper()
 RETURNS trigger
 LANGUAGE plpgsql
AS $function$
begin
  raise exception 'the paper of document % is never another', old.id using errcode = 'restrict_violation';
end
$function$

CREATE OR REPLACE FUNCTION public.keep_revisions_in_step()
 RETURNS trigger
 LANGUAGE plpgsql
 SECURITY DEFINER
 SET search_path TO 'pg_catalog', 'public'
AS $function$
begin
  if not exists (select from permit_revision r where r.county = new.county and r.permit = new.id
      and r.revision = new.revision and r.record = new.record) then
    raise exception 'permit % says what none of its revisions does', new.id using errcode = 'restrict_violation';
  end if;
  return null;
end
$function$

CREATE OR REPLACE FUNCTION public.keep_submitted_findings()
 RETURNS trigger
 LANGUAGE plpgsql
AS $function$
begin
  raise exception 'submitted findings are never changed; amend them by new findings' using errcode = 'restrict_violation';
end
$function$

CREATE OR REPLACE FUNCTION public.keeping_the_door()
 RETURNS boolean
 LANGUAGE sql
 STABLE PARALLEL SAFE
RETURN ((asking_role() = 'service'::text) AND (asking_county() IS NULL))

CREATE OR REPLACE FUNCTION public.letter_with_code(asked text)
 RETURNS TABLE(county text, letter uuid)
 LANGUAGE sql
 STABLE SECURITY DEFINER
 SET search_path TO 'pg_catalog', 'public'
AS $function$
  select l.county, l.id from letter l where l.code = asked
$function$

-- may call: owner=X/owner, asfound_service=X/owner

CREATE OR REPLACE FUNCTION public.never_changed()
 RETURNS trigger
 LANGUAGE plpgsql
AS $function$
begin
  raise exception 'what is in % is never changed or removed; it is superseded', tg_table_name
    using errcode = 'restrict_violation';
end
$function$

CREATE OR REPLACE FUNCTION public.never_emptied()
 RETURNS trigger
 LANGUAGE plpgsql
AS $function$
begin
  raise exception 'the records of % are never removed as a whole', tg_table_name using errcode = 'restrict_violation';
end
$function$

CREATE OR REPLACE FUNCTION public.note_streets()
 RETURNS trigger
 LANGUAGE plpgsql
 SECURITY DEFINER
 SET search_path TO 'pg_catalog', 'public'
AS $function$
begin
  insert into street (county, key)
    select distinct county, street_key from changed where street_key <> ''
    on conflict do nothing;
  return null;
end
$function$

CREATE OR REPLACE FUNCTION public.organization_of(asked uuid)
 RETURNS uuid
 LANGUAGE sql
 STABLE SECURITY DEFINER
 SET search_path TO 'pg_catalog', 'public'
AS $function$
  select organization from account where id = asked
$function$

-- may call: owner=X/owner, asfound_service=X/owner

CREATE OR REPLACE FUNCTION public.parcel_key(number text)
 RETURNS text
 LANGUAGE sql
 IMMUTABLE PARALLEL SAFE STRICT
RETURN translate(upper(number), ('OIL -./,:;_%#''"()[]\–—'::text || chr(9)), '011'::text)

CREATE OR REPLACE FUNCTION public.parcel_loose_key(number text)
 RETURNS text
 LANGUAGE sql
 IMMUTABLE PARALLEL SAFE STRICT
RETURN btrim(regexp_replace(translate(upper(number), 'OIL -/,:;_%#''"()[]\–—'::text, '011..................'::text), '(^|\.)[.0]+(?=[^.])'::text, '\1'::text, 'g'::text), '.'::text)

CREATE OR REPLACE FUNCTION public.record_hash(record jsonb)
 RETURNS text
 LANGUAGE sql
 IMMUTABLE PARALLEL SAFE STRICT
RETURN encode(sha256(convert_to(((record - ARRAY(SELECT jsonb_each.key FROM jsonb_each(record_hash.record) jsonb_each(key, value) WHERE (jsonb_each.value = 'null'::jsonb))))::text, 'UTF8'::name)), 'hex'::text)

CREATE OR REPLACE FUNCTION public.restate_records(of_table regclass)
 RETURNS void
 LANGUAGE sql
 SET search_path TO 'pg_catalog', 'public'
AS $function$
  select append_audit_entry(now.county, 'restated', now.kind, now.record, last.after_hash, now.hash)
  from (select * from watched_records(of_table) order by county, record) now
  left join lateral (
    select after_hash from audit a
    where a.county = now.county and a.kind = now.kind and a.record = now.record order by a.number desc limit 1
  ) last on true
  where last.after_hash is distinct from now.hash
$function$

-- may call: owner=X/owner

CREATE OR REPLACE FUNCTION public.search_parcels(query text, most integer)
 RETURNS TABLE(parcel uuid, matched text, says text, score real)
 LANGUAGE plpgsql
 STABLE SECURITY DEFINER
 SET search_path TO 'pg_catalog', 'public'
AS $function$
#variable_conflict use_column
declare
  here constant text := asking_county();
  wanted constant text := parcel_key(query);
  loose constant text := parcel_loose_key(query);
  house constant integer := house_number(query);
  street constant text := street_key(query);
  like_number constant boolean := wanted ~ '[0-9]';
  has_word constant boolean := query ~ '[[:alpha:]]{3}';
  streets text[];
  likeness real := 1;
begin
  if here is null or wanted is null or wanted = '' then return; end if;

  if like_number then
    return query
      select p.id, 'number', p.number, 1::real from parcel p where p.county = here and p.key = wanted
      union
      select p.id, 'number', p.number, 1::real from parcel p where p.county = here and p.loose_key = loose
      limit most;
    if found then return; end if;

    return query
      select a.parcel, 'old-number', a.number, 1::real from parcel_alias a where a.county = here and a.key = wanted
      union
      select a.parcel, 'old-number', a.number, 1::real from parcel_alias a where a.county = here and a.loose_key = loose
      limit most;
    if found then return; end if;

    if not has_word then
      return query
        select * from (
          (select p.id, 'number-begins', p.number, 0.9::real from parcel p
            where p.county = here and p.key like wanted || '%' order by p.key limit most)
          union all
          (select a.parcel, 'old-number', a.number, 0.8::real from parcel_alias a
            where a.county = here and a.key like wanted || '%' order by a.key limit most)
        ) begins limit most;
      if found then return; end if;
    end if;
  end if;

  if length(street) < 3 then return; end if;
  streets := array(
    select s.key from street s
    where s.county = here and s.key like '%' || street || '%'
    order by s.key not like street || '%', length(s.key), s.key limit 20);
  if streets = '{}' then
    -- The nearest by trigrams, and those about as near; nothing where even the nearest shares too little.
    select array_agg(key order by distance, key), 1 - min(distance) into streets, likeness
    from (
      select *, min(distance) over () as least
      from (select s.key, s.key <-> street as distance from street s where s.county = here
            order by s.key <-> street limit 5) nearest
    ) about where distance <= least + 0.1;
    if streets is null or likeness < 0.3 then return; end if;
  end if;

  if house is not null then
    return query
      select p.id, 'address', p.address, likeness from parcel p
      where p.county = here and p.street_key = any (streets) and p.house_number = house
      order by array_position(streets, p.street_key), p.address, p.id limit most;
    if found then return; end if;
  end if;
  return query
    select p.id, 'street', p.address, (likeness / 2)::real from parcel p
    where p.county = here and p.street_key = any (streets)
    order by array_position(streets, p.street_key), abs(p.house_number - house), p.house_number, p.id limit most;
end
$function$

-- may call: owner=X/owner, asfound_service=X/owner

CREATE OR REPLACE FUNCTION public.service_figures()
 RETURNS TABLE(figure text, state text, value double precision)
 LANGUAGE sql
 STABLE SECURITY DEFINER
 SET search_path TO 'pg_catalog', 'public'
AS $function$
  select 'jobs', job.state, count(*) from job where job.state <> 'done' group by job.state
  union all
  select 'oldest job', 'waiting', coalesce(extract(epoch from now() - min(requested_at)), 0)
  from job where job.state = 'waiting'
  union all
  select 'documents', document.state, count(*) from document
  where document.state in ('received', 'reading', 'proposed', 'failed') group by document.state
  union all
  select 'deliveries', 'waiting', count(*) from delivery where delivery.state = 'waiting'
  union all
  select 'deliveries', 'dead', count(*) from delivery where delivery.state = 'dead'
  union all
  -- The ends of the chains by their key, not their entries one by one; '*' is the service's own.
  select 'audit entries', 'kept', coalesce(sum(ends.number), 0)
  from (select id from county union all select '*') chain
  cross join lateral (select max(number) as number from audit where audit.county = chain.id) ends
$function$

-- may call: owner=X/owner, asfound_service=X/owner

CREATE OR REPLACE FUNCTION public.spend_quota(of_what text, amount bigint, most bigint)
 RETURNS bigint
 LANGUAGE plpgsql
 SECURITY DEFINER
 SET search_path TO 'pg_catalog', 'public'
AS $function$
declare
  today constant date := (now() at time zone 'UTC')::date;
  total bigint;
begin
  insert into quota_use as u (organization, what, day, used) values (asking_organization(), of_what, today, amount)
    on conflict (organization, what, day) do update set used = u.used + excluded.used
    returning used into total;
  if total > most then
    update quota_use set used = used - amount
      where organization = asking_organization() and what = of_what and day = today;
    return null;
  end if;
  if total = amount then
    delete from quota_use where organization = asking_organization() and day < today - 30;
  end if;
  return total;
end
$function$

-- may call: owner=X/owner, asfound_service=X/owner

CREATE OR REPLACE FUNCTION public.standing_quota(of_what text)
 RETURNS bigint
 LANGUAGE sql
 STABLE SECURITY DEFINER
 SET search_path TO 'pg_catalog', 'public'
AS $function$
  select case of_what
    when 'drafts' then
      (select count(*) from findings where organization = asking_organization() and state = 'draft')
    when 'subscriptions' then
      (select count(*) from subscription where organization = asking_organization() and ended_at is null)
    when 'tokens' then
      (select count(*) from access_token t join account a on a.id = t.account
        where a.organization = asking_organization() and t.revoked_at is null
          and (t.expires_at is null or t.expires_at > now()))
  end
$function$

-- may call: owner=X/owner, asfound_service=X/owner

CREATE OR REPLACE FUNCTION public.status_of(of_county text, of_number text)
 RETURNS TABLE(id uuid, number text, address text, retired_on date, status jsonb, good_until date, derived_at timestamp with time zone)
 LANGUAGE sql
 STABLE SECURITY DEFINER
 SET search_path TO 'pg_catalog', 'public'
AS $function$
  select p.id, p.number, p.address, p.retired_on, s.body, s.good_until, s.derived_at
  from parcel p join parcel_status s on s.county = p.county and s.parcel = p.id
  where p.county = of_county and p.number = of_number
$function$

-- may call: owner=X/owner, asfound_service=X/owner

CREATE OR REPLACE FUNCTION public.street_key(address text)
 RETURNS text
 LANGUAGE sql
 IMMUTABLE PARALLEL SAFE STRICT
RETURN address_key(regexp_replace(address, '^\s*\d+[[:alpha:]]?\s+'::text, ''::text))

CREATE OR REPLACE FUNCTION public.tell_of_access()
 RETURNS trigger
 LANGUAGE plpgsql
AS $function$
begin
  perform pg_notify('asfound_access', '');
  return null;
end
$function$

CREATE OR REPLACE FUNCTION public.tell_of_status()
 RETURNS trigger
 LANGUAGE plpgsql
 SECURITY DEFINER
 SET search_path TO 'pg_catalog', 'public'
AS $function$
declare
  before constant text := case tg_op when 'UPDATE' then old.word end;
begin
  insert into delivery (county, id, subscription, parcel, body, state, next_at)
  select new.county, gen_random_uuid(), s.id, new.parcel,
    jsonb_build_object(
      'type', 'parcel.status-changed',
      'timestamp', to_char(new.derived_at at time zone 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS.MS"Z"'),
      'data', jsonb_build_object('county', new.county, 'parcel', p.number, 'before', before, 'status', new.body))::text,
    case when s.address is null then 'delivered' else 'waiting' end,
    new.derived_at
  from subscription s
  join parcel p on p.county = new.county and p.id = new.parcel
  where s.county = new.county and s.ended_at is null and (s.parcel = new.parcel or s.parcel is null);
  return null;
end
$function$

CREATE OR REPLACE FUNCTION public.upkeep_figures()
 RETURNS TABLE(figure text, state text, value double precision)
 LANGUAGE sql
 STABLE SECURITY DEFINER
 SET search_path TO 'pg_catalog', 'public'
AS $function$
  select 'originals', kinds.state, count(f.hash)
  from (values ('damaged'), ('missing')) as kinds (state)
  left join original_fault f on f.state = kinds.state group by kinds.state
  union all
  select 'originals looked through', 'ago', extract(epoch from now() - ended_at) from original_round
  union all
  select 'audit breaks', 'known', count(*) from audit_break
  union all
  select 'audit noting', 'ago', extract(epoch from now() - noted_at) from audit_noting
  union all
  select 'audit noting', 'faults', faults from audit_noting
$function$

-- may call: owner=X/owner, asfound_service=X/owner

CREATE OR REPLACE PROCEDURE public.watch_records(IN of_table regclass, IN key text, IN chain text DEFAULT 'county'::text, IN left_out text DEFAULT ''::text)
 LANGUAGE plpgsql
 SET search_path TO 'pg_catalog', 'public'
AS $procedure$
begin
  execute format(
    'create constraint trigger append_audit after insert or update or delete on %s deferrable initially deferred
       for each row execute function append_audit(%L, %L, %L)', of_table, chain, key, left_out);
  execute format(
    'create trigger never_emptied before truncate on %s for each statement execute function never_emptied()', of_table);
  perform restate_records(of_table);
end
$procedure$

-- may call: owner=X/owner

CREATE OR REPLACE FUNCTION public.watched_records(of_table regclass)
 RETURNS TABLE(county text, kind text, record text, hash text)
 LANGUAGE plpgsql
 STABLE
 SET search_path TO 'pg_catalog', 'public'
 SET "TimeZone" TO 'UTC'
AS $function$
declare
  how watched_table;
begin
  select * into strict how from watched_table where watched = of_table;
  return query execute format(
    'select coalesce(r ->> nullif(%L, ''''), ''*''), %L, concat_ws(''/'', %s), record_hash(r)
       from (select to_jsonb(t) - $1 from %s t) as now (r)',
    how.chain, how.kind, (select string_agg(format('r ->> %L', key), ', ') from unnest(how.key) as keys (key)),
    of_table) using how.left_out;
end
$function$

-- may call: owner=X/owner


-- Grants

insert, select on access_event to asfound_service

insert, select on account to asfound_service

insert, select on admission to asfound_service

select on audit to asfound_service

select on county to asfound_service

insert, select on decision to asfound_service

select, update on delivery to asfound_service

insert, select, update on discrepancy to asfound_service

insert, select on discrepancy_change to asfound_service

insert, select, update on document to asfound_service

delete, insert, select, update on document_page to asfound_service

insert, select on event to asfound_service

insert, select on filing_change to asfound_service

insert, select, update on findings to asfound_service

insert, select on findings_revision to asfound_service

insert, select on form_witness to asfound_service

insert, select on idempotency_key to asfound_service

insert, select, update on import to asfound_service

insert, select, update on import_mapping to asfound_service

delete, insert, select on import_rejection to asfound_service

delete, insert, select, update on invitation to asfound_service

insert, select, update on job to asfound_service

insert, select on letter to asfound_service

insert, select, update on letter_counter to asfound_service

insert, select on letter_withdrawal to asfound_service

insert, select on organization to asfound_service

delete, insert, select, update on outside_identity to asfound_service

insert, select, update on parcel to asfound_service

insert, select on parcel_alias to asfound_service

insert, select, update on parcel_status to asfound_service

insert, select, update on permit to asfound_service

insert, select on permit_revision to asfound_service

delete, insert, select on photo to asfound_service

insert, select on reading_tally to asfound_service

insert, select on reconciliation to asfound_service

delete, insert, select, update on recovery_code to asfound_service

insert, select, update on rerun to asfound_service

insert, select, update on rerun_parcel to asfound_service

insert, select on rule_book to asfound_service

delete, insert, select, update on second_step to asfound_service

delete, insert, select, update on session to asfound_service

delete, insert, select, update on sign_in to asfound_service

select on signing_key to asfound_service

insert, select, update on subscription to asfound_service

insert, select, update on system to asfound_service

insert, select on system_change to asfound_service

delete, insert, select on system_parcel to asfound_service

insert, select on taught_by to asfound_service

insert, select, update on taught_form to asfound_service

delete, insert, select, update on throttle to asfound_service

insert, select on transcription to asfound_service
