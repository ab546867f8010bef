import type { Assessment, Flight } from "@witnessmark/assess";
import type { Book } from "@witnessmark/book";
import type { Author, Status } from "@witnessmark/ledger";
import { worst } from "../drawing/walk-scene.ts";
import type { AircraftEntry, KeepSnapshot } from "../keep/contract.ts";
import type { SheetName } from "./sheets-nav.tsx";

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

/** Each sheet's worst mark: the row of sheets itself says what is left. */
export function worstBySheet(assessment: Assessment): Readonly<Record<SheetName, Status>> {
  const of = (topics: readonly string[]) =>
    worst(assessment.verdicts.filter(({ topic }) => topics.includes(topic)).map(({ status }) => status));
  return {
    walk: of(["check", "ground-gear", "pace", "disagreement", "happening"]),
    load: of(["load", "fuel", "oxygen"]),
    conditions: of(["runway", "wind", "weather", "light", "ice"]),
    record: of(["discrepancy", "timed", "trend"]),
    decide: assessment.status,
    aircraft: of(["record"]),
  };
}
