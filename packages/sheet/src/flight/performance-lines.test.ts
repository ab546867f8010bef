import { type Assessment, assess, type Flight } from "@witnessmark/assess";
import type { Book } from "@witnessmark/book";
import { type AircraftState, fold } from "@witnessmark/ledger";
import { beforeAll, describe, expect, it } from "vitest";
import { type DemoLedger, demoLedger } from "../testing/demo-ledger.ts";
import { flightWith, goodFlight, heavyFlight, openFlight } from "../testing/flights.ts";
import { askFlight } from "./flight-ask.ts";
import type { SheetNumber } from "./number-line.ts";
import { numbersOf } from "./numbers.ts";

type Plan = NonNullable<Flight["plan"]>;

let ledger: DemoLedger;
let state: AircraftState;
beforeAll(async () => {
  ledger = await demoLedger(goodFlight);
  state = fold(ledger.events.filter(({ type }) => type !== "decision.signed"));
});

interface Found {
  readonly numbers: readonly SheetNumber[];
  readonly verdict: (id: string) => Assessment["verdicts"][number];
}

function found(flight: Flight, book: Book = ledger.book): Found {
  const assessment = assess(book, state, flight, ledger.at_ms);
  const ask = askFlight(book, state, assessment);
  if (ask === undefined) throw new Error("nothing is planned");
  return {
    numbers: numbersOf(ask, 0),
    verdict: (id) => {
      const one = ask.verdict(id);
      if (one === undefined) throw new Error(`the assessment has no verdict "${id}"`);
      return one;
    },
  };
}

/** The lines that start so, with plain spaces: `what | needs | has | left | status`. */
const lines = ({ numbers }: Found, start: string): readonly string[] =>
  numbers
    .filter(({ what }) => what.startsWith(start))
    .map(({ what, needs, has, left, status }) =>
      [what, needs, has, left, status].join(" | ").replaceAll("\u00A0", " "),
    );

/** The rows that the sheet had before any of these: of runways, fuel, oxygen, light and wind. */
const REST = /^(Take-off|Landing|Fuel|Oxygen|Daylight|Crosswind)/;

describe("the climb after the take-off", () => {
  it("is told over the ground and as a rate, with what is left by its verdict", () => {
    const good = found(goodFlight);
    const { margin, says } = good.verdict("runway:departure:climb");
    const [line = "", ...more] = lines(good, "Climb");
    expect(more).toEqual([]);
    const [what = "", needs, has, left] = line.split(" | ");
    expect([needs, has, left]).toEqual(["", "", margin?.text.replaceAll("\u00A0", " ")]);
    // rounded down to ten feet a minute, as the verdict has it
    expect(what).toMatch(/^Climb, \d,\d\d0 ft\/min$/);
    expect(says.replaceAll("\u00A0", " ")).toContain(what.replace("Climb, ", ""));
  });

  it("has what is asked of it, by the pilot, and stops when that is not there", () => {
    const asking = (value: number): Flight =>
      flightWith((plan) => ({ ...plan, own: { ...plan.own, climbGradient: { value, unit: "ftPerNM" } } }));
    const [asked = ""] = lines(found(asking(300)), "Climb");
    const [, needs, has = "", left = "", status] = asked.split(" | ");
    const size = (text: string): number => Number(text.replace(",", "").replace(" ft/NM", ""));
    expect([needs, status]).toEqual(["300 ft/NM", "clear"]);
    expect(size(has) - size(left)).toBe(300);
    expect(lines(found(asking(1900)), "Climb")[0]).toMatch(/\| 1,900 ft\/NM \| .* ft\/NM short \| stop$/);
  });
});

describe("the point at which to stop", () => {
  it("is half-way with 70 % of the lift-off speed, and says how much of the runway is left then", () => {
    // 62 kt at 2500 kg and 65 at 2740: 63.86 kt at 2648.8 kg; 0.7 × 1.1 × 63.86 = 49.2 kt; 960 m are there
    const good = found(goodFlight);
    const [line = ""] = lines(good, "Below");
    const left = good.verdict("runway:departure:abort").margin?.text.replaceAll("\u00A0", " ");
    expect(line).toMatch(/^Below 50 kt at 480 m: stop \| \d+ m \| 960 m \| /);
    expect(line.endsWith(`| ${left} | clear`)).toBe(true);
  });
});

