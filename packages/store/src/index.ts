export { openStore, type StoreOptions } from "./open-store.ts";
export { backUpSqlite } from "./sqlite/back-up-sqlite.ts";
export { openSqlite, type SqliteOptions } from "./sqlite/open-sqlite.ts";
export type {
  AircraftHead,
  Appended,
  Arrival,
  KeptEvent,
  OperatorStore,
  Outcome,
  Page,
  PageAsked,
  Photo,
  QuarantinedEvent,
  Store,
} from "./store.ts";
export { StoreError, type StoreFault } from "./store-error.ts";
