-- Tables

table access_token (
  id uuid not null,
  account uuid not null,
  name text not null,
  hash bytea not null,
  counties text[] not null,
  created_at timestamp with time zone not null default now(),
  expires_at timestamp with time zone,
  revoked_at timestamp with time zone,
  last_used_at timestamp with time zone
) with row level security

table account (
  id uuid not null,
  organisation uuid not null,
  label text not null,
  role text not null,
  suspended_at timestamp with time zone,
  created_at timestamp with time zone not null default now()
) with row level security

table county (
  id text not null,
  name text not null,
  rule_pack text not null,
  parcel_format jsonb not null,
  revision integer not null default 1,
  created_at timestamp with time zone not null default now()
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
  decided_at timestamp with time zone not null default now()
) with row level security

table discrepancy (
  county text not null,
  id uuid not null,
  parcel uuid not null,
  kind text not null,
  subject text not null,
  organisation uuid,
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
  decision uuid,
  raised_at timestamp with time zone not null,
  changed_at timestamp with time zone not null,
  revision integer not null default 1
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
  organisation uuid,
  role text not null,
  before_hash text,
  after_hash text,
  body jsonb not null default '{}'::jsonb,
  happened_at timestamp with time zone not null default now()
) with row level security

table findings (
  county text not null,
  id uuid not null,
  parcel uuid not null,
  organisation uuid not null,
  state text not null,
  visited_on date,
  record jsonb not null,
  revision integer not null default 1,
  amends uuid,
  created_by uuid not null,
  created_at timestamp with time zone not null default now(),
  changed_at timestamp with time zone not null default now(),
  submitted_by uuid,
  submitted_at timestamp with time zone
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

table job (
  county text not null,
  id uuid not null,
  kind text not null,
  organisation uuid,
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
  organisation uuid not null,
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

table organisation (
  id uuid not null,
  kind text not null,
  name text not null,
  created_at timestamp with time zone not null default now()
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
  issued_on date,
  approved_on date,
  record jsonb not null,
  revision integer not null default 1,
  created_at timestamp with time zone not null default now(),
  changed_at timestamp with time zone not null default now()
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

table reconciliation (
  county text not null,
  id uuid not null,
  parcel uuid not null,
  findings uuid,
  organisation uuid,
  as_built_on date not null,
  inputs jsonb not null,
  input_hash text not null,
  engine text not null,
  result jsonb not null,
  result_hash text not null,
  occasion text not null,
  made_at timestamp with time zone not null default now()
) with row level security

table rule_book (
  hash text not null,
  packs text not null,
  first_used_at timestamp with time zone not null default now()
) with row level security

table session (
  hash bytea not null,
  account uuid not null,
  counties text[] not null,
  begun_at timestamp with time zone not null default now(),
  last_used_at timestamp with time zone not null default now(),
  ends_at timestamp with time zone not null
) with row level security

table sign_in (
  account uuid not null,
  name text not null,
  password_hash text not null,
  counties text[] not null,
  misses integer not null default 0,
  wait_until timestamp with time zone,
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

table transcription (
  county text not null,
  id uuid not null,
  document uuid not null,
  body jsonb not null,
  confirmed_by uuid not null,
  confirmed_at timestamp with time zone not null default now()
) with row level security


-- Constraints

access_token: access_token_account_fkey FOREIGN KEY (account) REFERENCES account(id)

access_token: access_token_hash_check CHECK ((octet_length(hash) = 32))

access_token: access_token_hash_key UNIQUE (hash)

access_token: access_token_pkey PRIMARY KEY (id)

account: account_organisation_fkey FOREIGN KEY (organisation) REFERENCES organisation(id)

account: account_pkey PRIMARY KEY (id)

account: account_role_check CHECK ((role = ANY (ARRAY['firm'::text, 'reviewer'::text, 'agent'::text])))

county: county_id_check CHECK ((id ~ '^[a-z][a-z0-9-]{1,39}$'::text))

county: county_pkey PRIMARY KEY (id)

decision: decision_county_discrepancy_fkey FOREIGN KEY (county, discrepancy) REFERENCES discrepancy(county, id)

decision: decision_county_supersedes_fkey FOREIGN KEY (county, supersedes) REFERENCES decision(county, id)

decision: decision_county_supersedes_key UNIQUE (county, supersedes)

decision: decision_decided_by_fkey FOREIGN KEY (decided_by) REFERENCES account(id)

decision: decision_pkey PRIMARY KEY (county, id)

decision: decision_reason_check CHECK ((btrim(reason) <> ''::text))

discrepancy: discrepancy_county_parcel_fkey FOREIGN KEY (county, parcel) REFERENCES parcel(county, id)

discrepancy: discrepancy_county_parcel_kind_subject_key UNIQUE (county, parcel, kind, subject)

discrepancy: discrepancy_county_reconciliation_fkey FOREIGN KEY (county, reconciliation) REFERENCES reconciliation(county, id)

discrepancy: discrepancy_organisation_fkey FOREIGN KEY (organisation) REFERENCES organisation(id)

discrepancy: discrepancy_pkey PRIMARY KEY (county, id)

discrepancy: discrepancy_severity_check CHECK ((severity = ANY (ARRAY['action'::text, 'review'::text, 'note'::text])))

discrepancy: discrepancy_state_check CHECK ((state = ANY (ARRAY['open'::text, 'decided'::text, 'ground-moved'::text, 'vanished'::text])))

discrepancy_change: discrepancy_change_change_check CHECK ((change = ANY (ARRAY['appeared'::text, 'changed'::text, 'vanished'::text, 'returned'::text])))

discrepancy_change: discrepancy_change_county_discrepancy_fkey FOREIGN KEY (county, discrepancy) REFERENCES discrepancy(county, id)

discrepancy_change: discrepancy_change_county_reconciliation_fkey FOREIGN KEY (county, reconciliation) REFERENCES reconciliation(county, id)

discrepancy_change: discrepancy_change_pkey PRIMARY KEY (county, id)

document: document_content_hash_check CHECK ((content_hash ~ '^[0-9a-f]{64}$'::text))

document: document_county_parcel_fkey FOREIGN KEY (county, parcel) REFERENCES parcel(county, id)

document: document_pkey PRIMARY KEY (county, id)

document: document_received_by_fkey FOREIGN KEY (received_by) REFERENCES account(id)

document: document_state_check CHECK ((state = ANY (ARRAY['received'::text, 'reading'::text, 'proposed'::text, 'confirmed'::text, 'set-aside'::text, 'failed'::text])))

document_page: document_page_county_document_fkey FOREIGN KEY (county, document) REFERENCES document(county, id)

document_page: document_page_number_check CHECK ((number >= 1))

document_page: document_page_pkey PRIMARY KEY (county, document, number)

event: event_account_fkey FOREIGN KEY (account) REFERENCES account(id)

event: event_organisation_fkey FOREIGN KEY (organisation) REFERENCES organisation(id)

event: event_pkey PRIMARY KEY (county, id)

findings: findings_check CHECK (((state = 'submitted'::text) = ((submitted_at IS NOT NULL) AND (submitted_by IS NOT NULL))))

findings: findings_county_amends_fkey FOREIGN KEY (county, amends) REFERENCES findings(county, id)

findings: findings_county_amends_key UNIQUE (county, amends)

findings: findings_county_parcel_fkey FOREIGN KEY (county, parcel) REFERENCES parcel(county, id)

findings: findings_created_by_fkey FOREIGN KEY (created_by) REFERENCES account(id)

findings: findings_organisation_fkey FOREIGN KEY (organisation) REFERENCES organisation(id)

findings: findings_pkey PRIMARY KEY (county, id)

findings: findings_state_check CHECK ((state = ANY (ARRAY['draft'::text, 'submitted'::text])))

findings: findings_submitted_by_fkey FOREIGN KEY (submitted_by) REFERENCES account(id)

findings_revision: findings_revision_county_findings_fkey FOREIGN KEY (county, findings) REFERENCES findings(county, id)

findings_revision: findings_revision_pkey PRIMARY KEY (county, findings, revision)

findings_revision: findings_revision_recorded_by_fkey FOREIGN KEY (recorded_by) REFERENCES account(id)

idempotency_key: idempotency_key_account_fkey FOREIGN KEY (account) REFERENCES account(id)

idempotency_key: idempotency_key_pkey PRIMARY KEY (county, account, key)

job: job_organisation_fkey FOREIGN KEY (organisation) REFERENCES organisation(id)

job: job_pkey PRIMARY KEY (county, id)

job: job_requested_by_fkey FOREIGN KEY (requested_by) REFERENCES account(id)

job: job_state_check CHECK ((state = ANY (ARRAY['waiting'::text, 'running'::text, 'done'::text, 'failed'::text])))

letter: letter_code_check CHECK ((code ~ '^[0-9A-Z]{4}(-[0-9A-Z]{4}){3}$'::text))

letter: letter_county_fkey FOREIGN KEY (county) REFERENCES county(id)

letter: letter_county_number_key UNIQUE (county, number)

letter: letter_county_parcel_fkey FOREIGN KEY (county, parcel) REFERENCES parcel(county, id)

letter: letter_county_reconciliation_fkey FOREIGN KEY (county, reconciliation) REFERENCES reconciliation(county, id)

letter: letter_issued_by_fkey FOREIGN KEY (issued_by) REFERENCES account(id)

letter: letter_kind_check CHECK ((kind = ANY (ARRAY['status'::text, 'report'::text, 'brief'::text])))

letter: letter_organisation_fkey FOREIGN KEY (organisation) REFERENCES organisation(id)

letter: letter_pdf_sha256_check CHECK ((pdf_sha256 ~ '^[0-9a-f]{64}$'::text))

letter: letter_pkey PRIMARY KEY (county, id)

letter: letter_signing_key_fkey FOREIGN KEY (signing_key) REFERENCES signing_key(kid)

letter_counter: letter_counter_county_fkey FOREIGN KEY (county) REFERENCES county(id)

letter_counter: letter_counter_last_check CHECK ((last >= 1))

letter_counter: letter_counter_pkey PRIMARY KEY (county, year)

letter_withdrawal: letter_withdrawal_county_letter_fkey FOREIGN KEY (county, letter) REFERENCES letter(county, id)

letter_withdrawal: letter_withdrawal_pkey PRIMARY KEY (county, letter)

letter_withdrawal: letter_withdrawal_reason_check CHECK ((btrim(reason) <> ''::text))

letter_withdrawal: letter_withdrawal_withdrawn_by_fkey FOREIGN KEY (withdrawn_by) REFERENCES account(id)

migration: migration_pkey PRIMARY KEY (number)

organisation: organisation_kind_check CHECK ((kind = ANY (ARRAY['county'::text, 'firm'::text, 'agent'::text])))

organisation: organisation_pkey PRIMARY KEY (id)

parcel: parcel_county_fkey FOREIGN KEY (county) REFERENCES county(id)

parcel: parcel_county_number_key UNIQUE (county, number)

parcel: parcel_pkey PRIMARY KEY (county, id)

parcel_alias: parcel_alias_county_parcel_fkey FOREIGN KEY (county, parcel) REFERENCES parcel(county, id)

parcel_alias: parcel_alias_kind_check CHECK ((kind = ANY (ARRAY['renumbered'::text, 'split'::text, 'merged'::text])))

parcel_alias: parcel_alias_pkey PRIMARY KEY (county, parcel, number)

parcel_status: parcel_status_county_parcel_fkey FOREIGN KEY (county, parcel) REFERENCES parcel(county, id)

parcel_status: parcel_status_pkey PRIMARY KEY (county, parcel)

permit: permit_county_parcel_fkey FOREIGN KEY (county, parcel) REFERENCES parcel(county, id)

permit: permit_kind_check CHECK ((kind = ANY (ARRAY['new'::text, 'repair'::text, 'alteration'::text, 'abandonment'::text])))

permit: permit_pkey PRIMARY KEY (county, id)

permit_revision: permit_revision_county_permit_fkey FOREIGN KEY (county, permit) REFERENCES permit(county, id)

permit_revision: permit_revision_county_transcription_fkey FOREIGN KEY (county, transcription) REFERENCES transcription(county, id)

permit_revision: permit_revision_pkey PRIMARY KEY (county, permit, revision)

permit_revision: permit_revision_recorded_by_fkey FOREIGN KEY (recorded_by) REFERENCES account(id)

reconciliation: reconciliation_county_findings_fkey FOREIGN KEY (county, findings) REFERENCES findings(county, id)

reconciliation: reconciliation_county_parcel_fkey FOREIGN KEY (county, parcel) REFERENCES parcel(county, id)

reconciliation: reconciliation_organisation_fkey FOREIGN KEY (organisation) REFERENCES organisation(id)

reconciliation: reconciliation_pkey PRIMARY KEY (county, id)

rule_book: rule_book_hash_check CHECK ((hash ~ '^[0-9a-f]{64}$'::text))

rule_book: rule_book_pkey PRIMARY KEY (hash)

session: session_account_fkey FOREIGN KEY (account) REFERENCES account(id)

session: session_hash_check CHECK ((octet_length(hash) = 32))

session: session_pkey PRIMARY KEY (hash)

sign_in: sign_in_account_fkey FOREIGN KEY (account) REFERENCES account(id)

sign_in: sign_in_name_check CHECK (((name = lower(name)) AND (name ~ '^[a-z0-9][a-z0-9._@+-]{2,79}$'::text)))

sign_in: sign_in_name_key UNIQUE (name)

sign_in: sign_in_password_hash_check CHECK ((password_hash ~~ '$argon2id$%'::text))

sign_in: sign_in_pkey PRIMARY KEY (account)

signing_key: signing_key_kid_check CHECK ((kid ~ '^[A-Za-z0-9_-]{43}$'::text))

signing_key: signing_key_pkey PRIMARY KEY (kid)

street: street_county_fkey FOREIGN KEY (county) REFERENCES county(id)

street: street_pkey PRIMARY KEY (county, key)

transcription: transcription_confirmed_by_fkey FOREIGN KEY (confirmed_by) REFERENCES account(id)

transcription: transcription_county_document_fkey FOREIGN KEY (county, document) REFERENCES document(county, id)

transcription: transcription_pkey PRIMARY KEY (county, id)


-- Indexes

CREATE INDEX access_token_account ON public.access_token USING btree (account)

CREATE UNIQUE INDEX access_token_hash_key ON public.access_token USING btree (hash)

CREATE UNIQUE INDEX access_token_pkey ON public.access_token USING btree (id)

CREATE INDEX account_organisation ON public.account USING btree (organisation)

CREATE UNIQUE INDEX account_pkey ON public.account USING btree (id)

CREATE UNIQUE INDEX county_pkey ON public.county USING btree (id)

CREATE INDEX decision_by_discrepancy ON public.decision USING btree (county, discrepancy, id)

CREATE UNIQUE INDEX decision_county_supersedes_key ON public.decision USING btree (county, supersedes)

CREATE UNIQUE INDEX decision_first ON public.decision USING btree (county, discrepancy) WHERE (supersedes IS NULL)

CREATE UNIQUE INDEX decision_pkey ON public.decision USING btree (county, id)

CREATE UNIQUE INDEX discrepancy_county_parcel_kind_subject_key ON public.discrepancy USING btree (county, parcel, kind, subject)

CREATE UNIQUE INDEX discrepancy_pkey ON public.discrepancy USING btree (county, id)

CREATE INDEX discrepancy_queue ON public.discrepancy USING btree (county, state, severity_rank, raised_at, id)

CREATE INDEX discrepancy_queue_of_firm ON public.discrepancy USING btree (county, organisation, severity_rank, raised_at, id)

CREATE INDEX discrepancy_queue_of_kind ON public.discrepancy USING btree (county, kind, state, severity_rank, raised_at, id)

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

CREATE INDEX findings_by_organisation ON public.findings USING btree (county, organisation, id)

CREATE INDEX findings_by_parcel ON public.findings USING btree (county, parcel, id)

CREATE UNIQUE INDEX findings_county_amends_key ON public.findings USING btree (county, amends)

CREATE UNIQUE INDEX findings_pkey ON public.findings USING btree (county, id)

CREATE UNIQUE INDEX findings_revision_pkey ON public.findings_revision USING btree (county, findings, revision)

CREATE INDEX idempotency_key_by_age ON public.idempotency_key USING btree (answered_at)

CREATE UNIQUE INDEX idempotency_key_pkey ON public.idempotency_key USING btree (county, account, key)

CREATE INDEX job_by_age ON public.job USING btree (county, requested_at, id)

CREATE UNIQUE INDEX job_pkey ON public.job USING btree (county, id)

CREATE UNIQUE INDEX letter_by_code ON public.letter USING btree (code)

CREATE INDEX letter_by_parcel ON public.letter USING btree (county, parcel, kind, issued_at DESC, id DESC)

CREATE UNIQUE INDEX letter_county_number_key ON public.letter USING btree (county, number)

CREATE UNIQUE INDEX letter_pkey ON public.letter USING btree (county, id)

CREATE UNIQUE INDEX letter_counter_pkey ON public.letter_counter USING btree (county, year)

CREATE UNIQUE INDEX letter_withdrawal_pkey ON public.letter_withdrawal USING btree (county, letter)

CREATE UNIQUE INDEX migration_pkey ON public.migration USING btree (number)

CREATE UNIQUE INDEX organisation_pkey ON public.organisation USING btree (id)

CREATE INDEX parcel_by_address ON public.parcel USING btree (county, street_key, house_number)

CREATE INDEX parcel_by_key ON public.parcel USING btree (county, key text_pattern_ops)

CREATE INDEX parcel_by_loose_key ON public.parcel USING btree (county, loose_key text_pattern_ops)

CREATE UNIQUE INDEX parcel_county_number_key ON public.parcel USING btree (county, number)

CREATE UNIQUE INDEX parcel_pkey ON public.parcel USING btree (county, id)

CREATE INDEX parcel_alias_by_key ON public.parcel_alias USING btree (county, key text_pattern_ops)

CREATE INDEX parcel_alias_by_loose_key ON public.parcel_alias USING btree (county, loose_key text_pattern_ops)

CREATE UNIQUE INDEX parcel_alias_pkey ON public.parcel_alias USING btree (county, parcel, number)

CREATE UNIQUE INDEX parcel_status_pkey ON public.parcel_status USING btree (county, parcel)

CREATE INDEX permit_by_number ON public.permit USING btree (county, number)

CREATE INDEX permit_by_parcel ON public.permit USING btree (county, parcel, id)

CREATE UNIQUE INDEX permit_pkey ON public.permit USING btree (county, id)

CREATE UNIQUE INDEX permit_revision_pkey ON public.permit_revision USING btree (county, permit, revision)

CREATE INDEX reconciliation_by_findings ON public.reconciliation USING btree (county, findings)

CREATE INDEX reconciliation_by_parcel ON public.reconciliation USING btree (county, parcel, id DESC)

CREATE UNIQUE INDEX reconciliation_pkey ON public.reconciliation USING btree (county, id)

CREATE UNIQUE INDEX rule_book_pkey ON public.rule_book USING btree (hash)

CREATE INDEX session_by_account ON public.session USING btree (account)

CREATE UNIQUE INDEX session_pkey ON public.session USING btree (hash)

CREATE UNIQUE INDEX sign_in_name_key ON public.sign_in USING btree (name)

CREATE UNIQUE INDEX sign_in_pkey ON public.sign_in USING btree (account)

CREATE UNIQUE INDEX signing_key_pkey ON public.signing_key USING btree (kid)

CREATE INDEX street_by_likeness ON public.street USING gist (county, key gist_trgm_ops (siglen='64'))

CREATE UNIQUE INDEX street_pkey ON public.street USING btree (county, key)

CREATE INDEX transcription_by_document ON public.transcription USING btree (county, document, id)

CREATE UNIQUE INDEX transcription_pkey ON public.transcription USING btree (county, id)


-- Policies

account: own_or_reviewer for SELECT to {asfound_service} using ((organisation = asking_organisation()) OR (asking_role() = ANY (ARRAY['reviewer'::text, 'service'::text])))

county: anyone_reads for SELECT to {asfound_service} using true

decision: reviewer for INSERT to {asfound_service} with check ((county = asking_county()) AND (asking_role() = 'reviewer'::text))

decision: with_discrepancy for SELECT to {asfound_service} using ((county = asking_county()) AND (EXISTS ( SELECT
   FROM discrepancy d
  WHERE ((d.county = decision.county) AND (d.id = decision.discrepancy)))))

discrepancy: own_reads for SELECT to {asfound_service} using ((county = asking_county()) AND (asking_role() = 'firm'::text) AND (organisation = asking_organisation()))

discrepancy: reviewer for ALL to {asfound_service} using ((county = asking_county()) AND (asking_role() = ANY (ARRAY['reviewer'::text, 'service'::text])))

discrepancy_change: service for ALL to {asfound_service} using ((county = asking_county()) AND (asking_role() = 'service'::text))

discrepancy_change: with_discrepancy for SELECT to {asfound_service} using ((county = asking_county()) AND (EXISTS ( SELECT
   FROM discrepancy d
  WHERE ((d.county = discrepancy_change.county) AND (d.id = discrepancy_change.discrepancy)))))

document: reviewer for ALL to {asfound_service} using ((county = asking_county()) AND (asking_role() = ANY (ARRAY['reviewer'::text, 'service'::text])))

document_page: reviewer for ALL to {asfound_service} using ((county = asking_county()) AND (asking_role() = ANY (ARRAY['reviewer'::text, 'service'::text])))

event: added for INSERT to {asfound_service} with check (county = asking_county())

event: reviewer_reads for SELECT to {asfound_service} using ((county = asking_county()) AND (asking_role() = ANY (ARRAY['reviewer'::text, 'service'::text])))

findings: own for ALL to {asfound_service} using ((county = asking_county()) AND (asking_role() = 'firm'::text) AND (organisation = asking_organisation()))

findings: reviewer_reads for SELECT to {asfound_service} using ((county = asking_county()) AND (asking_role() = 'reviewer'::text) AND (state = 'submitted'::text))

findings: service for ALL to {asfound_service} using ((county = asking_county()) AND (asking_role() = 'service'::text))

findings_revision: with_findings for ALL to {asfound_service} using ((county = asking_county()) AND (EXISTS ( SELECT
   FROM findings f
  WHERE ((f.county = findings_revision.county) AND (f.id = findings_revision.findings)))))

idempotency_key: own for ALL to {asfound_service} using ((county = asking_county()) AND (account = asking_account()))

job: own for ALL to {asfound_service} using ((county = asking_county()) AND (asking_role() = ANY (ARRAY['firm'::text, 'agent'::text])) AND (organisation = asking_organisation()))

job: reviewer for ALL to {asfound_service} using ((county = asking_county()) AND (asking_role() = ANY (ARRAY['reviewer'::text, 'service'::text])))

letter: own for ALL to {asfound_service} using ((county = asking_county()) AND (asking_role() = ANY (ARRAY['firm'::text, 'agent'::text])) AND (organisation = asking_organisation()))

letter: reviewer for ALL to {asfound_service} using ((county = asking_county()) AND (asking_role() = ANY (ARRAY['reviewer'::text, 'service'::text])))

letter_counter: service for ALL to {asfound_service} using ((county = asking_county()) AND (asking_role() = 'service'::text))

letter_withdrawal: reviewer for INSERT to {asfound_service} with check ((county = asking_county()) AND (asking_role() = 'reviewer'::text))

letter_withdrawal: with_letter for SELECT to {asfound_service} using ((county = asking_county()) AND (EXISTS ( SELECT
   FROM letter l
  WHERE ((l.county = letter_withdrawal.county) AND (l.id = letter_withdrawal.letter)))))

organisation: own_or_reviewer for SELECT to {asfound_service} using ((id = asking_organisation()) OR (asking_role() = ANY (ARRAY['reviewer'::text, 'service'::text])))

parcel: of_the_county for ALL to {asfound_service} using (county = asking_county())

parcel_alias: of_the_county for ALL to {asfound_service} using (county = asking_county())

parcel_status: derived for ALL to {asfound_service} using ((county = asking_county()) AND (asking_role() = 'service'::text))

parcel_status: of_the_county for SELECT to {asfound_service} using (county = asking_county())

permit: firm_reads for SELECT to {asfound_service} using ((county = asking_county()) AND (asking_role() = 'firm'::text))

permit: reviewer for ALL to {asfound_service} using ((county = asking_county()) AND (asking_role() = ANY (ARRAY['reviewer'::text, 'service'::text])))

permit_revision: firm_reads for SELECT to {asfound_service} using ((county = asking_county()) AND (asking_role() = 'firm'::text))

permit_revision: reviewer for ALL to {asfound_service} using ((county = asking_county()) AND (asking_role() = ANY (ARRAY['reviewer'::text, 'service'::text])))

reconciliation: reviewer_reads for SELECT to {asfound_service} using ((county = asking_county()) AND ((asking_role() = 'reviewer'::text) OR ((asking_role() = 'firm'::text) AND (organisation = asking_organisation()))))

reconciliation: service for ALL to {asfound_service} using ((county = asking_county()) AND (asking_role() = 'service'::text))

rule_book: anyone_reads for SELECT to {asfound_service} using true

rule_book: service for INSERT to {asfound_service} with check (asking_role() = 'service'::text)

signing_key: anyone_reads for SELECT to {asfound_service} using true

transcription: reviewer for ALL to {asfound_service} using ((county = asking_county()) AND (asking_role() = ANY (ARRAY['reviewer'::text, 'service'::text])))


-- Triggers

CREATE TRIGGER keep_submitted BEFORE UPDATE ON public.findings FOR EACH ROW WHEN ((old.state = 'submitted'::text)) EXECUTE FUNCTION keep_submitted_findings()

CREATE TRIGGER note_streets_of_changed AFTER UPDATE ON public.parcel REFERENCING NEW TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION note_streets()

CREATE TRIGGER note_streets_of_new AFTER INSERT ON public.parcel REFERENCING NEW TABLE AS changed FOR EACH STATEMENT EXECUTE FUNCTION note_streets()


-- Functions

CREATE OR REPLACE FUNCTION public.address_key(address text)
 RETURNS text
 LANGUAGE sql
 IMMUTABLE PARALLEL SAFE STRICT
RETURN btrim(replace(replace(replace(replace(replace(replace(replace(replace(replace(replace(replace(replace(replace(((' '::text || translate(lower(address), '.,;:#-/_%\''"()'::text, '          '::text)) || ' '::text), '  '::text, ' '::text), '  '::text, ' '::text), ' rd '::text, ' road '::text), ' st '::text, ' street '::text), ' str '::text, ' street '::text), ' ln '::text, ' lane '::text), ' la '::text, ' lane '::text), ' ave '::text, ' avenue '::text), ' av '::text, ' avenue '::text), ' dr '::text, ' drive '::text), ' ct '::text, ' court '::text), ' hwy '::text, ' highway '::text), ' rte '::text, ' route '::text))

CREATE OR REPLACE FUNCTION public.asking_account()
 RETURNS uuid
 LANGUAGE sql
 STABLE PARALLEL SAFE
RETURN (NULLIF(current_setting('asfound.account'::text, true), ''::text))::uuid

CREATE OR REPLACE FUNCTION public.asking_county()
 RETURNS text
 LANGUAGE sql
 STABLE PARALLEL SAFE
RETURN NULLIF(current_setting('asfound.county'::text, true), ''::text)

CREATE OR REPLACE FUNCTION public.asking_organisation()
 RETURNS uuid
 LANGUAGE sql
 STABLE PARALLEL SAFE
RETURN (NULLIF(current_setting('asfound.organisation'::text, true), ''::text))::uuid

CREATE OR REPLACE FUNCTION public.asking_role()
 RETURNS text
 LANGUAGE sql
 STABLE PARALLEL SAFE
RETURN NULLIF(current_setting('asfound.role'::text, true), ''::text)

CREATE OR REPLACE FUNCTION public.begin_session(for_account uuid, session_hash bytea, until timestamp with time zone)
 RETURNS void
 LANGUAGE sql
 SECURITY DEFINER
 SET search_path TO 'pg_catalog', 'public'
AS $function$
  update sign_in set misses = 0, wait_until = null where account = for_account;
  delete from session where ends_at < now() - interval '30 days';
  insert into session (hash, account, counties, ends_at)
    select session_hash, s.account, s.counties, until from sign_in s where s.account = for_account
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
 RETURNS TABLE(token uuid, account uuid, organisation uuid, role text, counties text[], expires_at timestamp with time zone)
 LANGUAGE plpgsql
 SECURITY DEFINER
 SET search_path TO 'pg_catalog', 'public'
AS $function$
#variable_conflict use_column
begin
  return query
    select t.id, a.id, a.organisation, a.role, t.counties, t.expires_at
    from access_token t join account a on a.id = t.account
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
 RETURNS TABLE(account uuid, organisation uuid, role text, counties text[], ends_at timestamp with time zone)
 LANGUAGE plpgsql
 SECURITY DEFINER
 SET search_path TO 'pg_catalog', 'public'
AS $function$
#variable_conflict use_column
begin
  return query
    select a.id, a.organisation, a.role, s.counties, s.ends_at
    from session s join account a on a.id = s.account
    where s.hash = session_hash and a.suspended_at is null and s.ends_at > now()
      and s.last_used_at > now() - interval '4 hours';
  if found then
    update session set last_used_at = now()
      where hash = session_hash and last_used_at < now() - interval '1 minute';
  end if;
end
$function$

-- may call: owner=X/owner, asfound_service=X/owner

CREATE OR REPLACE FUNCTION public.find_sign_in(asked text)
 RETURNS TABLE(account uuid, password_hash text, wait_until timestamp with time zone)
 LANGUAGE sql
 STABLE SECURITY DEFINER
 SET search_path TO 'pg_catalog', 'public'
AS $function$
  select s.account, s.password_hash, s.wait_until
  from sign_in s join account a on a.id = s.account
  where s.name = asked and a.suspended_at is null
$function$

-- may call: owner=X/owner, asfound_service=X/owner

CREATE OR REPLACE FUNCTION public.house_number(address text)
 RETURNS integer
 LANGUAGE sql
 IMMUTABLE PARALLEL SAFE STRICT
RETURN ("substring"(address, '^\s*(\d{1,7})[[:alpha:]]?\s'::text))::integer

CREATE OR REPLACE FUNCTION public.keep_submitted_findings()
 RETURNS trigger
 LANGUAGE plpgsql
AS $function$
begin
  raise exception 'submitted findings are never changed; amend them by new findings' using errcode = 'restrict_violation';
end
$function$

CREATE OR REPLACE FUNCTION public.letter_with_code(asked text)
 RETURNS TABLE(county text, letter uuid)
 LANGUAGE sql
 STABLE SECURITY DEFINER
 SET search_path TO 'pg_catalog', 'public'
AS $function$
  select l.county, l.id from letter l where l.code = asked
$function$

-- may call: owner=X/owner, asfound_service=X/owner

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

CREATE OR REPLACE FUNCTION public.note_wrong_password(asked text)
 RETURNS void
 LANGUAGE sql
 SECURITY DEFINER
 SET search_path TO 'pg_catalog', 'public'
AS $function$
  update sign_in
  set misses = misses + 1,
    wait_until = case when misses < 5 then null
      else now() + least(interval '30 seconds' * power(2, least(misses - 5, 10)), interval '15 minutes') end
  where name = asked
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

CREATE OR REPLACE FUNCTION public.street_key(address text)
 RETURNS text
 LANGUAGE sql
 IMMUTABLE PARALLEL SAFE STRICT
RETURN address_key(regexp_replace(address, '^\s*\d+[[:alpha:]]?\s+'::text, ''::text))


-- Grants

select on account to asfound_service

select on county to asfound_service

insert, select on decision to asfound_service

insert, select, update on discrepancy to asfound_service

insert, select on discrepancy_change to asfound_service

insert, select, update on document to asfound_service

delete, insert, select, update on document_page to asfound_service

insert, select on event to asfound_service

insert, select, update on findings to asfound_service

insert, select on findings_revision to asfound_service

insert, select on idempotency_key to asfound_service

insert, select, update on job to asfound_service

insert, select on letter to asfound_service

insert, select, update on letter_counter to asfound_service

insert, select on letter_withdrawal to asfound_service

select on organisation to asfound_service

insert, select, update on parcel to asfound_service

insert, select on parcel_alias to asfound_service

insert, select, update on parcel_status to asfound_service

insert, select, update on permit to asfound_service

insert, select on permit_revision to asfound_service

insert, select on reconciliation to asfound_service

insert, select on rule_book to asfound_service

select on signing_key to asfound_service

insert, select on transcription to asfound_service