describe("the speeds", () => {
  it("are stall and approach with the flaps of each field, rounded up", () => {
    const good = found(goodFlight);
    expect(lines(good, "Speeds")).toEqual([
      "Speeds off ZZTW 24, flaps 15°: stall 64 kt |  |  |  | clear",
      // 58 kt at 2500 kg and 61 at 2740: 58.3 kt at 2525 kg; times 1.3 is 75.8 kt
      "Speeds to ZZQN 29, flaps 35°: stall 59 kt, approach 76 kt |  |  |  | clear",
      "Speeds to ZZPK 33, flaps 35°: stall 59 kt, approach 76 kt |  |  |  | clear",
    ]);
  });

  it("are told with what the landing needs at the speed that the gust asks for", () => {
    // half of 22 − 14 kt on 75.8 kt: 79.8 kt; 664 m × (1 + 2 × 4 / 75.8) = 734.1 m of 870 m, by FAA AC 91-79
    expect(lines(found(goodFlight), "ZZQN")).toEqual([
      "ZZQN 29 at 80 kt, for the gust | 735 m | 870 m | 135 m | clear",
    ]);
  });

  it("are a caution where the landing at that speed has no room", () => {
    const gusty = found(
      flightWith((plan) => ({
        ...plan,
        ...(plan.destination === undefined
          ? {}
          : {
              destination: {
                ...plan.destination,
                metar: {
                  text: "METAR ZZQN 120750Z 29014G50KT 9999 -RA BKN022 05/03 Q1008",
                  receivedAt: "2026-11-12T08:05:00.000Z",
                },
              },
            }),
      })),
    );
    const [line = ""] = lines(gusty, "ZZQN");
    expect(line).toMatch(/ m short \| caution$/);
  });
});

/** An approach at departure and alternate, in clouds of 1,200 ft at the alternate. */
const byInstruments = (own: Plan["own"] = {}): Flight =>
  flightWith(({ departure, alternate, ...plan }) => {
    if (departure === undefined || alternate === undefined) throw new Error("the demo's flight has both");
    const cloud = (text: string) => ({ text, receivedAt: "2026-11-12T08:05:00.000Z" });
    return {
      ...plan,
      flightRules: "IFR",
      own,
      departure: {
        ...departure,
        approach: {
          name: "RNP 24",
          kind: "non-precision",
          minimum: { value: 450, unit: "ft" },
          visibility: { value: 1500, unit: "m" },
        },
      },
      alternate: {
        ...alternate,
        metar: cloud("METAR ZZPK 120750Z 30012KT 6000 BKN012 03/M01 Q1009"),
        taf: cloud("TAF ZZPK 120500Z 1206/1306 30012KT 6000 BKN012"),
        approach: {
          name: "ILS 33",
          kind: "precision",
          minimum: { value: 220, unit: "ft" },
          visibility: { value: 800, unit: "m" },
        },
      },
    };
  });

describe("the minima of the approaches that are planned", () => {
  it("are against the cloud and the visibility that are there", () => {
    const ifr = found(byInstruments());
    expect([...lines(ifr, "Ceiling"), ...lines(ifr, "Visibility")]).toEqual([
      "Ceiling, ZZTW, RNP 24 | 450 ft |  | no ceiling | clear",
      "Ceiling, ZZPK, ILS 33 | 220 ft | 1,200 ft | 980 ft | clear",
      "Visibility, ZZTW, RNP 24 | 1,500 m | 10,000 m | 8,500 m | clear",
      "Visibility, ZZPK, ILS 33 | 800 m | 6,000 m | 5,200 m | clear",
    ]);
  });

  it("are the pilot's own where he asks for more", () => {
    const ifr = found(byInstruments({ ceiling: { value: 1500, unit: "ft" } }));
    expect(lines(ifr, "Ceiling, ZZPK")).toEqual([
      "Ceiling, ZZPK, ILS 33 | 1,500 ft | 1,200 ft | 300 ft short | stop",
    ]);
  });

  it("are not told of a flight by sight", () => {
    const seen = byInstruments();
    const { plan } = seen;
    if (plan === undefined) throw new Error("no plan");
    const bySight = found({ ...seen, plan: { ...plan, flightRules: "VFR" } });
    expect([...lines(bySight, "Ceiling"), ...lines(bySight, "Visibility")]).toEqual([]);
  });
});

