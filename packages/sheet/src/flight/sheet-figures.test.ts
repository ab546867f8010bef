import {
  type Assessment,
  assess,
  type Flight,
  fieldFigures,
  fuelFigures,
  loadFigures,
  oxygenFigures,
} from "@witnessmark/assess";
import { fromSI } from "@witnessmark/engine";
import { fold } from "@witnessmark/ledger";
import { beforeAll, describe, expect, it } from "vitest";
import { sheetOfDecision } from "../decision-sheet.ts";
import { makeSheet, type Sheet } from "../sheet.ts";
import { type DemoLedger, demoLedger } from "../testing/demo-ledger.ts";
import { flightWith, goodFlight, heavyFlight, namedFlight, openFlight } from "../testing/flights.ts";
import type { SheetFigures } from "./sheet-figures.ts";

interface Made {
  readonly ledger: DemoLedger;
  readonly sheet: Sheet;
  readonly assessment: Assessment;
  readonly verdicts: ReadonlyMap<
    string,
    { readonly status: string; readonly margin?: { readonly text: string } }
  >;
}

async function made(flight: Flight | null, late_ms?: number): Promise<Made> {
  const ledger = await demoLedger(flight, late_ms);
  const result = await sheetOfDecision(ledger.events, ledger.decision);
  if (!result.ok) throw new Error(result.says);
  const { assessment } = result.check;
  if (assessment === undefined || assessment === null) throw new Error("not worked out again");
  const verdicts = new Map(assessment.verdicts.map((verdict) => [verdict.id, verdict]));
  return { ledger, sheet: result.sheet, assessment, verdicts };
}

function figuresIn({ sheet }: Made): SheetFigures {
  const figures = sheet.flight?.figures;
  if (figures === undefined || figures === null) throw new Error("the sheet has no figures");
  return figures;
}

function numberIn(one: Made, start: string) {
  const found = figuresIn(one).numbers.find(({ what }) => what.startsWith(start));
  if (found === undefined) throw new Error(`the sheet has no line "${start}"`);
  return found;
}

/** `1,220 m` as 1220. */
const amount = (text: string): number => Number(text.replaceAll(",", "").replace("−", "-").split(/\s/)[0]);

