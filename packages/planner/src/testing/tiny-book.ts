import type { Book, Check, GroundGearItem, Stance, WalkKind } from "@witnessmark/book";

const no = { geometry: {} as Book["geometry"] }; // the planner never looks at the drawing

export const stanceAt = (id: string, x: number, y: number): Stance => ({
  id,
  name: `At ${id}`,
  place: [x, y],
  facing: 0,
  posture: "stand",
});

export const checkAt = (id: string, stance: string, walks: readonly WalkKind[], least_s = 2): Check => ({
  id,
  point: `${stance}-point`,
  stance,
  title: `Look at ${id}`,
  method: "look",
  shouldBe: "Clean",
  why: "It matters",
  faults: [],
  hazard: { severity: "medium", ifMissed: "Something breaks" },
  evidence: "look",
  walks,
  holds: { until: [] },
  after: [],
  least: { value: least_s, unit: "s", valueSI: least_s },
});

export const gearAt = (id: string, point: string, count = 1, stance?: string): GroundGearItem => ({
  id,
  name: `Cover ${id}`,
  count,
  point,
  ...(stance === undefined ? {} : { stance }),
  stowedIn: ["Cover bag"],
  why: "It must not fly",
});

/** A book with just what the planner reads: each stance has one point, `<stance>-point`. */
export const tinyBook = (parts: {
  readonly stances: readonly Stance[];
  readonly checks: readonly Check[];
  readonly gear?: readonly GroundGearItem[];
}): Book => ({
  ...no,
  revision: 1,
  issued: { on: "2026-01-01", by: "Tests" },
  notice: "Invented",
  sha256: "0".repeat(64),
  aircraft: {
    registration: "ZZ-TST",
    type: "Test",
    description: "test",
    engine: "piston",
    engines: 1,
    gear: "nose-wheel",
    retractable: false,
    seats: 2,
  },
  gauges: new Map(),
  areas: new Map([["all", { id: "all", name: "All" }]]),
  stances: parts.stances,
  stancesById: new Map(parts.stances.map((stance) => [stance.id, stance])),
  points: new Map(
    parts.stances.map((stance) => [
      `${stance.id}-point`,
      {
        id: `${stance.id}-point`,
        name: `Point ${stance.id}`,
        area: "all",
        side: "centre" as const,
        place: [stance.place[0], stance.place[1], 1] as const,
        stance: stance.id,
      },
    ]),
  ),
  checks: parts.checks,
  checksById: new Map(parts.checks.map((check) => [check.id, check])),
  groundGear: parts.gear ?? [],
  equipment: [],
  counters: [],
  timedItems: [],
});