describe("the fuel by every way it is known", () => {
  const showing = (value: number): Flight =>
    flightWith((plan) => ({
      ...plan,
      load: { items: [], fuel: [], ...plan.load, totaliser: { value, unit: "kg" } },
    }));

  it("is what counts against what is planned, and no more than that is left", () => {
    // the totaliser far below what gauges and sticks say: 195 L in each tank, 424 L planned
    const odd = found(showing(200));
    const { margin, status } = odd.verdict("fuel:together");
    const [line = "", ...more] = lines(odd, "Fuel by");
    const [, needs = "", has = "", left, mark] = line.split(" | ");
    expect(more).toEqual([]);
    expect([left, mark]).toEqual([margin?.text.replaceAll("\u00A0", " "), status]);
    expect(status).toBe("caution");
    expect(Number.parseInt(needs, 10)).toBeGreaterThan(Number.parseInt(has, 10));
  });

  it("is not told where no totaliser was read", () => {
    expect(lines(found(goodFlight), "Fuel by")).toEqual([]);
  });
});

describe("the go-around", () => {
  it("has its line beside the climb, at the destination and at the alternate", () => {
    const good = found(goodFlight);
    const { margin, says } = good.verdict("runway:destination:go-around");
    const [there = "", alternate = "", ...more] = lines(good, "Go-around");
    expect(more).toEqual([]);
    expect(there).toMatch(/^Go-around, ZZQN, [\d,]+ ft\/min /);
    expect(alternate).toMatch(/^Go-around, ZZPK, /);
    expect(there.split(" | ")[3]).toBe(margin?.text.replaceAll("\u00A0", " "));
    expect(says).toMatch(/over the ground/);
  });
});

describe("what is not there has no line", () => {
  it("is so for what a book has no tables of", () => {
    const { book } = ledger;
    if (book.performance === undefined) throw new Error("the demo's book has tables");
    const tables = book.performance.tables.filter(
      ({ quantity }) => !quantity.endsWith("-gradient") && quantity !== "stall-speed",
    );
    const { numbers } = found(goodFlight, { ...book, performance: { ...book.performance, tables } });
    expect(numbers).toHaveLength(7);
    for (const { what } of numbers) expect(what).toMatch(REST);
  });

  it("is so for what waits for all that the distance waits for, which is told there", () => {
    for (const { what } of found(openFlight).numbers) expect(what).toMatch(REST);
  });

  it("is so for the point to stop while the take-off is beyond its table; climb and speeds say why they are open", () => {
    const heavy = found(heavyFlight);
    expect(lines(heavy, "Below")).toEqual([]);
    for (const start of ["Climb", "Speeds off"]) {
      const open = heavy.numbers.find(({ what }) => what.startsWith(start));
      expect(open).toMatchObject({ needs: "", has: "", left: "open", status: "open" });
      expect(open?.why).toContain("mass 2784\u00A0kg is beyond the table");
    }
  });

  it("is never a line without what is left, and no two lines have one name", () => {
    for (const flight of [goodFlight, heavyFlight, openFlight, byInstruments()]) {
      const { numbers } = found(flight);
      // a speed is told with its name: nothing of it is left
      for (const { what, left } of numbers) if (!what.startsWith("Speeds")) expect(left).not.toBe("");
      expect(new Set(numbers.map(({ what }) => what)).size).toBe(numbers.length);
    }
  });
});