describe("the numbers of a flight within its limits", () => {
  let good: Made;
  beforeAll(async () => {
    good = await made(goodFlight);
  });

  it("are what the verdicts of the decision say is left", () => {
    for (const [line, verdict] of [
      ["Take-off, ZZTW 24, dry", "runway:departure:take-off"],
      ["Landing, ZZQN 29, wet", "runway:destination:landing"],
      ["Landing, ZZPK 33, dry", "runway:alternate:landing"],
      ["Climb, ", "runway:departure:climb"],
      ["Below ", "runway:departure:abort"],
      ["Fuel, with 30\u00A0min reserve", "fuel:required"],
      ["Oxygen, five aboard", "oxygen:need"],
      ["Daylight at ZZQN", "light:destination"],
      ["Crosswind gust, ZZQN 29", "wind:destination:crosswind"],
    ] as const) {
      const number = numberIn(good, line);
      const said = good.verdicts.get(verdict);
      expect([line, number.left, number.status]).toEqual([line, said?.margin?.text, said?.status]);
    }
    for (const [row, verdict] of [
      ["Zero fuel", "load:zero-fuel"],
      ["Take-off", "load:take-off"],
      ["Landing", "load:landing"],
    ] as const) {
      const found = figuresIn(good).mass.rows.find(({ what }) => what === row);
      const said = good.verdicts.get(verdict);
      expect([row, found?.left, found?.status]).toEqual([row, said?.margin?.text, said?.status]);
    }
  });

  it("are the figures that load, fuel, oxygen and fields have, rounded to the safe side", () => {
    const { book, at_ms, events } = good.ledger;
    const { plan } = goodFlight;
    if (plan === undefined) throw new Error("no plan");
    const load = loadFigures(book, plan);
    const massAt = (moment: string) => load.states.find(({ at }) => at === moment)?.mass_kg ?? Number.NaN;
    const masses = { takeOff_kg: massAt("take-off"), landing_kg: massAt("landing") };
    const landing = fieldFigures(book, goodFlight, "destination", at_ms, { masses })?.distance.value?.nearest;
    const shown = numberIn(good, "Landing, ZZQN");
    expect(amount(shown.needs)).toBeGreaterThanOrEqual(landing?.needed_m ?? Number.NaN);
    expect(amount(shown.has)).toBeLessThanOrEqual(landing?.available_m ?? Number.NaN);
    const fuel = fuelFigures(book, goodFlight, plan, load);
    expect(amount(numberIn(good, "Fuel").needs)).toBe(Math.ceil((fuel.required_kg ?? Number.NaN) - 1e-9));
    const cylinder = book.oxygen?.cylinder.check ?? "";
    const reading = fold(events).checks.get(cylinder)?.readings.at(-1);
    const oxygen = oxygenFigures(book, plan, reading);
    expect(amount(numberIn(good, "Oxygen").needs)).toBe(
      Math.ceil(fromSI(oxygen.needPressure_Pa ?? Number.NaN, "bar") - 1e-9),
    );
    const rows = figuresIn(good).mass.rows.map(({ of }) => amount(of));
    expect(rows).toEqual([massAt("zero-fuel"), massAt("take-off"), massAt("landing")].map(Math.ceil));
  });

  it("count the fuel that was read where it is less than planned", () => {
    // 424 L planned, 2 x 195 L read on gauge and dip: the assessment counts what was read
    const { book } = good.ledger;
    const { plan } = goodFlight;
    if (plan === undefined) throw new Error("no plan");
    const planned = loadFigures(book, plan).fuel.usable_kg ?? Number.NaN;
    expect(amount(numberIn(good, "Fuel").has)).toBeLessThan(planned - 10);
  });

  it("say the flight in the envelope, with what is left to the edges ahead and behind", () => {
    const { envelope } = figuresIn(good).mass;
    expect(envelope?.moments).toHaveLength(3);
    expect(envelope?.flown.length).toBeGreaterThan(2);
    // 4.2043 - 4.1133 m and 4.36 - 4.2044 m: by hand from the corners of the book and the arms of the load
    expect(envelope?.edges.map(({ text }) => text)).toEqual(["90\u00A0mm", "155\u00A0mm"]);
  });

  it("tell a handful of tipping points, the nearest first", () => {
    const { tips } = figuresIn(good);
    expect(tips).toHaveLength(5);
    expect(tips[0]).toEqual({ what: "Crosswind, ZZQN 29, stop: gust from 240°", value: "26\u00A0kt" });
    expect(tips[1]?.value).toMatch(/^\d+\u00A0kt tail$/);
  });

  it("stand beside what was planned: the trip, who and what is aboard by place, and the fuel", () => {
    const { brief } = figuresIn(good);
    const plain = (text: string): string => text.replaceAll("\u00A0", " ");
    expect(brief.trip.map(({ label, value }) => plain(`${label} ${value}`))).toEqual([
      "Distance 152 NM",
      "Time in the air 48 min",
      "Level 15,000 ft",
      // off 09:10, 10 min taxi, 48 min in the air
      "Take-off 09:20",
      "Landing 10:08",
      "On to ZZPK 22 min",
    ]);
    expect(brief.aboard.map(({ where, what, much }) => plain(`${where}: ${what}, ${much}`))).toEqual([
      "Seat 1, left front: Pilot, 84 kg",
      "Seat 2, right front: Surgeon, 76 kg",
      "Seat 3, left middle: Nurse, 68 kg",
      "Seat 4, right middle: Technician, 91 kg",
      "Seat 6, right rear: Slit lamp case, 34 kg, weighed",
      "Aft bay: Clinic kit, 68 kg, weighed",
      "Left wing tank: Fuel, 212 L",
      "Right wing tank: Fuel, 212 L",
    ]);
  });

  it("stand beside the air that was counted with, and the reports as they came, with when", () => {
    const [, landing] = figuresIn(good).brief.fields;
    expect(landing?.title).toBe("Landing, ZZQN 29, wet, at 10:08");
    const used = Object.fromEntries((landing?.used ?? []).map(({ label, value }) => [label, value]));
    // as the METAR of ZZQN says: 24014G22KT 9999 BKN022 05/03 Q1008
    expect(used).toMatchObject({
      Wind: "240° 14 G 22\u00A0kt",
      Temperature: "5\u00A0°C",
      QNH: "1008\u00A0hPa",
      Visibility: "10\u00A0km",
      Ceiling: "2,200\u00A0ft",
    });
    expect(landing?.reports).toEqual([
      { text: "METAR ZZQN 120750Z 24014G22KT 9999 -RA BKN022 05/03 Q1008", taken: "08:05" },
      { text: "TAF ZZQN 120500Z 1206/1306 24014G22KT 9999 BKN022", taken: "08:05" },
    ]);
  });

  it("give those on the ground when to miss it, how many are aboard and how long the fuel lasts", () => {
    // off 09:10, 10 min taxi, 48 min
    const cells = Object.fromEntries(good.sheet.slip.map(({ label, value }) => [label, value]));
    expect(cells).toMatchObject({ To: "ZZQN", "Off, UTC": "09:10", "Due, UTC": "10:08", Aboard: "5" });
    expect(cells["Fuel for"]).toMatch(/^1\u00A0h \d\d$/);
  });

  it("are void when the reports are too old: 07:50 and 75 min", () => {
    expect(good.sheet.voidWhen).toContain("report of ZZTW, ZZQN, ZZPK past 09:05");
    expect(good.sheet.holds).toMatch(/^Holds until 09:05: .*ZZTW/);
  });

  it("come out the same from the ledger when the aircraft has long gone on", async () => {
    const { book, events, decision } = good.ledger;
    const later = fold(events);
    expect(later.decisions).toHaveLength(1);
    const again = await sheetOfDecision(events.toReversed(), decision);
    expect(again.ok && again.sheet).toEqual(good.sheet);
    expect(book.sha256).toBe(again.ok ? again.book.sha256 : "");
  });

  it("are on a sheet that nobody has signed as well", () => {
    const { book } = good.ledger;
    const state = fold(good.ledger.events.slice(0, -1));
    const unsigned = makeSheet({
      book,
      state,
      assessment: good.assessment,
      decision: null,
      east_min: 0,
    });
    expect(unsigned.title).toBe("Not signed");
    expect(unsigned.flight?.figures).toEqual(good.sheet.flight?.figures);
  });
});

