-- One paper on two parcels is found by its number, however it is written: 74-118, 74 118, #74-118.
create index permit_by_number_key on permit (county, regexp_replace(upper(number), '[^A-Z0-9]', '', 'g'));
