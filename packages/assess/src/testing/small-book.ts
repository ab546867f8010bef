import type {
  Book,
  Check,
  Fault,
  Gauge,
  GroundGearItem,
  HappeningKind,
  Limit,
  Point,
  Reading,
  Stance,
  WalkKind,
} from "@witnessmark/book";
import { type Measure, measure, UNITS, type UnitId } from "@witnessmark/engine";

/*
 * A book of a few checks, made by hand. Every field that a verdict depends on is a parameter of its builder, so that a
 * test shows the one that it is about.
 */

export const stance = (id: string, name: string): Stance => ({
  id,
  name,
  place: [0, 0],
  facing: 0,
  posture: "stand",
});

export const point = (id: string, name: string, at: string): Point => ({
  id,
  name,
  area: "all",
  side: "centre",
  place: [0, 0, 1],
  stance: at,
});

export interface CheckParts {
  readonly stance?: string;
  readonly title?: string;
  readonly walks?: readonly WalkKind[];
  readonly until?: readonly HappeningKind[];
  readonly atMost?: Measure;
  readonly after?: readonly string[];
  readonly reading?: Reading;
  readonly evidence?: Check["evidence"];
  readonly severity?: Check["hazard"]["severity"];
  readonly faults?: readonly Fault[];
  readonly least_s?: number;
}

export const check = (id: string, at: string, parts: CheckParts = {}): Check => ({
  id,
  point: at,
  stance: parts.stance ?? "nose",
  title: parts.title ?? "Look",
  method: "look",
  shouldBe: "Clean and dry",
  why: "It matters",
  faults: parts.faults ?? [],
  hazard: { severity: parts.severity ?? "medium", ifMissed: "Something breaks" },
  evidence: parts.evidence ?? (parts.reading === undefined ? "look" : "reading"),
  walks: parts.walks ?? ["first-of-day"],
  holds: { until: parts.until ?? [], ...(parts.atMost === undefined ? {} : { atMost: parts.atMost }) },
  after: parts.after ?? [],
  least: measure(parts.least_s ?? 2, "s"),
  ...(parts.reading === undefined ? {} : { reading: parts.reading }),
});

export const gauge = (
  id: string,
  unit: UnitId,
  accuracy: number,
  resolution: number,
  range: readonly [number, number],
): Gauge => ({
  id,
  name: `Gauge ${id}`,
  unit,
  dimension: UNITS[unit].dimension,
  coverage: "bound",
  accuracy: { value: accuracy, unit, valueSI: accuracy * UNITS[unit].factor },
  resolution: { value: resolution, unit, valueSI: resolution * UNITS[unit].factor },
  range: [measure(range[0], unit), measure(range[1], unit)],
});

export const reading = (
  of: Gauge,
  quantity: string,
  limit: Limit,
  parts: Partial<Reading> = {},
): Reading => ({
  gauge: of.id,
  quantity,
  dimension: of.dimension,
  limit,
  outside: { status: "stop" },
  scale: of.range ?? [measure(0, of.unit), measure(10, of.unit)],
  step: of.resolution,
  ...parts,
});

export const tyreGauge = gauge("tyre-gauge", "bar", 0.05, 0.01, [0, 10]);
export const oilStick = gauge("oil-stick", "USqt", 0.25, 0.5, [0, 8]);
export const voltmeter = gauge("voltmeter", "V", 0.1, 0.1, [0, 40]);

/** The tyre of the design's picture: 5.20 bar at 15 °C, read with ±0.05 bar. */
export const tyreReading = reading(
  tyreGauge,
  "tyre pressure",
  { by: "tyre", service: measure(5.2, "bar"), at: measure(15, "degC") },
  { temperatureOf: "tyre", scale: [measure(4, "bar"), measure(6, "bar")] },
);

export const voltsFrom = (low?: number, high?: number): Reading =>
  reading(voltmeter, "battery voltage", {
    by: "fixed",
    ...(low === undefined ? {} : { low: measure(low, "V") }),
    ...(high === undefined ? {} : { high: measure(high, "V") }),
  });

export const gear = (id: string, name: string, count: number, at: string): GroundGearItem => ({
  id,
  name,
  count,
  point: at,
  stowedIn: ["Cover bag"],
  why: "It must not fly",
});

export interface BookParts {
  readonly checks: readonly Check[];
  readonly gear?: readonly GroundGearItem[];
  readonly gauges?: readonly Gauge[];
  readonly revision?: number;
  readonly sha256?: string;
}

export const BOOK_SHA = "b0".repeat(32);

const STANCES = [stance("nose", "Nose"), stance("wing", "Right wing")];

export const book = (parts: BookParts): Book => ({
  revision: parts.revision ?? 14,
  issued: { on: "2031-01-01", by: "Tests" },
  notice: "Invented. Fit for no real flight.",
  sha256: parts.sha256 ?? BOOK_SHA,
  aircraft: {
    registration: "ZZ-TST",
    type: "Test",
    description: "invented",
    engine: "piston",
    engines: 1,
    gear: "nose-wheel",
    retractable: false,
    seats: 4,
  },
  geometry: {} as Book["geometry"], // no verdict looks at the drawing
  gauges: new Map((parts.gauges ?? [tyreGauge, oilStick, voltmeter]).map((each) => [each.id, each] as const)),
  areas: new Map([["all", { id: "all", name: "All" }]]),
  stances: STANCES,
  stancesById: new Map(STANCES.map((each) => [each.id, each] as const)),
  points: new Map(
    [
      point("oil", "Oil filler", "nose"),
      point("tyre", "Right main tyre", "wing"),
      point("boot", "Right boot", "wing"),
      point("battery", "Battery", "nose"),
      point("pitot", "Pitot tube", "wing"),
      point("tank", "Right tank", "wing"),
    ].map((each) => [each.id, each] as const),
  ),
  checks: parts.checks,
  checksById: new Map(parts.checks.map((each) => [each.id, each] as const)),
  groundGear: parts.gear ?? [],
  equipment: [],
  counters: [],
  timedItems: [],
});