describe("what is not known is open, and says why", () => {
  it("says of the trip and the air what nobody said", async () => {
    const { brief } = figuresIn(await made(openFlight));
    expect(brief.aboard).toEqual([]);
    expect(brief.trip[0]).toEqual({ label: "Distance", value: "not said" });
    const [, landing] = brief.fields;
    expect(landing?.reports).toEqual([]);
    expect(landing?.used).toContainEqual({ label: "Wind", value: "not known" });
  });

  it("is so for every number that waits for load, route and report, and no chart is drawn", async () => {
    const open = await made(openFlight);
    const { mass, numbers } = figuresIn(open);
    expect(mass.envelope).toBeUndefined();
    expect(mass.rows.map(({ left, status }) => [left, status])).toEqual([
      ["open", "open"],
      ["open", "open"],
      ["open", "open"],
    ]);
    expect(mass.open.join()).toContain("nobody is said to be");
    for (const { left, status, why } of numbers) {
      expect([left, status]).toEqual(["open", "open"]);
      expect(why).toMatch(/^Not known/);
    }
    expect(open.sheet.slip.map(({ value }) => value).filter((value) => value === "not said")).toHaveLength(3);
  });

  it("is so when the reports were too old by the decision, whatever the figures were before", async () => {
    const late = await made(goodFlight, 3 * 3_600_000);
    expect(numberIn(late, "Landing, ZZQN").left).toBe("open");
    // the forecast still says the wind
    const wind = late.verdicts.get("wind:destination:crosswind");
    expect(numberIn(late, "Crosswind").status).toBe(wind?.status);
    expect(late.sheet.voidWhen.join()).not.toContain("09:05");
  });

  it("is so for the oxygen where nobody read it", async () => {
    const { book, events } = await demoLedger(goodFlight);
    const check = book.oxygen?.cylinder.check;
    const unread = events.filter(
      (event) =>
        !(event.type === "reading.recorded" && event.body.check === check) &&
        event.type !== "decision.signed",
    );
    const state = fold(unread);
    const assessment = assess(book, state, goodFlight, Date.UTC(2026, 10, 12, 8, 20));
    const sheet = makeSheet({ book, state, assessment, decision: null, east_min: 0 });
    const line = sheet.flight?.figures?.numbers.find(({ what }) => what.startsWith("Oxygen"));
    expect(line).toMatchObject({ needs: "14\u00A0bar", has: "", left: "open", status: "open" });
  });

  it("has no numbers at all for a flight that was only named, and none for no flight", async () => {
    expect((await made(namedFlight)).sheet.flight?.figures).toBeNull();
    const none = await made(null);
    expect(none.sheet.flight).toBeNull();
    expect(none.sheet.voidWhen.join()).not.toContain("report");
  });
});

it("a mass over its limit is a stop with how much it is over, rounded up", async () => {
  const heavy = await made(heavyFlight);
  const takeOff = figuresIn(heavy).mass.rows.find(({ what }) => what === "Take-off");
  // 2,648.8 kg of the good flight, 90 and 45 kg more, against 2,720 kg
  expect(takeOff).toEqual({
    what: "Take-off",
    of: "2,784 of 2,720\u00A0kg",
    left: "64\u00A0kg over",
    status: "stop",
  });
});

it("a field that the book does not have is told on its line", async () => {
  const elsewhere = await made(
    flightWith((plan) => ({
      ...plan,
      ...(plan.destination === undefined ? {} : { destination: { ...plan.destination, code: "ZZXX" } }),
    })),
  );
  expect(numberIn(elsewhere, "Landing, ZZXX")).toMatchObject({ left: "open", status: "open" });
  expect(numberIn(elsewhere, "Landing, ZZXX").why).toContain("ZZXX");
});
