-- One row per key: the epoch of the database, and how many pushes it has committed.
create table meta (
  key text primary key,
  value text not null
) strict, without rowid;

-- The counter row of each aircraft. A push holds the write lock from before it reads this row until it commits.
create table aircraft (
  operator text not null,
  aircraft text not null,
  head integer not null check (head >= 0),
  primary key (operator, aircraft)
) strict, without rowid;

-- The ledger. `text` is the event to the letter.
create table event (
  operator text not null,
  aircraft text not null,
  ledger_seq integer not null check (ledger_seq > 0),
  id text not null,
  device text not null,
  device_seq integer not null check (device_seq > 0),
  received_at_ms integer not null,
  text text not null,
  primary key (operator, aircraft, ledger_seq),
  unique (operator, aircraft, id),
  unique (operator, aircraft, device, device_seq)
) strict;

-- What was set aside: kept and shown, never numbered. The same text is kept once.
create table quarantine (
  operator text not null,
  aircraft text not null,
  text_sha256 text not null,
  received_at_ms integer not null,
  reason text not null,
  text text not null,
  primary key (operator, aircraft, text_sha256)
) strict;

create index quarantine_by_time on quarantine (operator, aircraft, received_at_ms);

create table photo (
  operator text not null,
  sha256 text not null,
  media_type text not null,
  received_at_ms integer not null,
  bytes blob not null,
  primary key (operator, sha256)
) strict;
