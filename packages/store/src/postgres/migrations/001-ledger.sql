-- Every table is keyed by operator first, so that it distributes by operator without a change. Names sort by bytes
-- (collate "C"): the same everywhere, and no index goes wrong when a system's collations are updated.

-- The epoch of the database, and the place it was last seen in.
create table meta (
  key text primary key,
  value text not null
);

-- The counter row of each aircraft. A push locks it before it reads it, until it commits.
create table aircraft (
  operator text collate "C" not null,
  aircraft text collate "C" not null,
  head bigint not null check (head >= 0),
  primary key (operator, aircraft)
);

-- The ledger. `text` is the event to the letter.
create table event (
  operator text collate "C" not null,
  aircraft text collate "C" not null,
  ledger_seq bigint not null check (ledger_seq > 0),
  id text collate "C" not null,
  device text collate "C" not null,
  device_seq bigint not null check (device_seq > 0),
  received_at_ms bigint not null,
  text text collate "C" not null,
  primary key (operator, aircraft, ledger_seq),
  unique (operator, aircraft, id),
  unique (operator, aircraft, device, device_seq)
);

-- What was set aside: kept and shown, never numbered. The same text is kept once.
create table quarantine (
  operator text collate "C" not null,
  aircraft text collate "C" not null,
  text_sha256 text collate "C" not null,
  received_at_ms bigint not null,
  reason text collate "C" not null,
  text text collate "C" not null,
  primary key (operator, aircraft, text_sha256)
);

create index quarantine_by_time on quarantine (operator, aircraft, received_at_ms);

create table photo (
  operator text collate "C" not null,
  sha256 text collate "C" not null,
  media_type text collate "C" not null,
  received_at_ms bigint not null,
  bytes bytea not null,
  primary key (operator, sha256)
);

-- Pictures are compressed already.
alter table photo alter column bytes set storage external;
