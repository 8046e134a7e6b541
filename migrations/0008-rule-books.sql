-- The whole text of the rules that a reconciliation rests on, kept once for each state of them, so that it can be
-- redone years after the rules have moved on. Law, so the same for every county and open to read.
create table rule_book (
  hash text primary key check (hash ~ '^[0-9a-f]{64}$'),
  -- Canonical JSON (RFC 8785); as text, because the hash is of the text.
  packs text not null,
  first_used_at timestamptz not null default now()
);

alter table rule_book enable row level security;
create policy anyone_reads on rule_book for select to asfound_service using (true);
create policy service on rule_book for insert to asfound_service with check (asking_role() = 'service');
grant select, insert on rule_book to asfound_service;
