import type { LoadFigures, LoadMoment, LoadState } from "@witnessmark/assess";
import type { Book, Gauge } from "@witnessmark/book";
import type { UnitId } from "@witnessmark/engine";
import type { Status } from "@witnessmark/ledger";
import { marginText, safeDigits, safeText } from "./figure-text.ts";
import type { FlightAsk } from "./flight-ask.ts";
import { worse } from "./worse.ts";

interface Spot {
  readonly arm_m: number;
  readonly mass_kg: number;
}

/** One moment of the flight: what it weighs of what it may, and what is left. */
export interface SheetMassRow {
  readonly what: string;
  /** `2,326 of 2,490 kg`; empty when open. */
  readonly of: string;
  /** `164 kg`, `28 mm over`, `open` */
  readonly left: string;
  readonly status: Status;
}

/** What is left from a moment of the flight to an edge of the envelope. */
export interface SheetEdge {
  readonly from: Spot;
  readonly edge_m: number;
  /** `155 mm`, `28 mm over` */
  readonly text: string;
}

/** The envelope with the whole flight in it, for drawing. */
export interface SheetEnvelope {
  readonly points: readonly Spot[];
  readonly moments: readonly (Spot & { readonly status: Status })[];
  /** From the ramp to the last landing, and what is left to burn after it. */
  readonly flown: readonly Spot[];
  readonly rest: readonly Spot[];
  readonly limits: readonly { readonly name: string; readonly mass_kg: number }[];
  readonly edges: readonly SheetEdge[];
  readonly armUnit: UnitId;
}

export interface SheetMass {
  readonly rows: readonly SheetMassRow[];
  /** Absent where nothing of the flight is known to lie in it: an empty chart says nothing. */
  readonly envelope?: SheetEnvelope;
  /** What is not known, and so keeps it open. */
  readonly open: readonly string[];
}

const NAMES: Readonly<Record<LoadMoment, string>> = {
  "zero-fuel": "Zero fuel",
  ramp: "Ramp",
  "take-off": "Take-off",
  landing: "Landing",
  alternate: "Alternate",
};
const SHOWN: readonly LoadMoment[] = ["zero-fuel", "take-off", "landing"];

const isInches = (gauge: Gauge): boolean =>
  gauge.dimension === "length" && (gauge.unit === "in" || gauge.unit === "ft");

/** Lengths in inches where the book's own gauges read so, else in millimetres. */
const unitsOf = ({ gauges }: Book): { readonly margin: UnitId; readonly arm: UnitId } =>
  [...gauges.values()].some(isInches) ? { margin: "in", arm: "in" } : { margin: "mm", arm: "m" };

/** Known well enough to be drawn: all aboard is known, or what is known is past a limit already. */
const isKnown = ({ status, mass }: LoadState): boolean =>
  status !== "open" && (mass === undefined || mass.status !== "open");

function leftOf({ mass, nearest, inEnvelope }: LoadState, margin: UnitId): string {
  if (mass !== undefined && mass.left < 0) return marginText(mass.left, "kg");
  if (!inEnvelope && nearest !== undefined && nearest.left_m < 0) return marginText(nearest.left_m, margin);
  if (mass !== undefined) return marginText(mass.left, "kg");
  return nearest === undefined ? "" : marginText(nearest.left_m, margin);
}

function rowOf(at: LoadMoment, { load, verdict }: FlightAsk, margin: UnitId): SheetMassRow {
  const state = load.states.find((one) => one.at === at);
  const what = NAMES[at];
  if (state === undefined || !isKnown(state)) return { what, of: "", left: "open", status: "open" };
  const { mass, mass_kg } = state;
  return {
    what,
    of:
      mass === undefined
        ? `${safeText(mass_kg, "kg", "up")}, no limit`
        : `${safeDigits(mass.value, "kg", "up")} of ${safeText(mass.limit, "kg", "down")}`,
    left: leftOf(state, margin),
    status: worse(state.status, verdict(`load:${at}`)?.status ?? "clear"),
  };
}

