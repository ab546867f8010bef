import type { Assessment, Flight } from "@witnessmark/assess";
import type { Book } from "@witnessmark/book";
import type { Author } from "@witnessmark/ledger";
import type { AircraftEntry, KeepSnapshot } from "../keep/contract.ts";

/** One aircraft whose book reads, with everything that its sheets share. */
export interface OpenAircraft {
  readonly registration: string;
  readonly book: Book;
  readonly entry: AircraftEntry;
  readonly state: AircraftEntry["state"];
  /** The flight in hand, as far as it is planned. */
  readonly flight: Flight | null;
  /** Why what was planned is not in the ledger yet; `null` when all is well. */
  readonly flightTrouble: string | null;
  readonly assessment: Assessment;
  readonly person: Author;
  readonly snapshot: KeepSnapshot;
}
