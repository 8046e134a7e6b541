-- What confirmed permits say of a form in force: for each of its fields that was read at its place, whether that gave what
-- a person confirmed. A field that they contradict is read no more. Worked out from transcriptions; never changed.
create table form_witness (
  county text not null,
  transcription uuid not null,
  permit integer not null,
  form uuid not null,
  ask text not null,
  -- Of which component; empty for the permit's own.
  kind text not null,
  agrees boolean not null,
  primary key (county, transcription, permit, form, ask, kind),
  foreign key (county, form) references taught_form (county, id),
  foreign key (county, transcription) references transcription (county, id)
);
create index form_witness_by_form on form_witness (county, form);

-- How many readings of one confidence were confirmed as they were read, and how many were not: a county's own measure of
-- what its papers' confidences are worth.
create table reading_tally (
  county text not null,
  transcription uuid not null,
  witness text not null check (witness in ('text', 'alike', 'alone')),
  step smallint not null,
  ask text not null,
  confirmed integer not null,
  changed integer not null,
  primary key (county, transcription, witness, step, ask),
  foreign key (county, transcription) references transcription (county, id)
);

alter table form_witness enable row level security;
alter table reading_tally enable row level security;
create policy reviewer on form_witness to asfound_service
  using (county = asking_county() and asking_role() in ('reviewer', 'service'));
create policy service on reading_tally to asfound_service
  using (county = asking_county() and asking_role() = 'service');
grant select, insert on form_witness to asfound_service;
grant select, insert on reading_tally to asfound_service;
