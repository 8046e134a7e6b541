-- Made with the photo, by whatever process could bear to open it: nobody opens it again to show or print it.
alter table photo add column small_hash text check (small_hash ~ '^[0-9a-f]{64}$');
alter table photo add column printed_hash text check (printed_hash ~ '^[0-9a-f]{64}$');
