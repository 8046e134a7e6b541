-- Forms that a county's confirmed papers taught: by which printed words each is known, and where its values lie. Proposed
-- by the service and in force only once a person has taken it up; withdrawn, it is kept and reads nothing.
create table taught_form (
  county text not null references county (id),
  id uuid not null,
  name text not null check (name <> ''),
  state text not null check (state in ('proposed', 'in-force', 'withdrawn')),
  -- As it is exported: data and no more.
  taught jsonb not null,
  -- The paper whose pages its places are drawn on; null where it was brought from elsewhere.
  shown_on uuid,
  shown_pages integer[] not null default '{}',
  revision integer not null default 1,
  made_at timestamptz not null,
  changed_at timestamptz not null,
  -- Who took it up, withdrew it or brought it; null where the service proposed it.
  changed_by uuid references account (id),
  primary key (county, id),
  foreign key (county, shown_on) references document (county, id)
);
create index taught_form_by_state on taught_form (county, state, id);

-- Which confirmed permits a form was learned from. One permit teaches one form, whoever learns from it at the same time.
create table taught_by (
  county text not null,
  transcription uuid not null,
  permit integer not null,
  form uuid not null,
  document uuid not null,
  primary key (county, transcription, permit),
  foreign key (county, form) references taught_form (county, id),
  foreign key (county, transcription) references transcription (county, id),
  foreign key (county, document) references document (county, id)
);
create index taught_by_form on taught_by (county, form);

alter table taught_form enable row level security;
alter table taught_by enable row level security;

create policy reviewer on taught_form to asfound_service
  using (county = asking_county() and asking_role() in ('reviewer', 'service'));
create policy reviewer on taught_by to asfound_service
  using (county = asking_county() and asking_role() in ('reviewer', 'service'));

grant select, insert, update on taught_form to asfound_service;
grant select, insert on taught_by to asfound_service;
