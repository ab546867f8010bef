import type { Flight } from "@witnessmark/assess";
import { emptyState } from "@witnessmark/ledger";
import { describe, expect, it } from "vitest";
import { fieldAt, planOf, type Role, withField } from "./plan-field.ts";
import { reportsText, sortReports, withReports } from "./sort-reports.ts";

const state = emptyState("ZZ-SKR");
const NOON = "2026-11-12T12:00:00+00:00";
const noon_ms = Date.parse(NOON);
const bare = { id: "f", from: "ZZTW", to: "zzqn ", offBlocks: "2026-11-12T12:30:00+00:00" };
const whole = withField(
  withField(bare, state, "departure", fieldAt("ZZTW", "24")),
  state,
  "destination",
  fieldAt("ZZQN", "29"),
);
const METAR = "METAR ZZQN 121150Z 24014G22KT 9999 -RA BKN022 05/03 Q1008";
const OLDER = "METAR ZZQN 120750Z 21006KT 9999 FEW030 04/01 Q1011";
const TAF = "TAF ZZQN 121100Z 1212/1221 24014KT 9999 BKN022";
const OTHER = "METAR ZZTW 121150Z 25008KT 9999 FEW030 04/01 Q1009";

/** The flight with what was pasted. */
function pasted(flight: Flight, text: string, here: Role = "departure") {
  const { taken, left } = sortReports(text, flight, here, noon_ms);
  return { left, flight: { ...flight, plan: withReports(planOf(flight, state), flight, taken, NOON) } };
}

describe("a pasted text", () => {
  it("is split, and each report goes to its field", () => {
    const { left, flight } = pasted(whole, `${METAR}=\n${TAF}=\n${OTHER}`);
    expect(left).toEqual([]);
    expect(flight.plan.destination?.metar).toEqual({ text: METAR, receivedAt: NOON });
    expect(flight.plan.destination?.taf?.text).toBe(TAF);
    expect(flight.plan.departure?.metar?.text).toBe(OTHER);
    expect(flight.plan.departure?.taf).toBeUndefined();
  });

  it("belongs to where the flight goes before any runway is chosen, and says nothing of the surface", () => {
    const { left, flight } = pasted(bare, `${TAF}\n${OTHER}`);
    expect(left).toEqual([]);
    expect(flight.plan.destination).toEqual({ code: "ZZQN", taf: { text: TAF, receivedAt: NOON } });
    expect(flight.plan.departure).toEqual({ code: "ZZTW", metar: { text: OTHER, receivedAt: NOON } });
  });

  it("of another place goes nowhere, and is handed back with the reason", () => {
    const elsewhere = METAR.replace("ZZQN", "ZZXX");
    const { left, flight } = pasted(whole, `${elsewhere}\n${OTHER}`);
    expect(left).toEqual([
      { text: elsewhere, says: "The METAR of ZZXX is of no field of this flight and was left out." },
    ]);
    expect(flight.plan.departure?.metar?.text).toBe(OTHER);
  });

  it("that is no report is handed back whole, and says what one looks like", () => {
    const { taken, left } = sortReports("good morning", whole, "destination", noon_ms);
    expect(taken).toEqual([]);
    expect(left).toHaveLength(1);
    expect(left[0]?.text).toBe("good morning");
    expect(left[0]?.says).toMatch(/^No report was found\. Expected one such as “METAR ZZQN/);
  });
});

describe("of two reports of one kind for one field", () => {
  it.each([
    ["the older pasted after", METAR, OLDER],
    ["the older pasted before", OLDER, METAR],
  ])("the later observed stands: %s", (_, first, second) => {
    const { left, flight } = pasted(pasted(whole, first).flight, second);
    expect(flight.plan.destination?.metar?.text).toBe(METAR);
    expect(left.map(({ text }) => text)).toEqual(second === OLDER ? [OLDER] : []);
  });

  it("what stays is said, and the older is handed back", () => {
    const { left } = pasted(pasted(whole, METAR).flight, OLDER);
    expect(left[0]?.says).toMatch(
      /^The METAR of ZZQN of \d\d:50 is older than what is there: the one of \d\d:50 stays and counts\.$/,
    );
  });

  it("in one text, the later stands whichever comes first", () => {
    for (const text of [`${METAR}\n${OLDER}`, `${OLDER}\n${METAR}`]) {
      const { left, flight } = pasted(whole, text);
      expect(flight.plan.destination?.metar?.text).toBe(METAR);
      expect(left.map((one) => one.text)).toEqual([OLDER]);
    }
  });

  it("one that cannot be used takes the place of none that can, and any takes its place", () => {
    const broken = "METAR ZZQN 1150Z 24014KT 9999 BKN022 05/03 Q1008";
    const { left, flight } = pasted(pasted(whole, METAR).flight, broken);
    expect(flight.plan.destination?.metar?.text).toBe(METAR);
    expect(left[0]?.says).toMatch(
      /^The METAR of ZZQN cannot be used \(1150Z: .*\): the one of \d\d:50 stays\.$/,
    );
    const begun = pasted(whole, broken).flight;
    expect(begun.plan.destination?.metar?.text).toBe(broken);
    expect(pasted(begun, OLDER).flight.plan.destination?.metar?.text).toBe(OLDER);
  });

  it("a correction of the same minute takes the place of what it corrects", () => {
    const corrected = METAR.replace("METAR", "METAR COR").replace("24014G22KT", "24018G30KT");
    expect(pasted(pasted(whole, METAR).flight, corrected).flight.plan.destination?.metar?.text).toBe(
      corrected,
    );
  });

  it("a forecast issued before stays out, though it was received after", () => {
    const before = "TAF ZZQN 120500Z 1206/1215 24008KT 9999 FEW030";
    const { left, flight } = pasted(pasted(whole, TAF).flight, before);
    expect(flight.plan.destination?.taf?.text).toBe(TAF);
    expect(left).toHaveLength(1);
  });
});

it("what was told of the reports stands only while they are the same", () => {
  const { flight } = pasted(bare, TAF);
  const { taf: _, ...without } = flight.plan.destination ?? fieldAt("ZZQN");
  expect(reportsText(flight)).not.toBe(
    reportsText({ ...flight, plan: { ...flight.plan, destination: without } }),
  );
  // a runway chosen changes no report
  const chosen = {
    ...flight.plan,
    destination: { ...fieldAt("ZZQN"), ...flight.plan.destination, runway: "29" },
  };
  expect(reportsText({ ...flight, plan: chosen })).toBe(reportsText(flight));
});