/** The centre of gravity between the moments, or too close to call: no row of a moment says it. */
function onTheWay({ load, verdict }: FlightAsk): readonly SheetMassRow[] {
  const said = verdict("load:envelope");
  if (said === undefined || said.status === "clear") return [];
  const told = load.states.some(({ at, inEnvelope }) => SHOWN.includes(at) && !inEnvelope);
  if (said.status === "stop" && told) return [];
  const { status } = said;
  const left = status === "open" ? "open" : (said.margin?.text ?? "");
  return [{ what: "Centre of gravity", of: status === "open" ? "" : "on the way", left, status }];
}

/** The moments at which the edge ahead, and the edge behind, is nearest or furthest passed. */
function edgesOf(states: readonly LoadState[], margin: UnitId): readonly SheetEdge[] {
  const nearest = (end: 0 | 1): readonly SheetEdge[] => {
    const all = states.flatMap(({ arm_m, mass_kg, armRange_m }) => {
      if (armRange_m === undefined) return [];
      const left_m = end === 0 ? arm_m - armRange_m[0] : armRange_m[1] - arm_m;
      return [{ left_m, from: { arm_m, mass_kg }, edge_m: armRange_m[end] }];
    });
    const least = all.toSorted((a, b) => a.left_m - b.left_m)[0];
    return least === undefined
      ? []
      : [{ from: least.from, edge_m: least.edge_m, text: marginText(least.left_m, margin) }];
  };
  return [...nearest(0), ...nearest(1)];
}

function burnOf({ path, states }: LoadFigures): Pick<SheetEnvelope, "flown" | "rest"> {
  const last = states.findLast(({ at }) => at === "landing" || at === "alternate");
  if (last === undefined) return { flown: [], rest: [] };
  const isBefore = ({ mass_kg }: Spot): boolean => mass_kg >= last.mass_kg - 1e-6;
  const spot = ({ arm_m, mass_kg }: Spot): Spot => ({ arm_m, mass_kg });
  return {
    flown: [...path.filter(isBefore), last].map(spot),
    rest: [last, ...path.filter((point) => !isBefore(point))].map(spot),
  };
}

function envelopeOf({ book, load }: FlightAsk): SheetEnvelope | undefined {
  const { loading } = book;
  const points = load.envelope?.points;
  const known = load.states.filter((state) => SHOWN.includes(state.at) && isKnown(state));
  if (loading === undefined || points === undefined || known.length === 0) return undefined;
  const { takeOff_kg, landing_kg, zeroFuel_kg } = loading.limits;
  const { margin, arm } = unitsOf(book);
  const limit = (name: string, mass_kg: number | undefined) =>
    mass_kg === undefined ? [] : [{ name, mass_kg }];
  return {
    points,
    moments: known.map(({ arm_m, mass_kg, status }) => ({ arm_m, mass_kg, status })),
    ...(load.complete ? burnOf(load) : { flown: [], rest: [] }),
    limits: [
      ...limit("take-off", takeOff_kg),
      ...limit("landing", landing_kg),
      ...limit("zero fuel", zeroFuel_kg),
    ],
    edges: edgesOf(known, margin),
    armUnit: arm,
  };
}

/** Masses and their limits, and the envelope with the flight in it. */
export function massAndBalance(ask: FlightAsk): SheetMass {
  const { margin } = unitsOf(ask.book);
  const { load, verdict } = ask;
  const rows = SHOWN.map((at) => rowOf(at, ask, margin));
  const alternate = verdict("load:alternate");
  const envelope = envelopeOf(ask);
  const open = [...load.faults.map(({ says }) => says), ...load.missing.map(({ what }) => what)];
  return {
    rows: [
      ...rows,
      ...(alternate === undefined || alternate.status === "clear" ? [] : [rowOf("alternate", ask, margin)]),
      ...onTheWay(ask),
    ],
    ...(envelope === undefined ? {} : { envelope }),
    open: [...new Set(open)],
  };
}
