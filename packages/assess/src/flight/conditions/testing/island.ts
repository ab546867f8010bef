import { readFile } from "node:fs/promises";
import { type Book, readBook } from "@witnessmark/book";
import type { FlightPlan, PlannedField, Report } from "@witnessmark/ledger";
import type { Flight, Verdict } from "../../../assessment.ts";
import type { Context } from "../../../context.ts";
import { plain } from "../../../testing/plain.ts";
import { conditionVerdicts } from "../condition-verdicts.ts";
import type { FlightMasses } from "../field-figures.ts";

async function demo(name: string): Promise<Book> {
  const file = new URL(`../../../../../../books/${name}.yaml`, import.meta.url);
  const result = await readBook(await readFile(file, "utf8"), `${name}.yaml`);
  if (!result.ok) throw new Error(`the demo book has faults: ${JSON.stringify(result.faults[0])}`);
  return result.book;
}

/** The turboprop of the demo. */
export const turboprop = await demo("zz-skr");

/** A time of the invented morning, Thursday 12 November 2026, UTC. */
export const at = (time: string): number => Date.parse(`2026-11-12T${time}:00Z`);
export const reported = (text: string, received = "08:00"): Report => ({
  text,
  receivedAt: `2026-11-12T${received}:00Z`,
});

export const QUERN: PlannedField = {
  code: "ZZQN",
  runway: "29",
  condition: "wet",
  metar: reported("METAR ZZQN 120750Z 24014G22KT 9999 -RA BKN022 05/03 Q1008"),
};

export const TARN: PlannedField = {
  code: "ZZTW",
  runway: "24",
  condition: "dry",
  metar: reported("METAR ZZTW 120750Z 25008KT 9999 SCT030 04/01 Q1010"),
};

export const PLAN: FlightPlan = {
  rulePack: "us-part-91",
  flightRules: "VFR",
  route: {
    distance: { value: 150, unit: "NM" },
    time: { value: 38, unit: "min" },
    level: { value: 6000, unit: "ft" },
  },
  departure: TARN,
  destination: QUERN,
  own: { ceiling: { value: 1000, unit: "ft" }, landingFactor_1: 1.15 },
};

/** The island flight: off blocks 09:10, take-off 09:20, landing 09:58. */
export const flightWith = (plan: Partial<FlightPlan> = {}, offBlocks = "09:10"): Flight => ({
  from: "ZZTW",
  to: "ZZQN",
  offBlocks: `2026-11-12T${offBlocks}:00+00:00`,
  plan: { ...PLAN, ...plan },
});

export const MASSES: FlightMasses = { takeOff_kg: 2500, landing_kg: 2500 };

export interface Asked {
  readonly book?: Book;
  readonly now?: string;
  readonly masses?: FlightMasses;
}

/** All verdicts of the conditions, for a flight of an aircraft of which nothing else is known. */
export function verdictsOf(flight: Flight, { book = turboprop, now = "08:05", masses = MASSES }: Asked = {}) {
  // the verdicts of conditions ask for the book, the clock and the flights on record, and for nothing else
  const context = {
    book,
    state: { flights: new Map() },
    clock: { now_ms: at(now), offset_min: 0 },
  } as unknown as Context;
  return conditionVerdicts(context, flight, masses).map(({ verdict }) => verdict);
}

/** The one verdict of an id. @throws when there is none, or more than one */
export function one(all: readonly Verdict[], id: string): Verdict {
  const found = all.filter((verdict) => verdict.id === id);
  const [verdict] = found;
  if (verdict === undefined || found.length > 1)
    throw new Error(
      `${found.length} verdicts of id ${id}; there are ${all.map((each) => each.id).join(", ")}`,
    );
  return verdict;
}

/** `caution: Gust 17 kt from the left, of 20 kt demonstrated (3 kt)` */
export const line = ({ status, says, margin }: Verdict): string =>
  plain(`${status}: ${says}${margin === undefined ? "" : ` (${margin.text})`}`);
