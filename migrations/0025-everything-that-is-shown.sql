-- What reaches a person is under the chain: the list of parcels, where each stands, what differs, the pages as they were
-- read, what subscribers are sent, how files were understood, and who was invited. Left out of a record is what the
-- database works out by itself, and how far something is.
drop trigger never_emptied on discrepancy_change;
call watch_records('parcel', 'id', left_out => 'key,loose_key,house_number,street_key');
call watch_records('parcel_alias', 'parcel,number', left_out => 'key,loose_key');
call watch_records('parcel_status', 'parcel', left_out => 'derived_at');
call watch_records('discrepancy', 'id', left_out => 'severity_rank');
call watch_records('discrepancy_change', 'id');
call watch_records('document_page', 'document,number');
call watch_records('delivery', 'id', left_out => 'state,tries,next_at,says,changed_at');
call watch_records('import', 'id',
  left_out => 'state,reason,job,rerun,rows_read,read_to_line,added,changed,unchanged,rejected,revision,ended_at');
call watch_records('import_mapping', 'kind,headings');
call watch_records('invitation', 'id', chain => '');
