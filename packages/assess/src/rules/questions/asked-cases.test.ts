import type { TimedItem } from "@witnessmark/book";
import { toSI } from "@witnessmark/engine";
import { emptyState } from "@witnessmark/ledger";
import { describe, expect, it } from "vitest";
import { book as smallBook } from "../../testing/small-book.ts";
import { timedFigures } from "../../timed/timed-figures.ts";
import { NOT_FOR_PILOT_OWNER_NAMES } from "../eu-part-nco/release.ts";
import { type DecodedCase, decodedCases, numberOf } from "../testing/decoded-cases.ts";
import type { RuleAnswer, Said } from "./question.ts";
import { ruleQuestions } from "./rule-questions.ts";
import { bearingError_rad, inspectionRegime, reviewKeepsDay } from "./tested.ts";

// Each case carries its source and whether it is published or from memory.
const CASES = decodedCases("airworthiness-asked.json", 55);
const tried = new Set<string>();
function cases(...ids: readonly string[]): readonly DecodedCase[] {
  const found = CASES.filter(({ id }) => ids.some((start) => id === start || id.startsWith(`${start}-`)));
  if (found.length === 0) throw new Error(`no case ${ids.join(", ")}`);
  for (const { id } of found) tried.add(id);
  return found;
}

function answer(id: string, said: Said): RuleAnswer {
  const question = ruleQuestions.get(id);
  if (question === undefined) throw new Error(`no question ${id}`);
  const unknown = Object.keys(said).filter((name) => !question.asks.some((ask) => ask.name === name));
  if (unknown.length > 0) throw new Error(`${id} does not ask ${unknown.join(", ")}`);
  return question.answer(said);
}
const failing = ({ steps }: RuleAnswer): readonly string[] => [
  ...new Set(steps.flatMap(({ rule, holds }) => (holds === false ? [rule] : []))),
];
const legal = (ruled: RuleAnswer) => ({ legal: ruled.holds === true, failing: failing(ruled) });
const flag = ({ inputs }: DecodedCase, name: string): boolean => inputs[name] === true;
const text = ({ inputs }: DecodedCase, name: string): string => String(inputs[name]);
const has = ({ inputs }: DecodedCase, name: string): boolean => inputs[name] !== undefined;
const hours = (one: DecodedCase, name: string): number => toSI(numberOf(one, name), "h");

describe("inspections that bind, 14 CFR 91.409", () => {
  const SMALL = {
    certificate: "standard",
    engine: "piston",
    engines_count: 1,
    maxTakeOff_kg: 1200,
    inspected: true,
    approved: true,
  } as const;

  it.each(cases("regime"))("$id", (one) => {
    const engine = text(one, "engine");
    const said = {
      certificate: text(one, "airworthinessCertificate") === "standard" ? "standard" : "light-sport-special",
      engine: engine === "turboprop" ? "turboprop" : "piston",
      engines_count: numberOf(one, "engines_count"),
      maxTakeOff_kg: toSI(numberOf(one, "mtow_lb"), "lb"),
    } as const;
    const regime = inspectionRegime(said);
    expect(regime).toBe(one.expected["regime"]);
    expect(answer("inspections", said).says.includes("needs an annual inspection")).toBe(
      one.expected["annualRequiredBy91_409"],
    );
  });

  it.each(cases("annual-inspected"))("$id", (one) => {
    const approved = flag(one, "approvedForReturnToService");
    const ruled = answer("inspections", { ...SMALL, forHire: false, instruction: false, approved });
    expect(legal(ruled)).toEqual(one.expected);
  });

  it.each(cases("h100"))("$id", (one) => {
    const ruled = answer("inspections", {
      ...SMALL,
      forHire: flag(one, "carryingPersonsForHire"),
      instruction: flag(one, "instructionForHireInAircraftProvidedByInstructorOrSchool"),
      enRoute: flag(one, "enRouteToInspection"),
      sinceHundred_s:
        hours(one, "timeInServiceNow_h") + hours(one, "plannedFlight_h") - hours(one, "last100hOrAnnual_h"),
    });
    const { legal: isLegal, failing: rules } = legal(ruled);
    expect({ legal: isLegal, failing: rules }).toEqual({
      legal: one.expected["legal"],
      failing: one.expected["failing"],
    });
  });

  it("and with hire they do bind: 101 h stop it, 100 h do not, 110 h are let to where it is inspected", () => {
    const at = (h: number, enRoute: boolean) =>
      answer("inspections", { ...SMALL, forHire: true, enRoute, sinceHundred_s: h * 3600 }).holds;
    expect([at(101, false), at(100, false), at(110, true), at(110.1, true)]).toEqual([
      false,
      true,
      true,
      false,
    ]);
  });

  it.each(cases("progressive-interval"))("$id", (one) => {
    const over_h = numberOf(one, "timeInServiceAtArrival_h") - numberOf(one, "intervalDue_h");
    expect(over_h).toBeCloseTo(numberOf(one, "overfly_h", "expected"), 9);
    const at = (over: number) =>
      answer("progressive-interval", {
        enRoute: flag(one, "enRouteToInspection"),
        inProgramme: flag(one, "programmeHasOverflyInstruction"),
        over_s: over * 3600,
      }).holds;
    expect(at(over_h)).toBe(one.expected["legal"]);
    const limit_h = numberOf(one, "overflyLimit_h", "expected");
    expect([at(limit_h), at(limit_h + 0.1)]).toEqual([true, false]);
  });
});

describe("altimeter and transponder, 14 CFR 91.411 and 91.413", () => {
  it.each(cases("static", "altimeter", "encoder"))("$id", (one) => {
    const altitude = has(one, "testedToAltitude_ft");
    const ruled = answer("altimeter-and-transponder", {
      ifrInControlled: text(one, "flightRules") === "IFR" && flag(one, "controlledAirspace"),
      altimeterInTime: true, // 2025-09-01 to 2026-02-15
      // the alternate valve is what the rule leaves out
      staticOpened: flag(one, "staticSystemOpenedSince"),
      leakTested: flag(one, "leakTestedSince"),
      encoderWork: flag(one, "encoderWorkSince"),
      correspondenceTested: flag(one, "correspondenceTestedSince"),
      testedTo_m: altitude ? toSI(numberOf(one, "testedToAltitude_ft"), "ft") : 9000,
      planned_m: altitude ? toSI(numberOf(one, "plannedAltitude_ft"), "ft") : 1000,
      transponderUsed: false,
    });
    expect(legal(ruled)).toEqual(one.expected);
  });

  it.each(cases("transponder-lapsed"))("$id", (one) => {
    const ruled = answer("altimeter-and-transponder", {
      ifrInControlled: false,
      transponderInTime: false, // 2024-04-03: 24 calendar months end on 2026-04-30
      transponderUsed: flag(one, "transponderUsed"),
    });
    expect(legal(ruled)).toEqual(one.expected);
  });
});

describe("the check of a bearing receiver, 14 CFR 91.171", () => {
  const ENTERED = { dateEntered: true, placeEntered: true, errorEntered: true, signed: true } as const;
  const METHODS = CASES.filter(({ expected }) => expected["pass"] !== undefined).map(({ id }) => id);

  it.each(cases(...METHODS))("$id", (one) => {
    const [indicated_rad, reference_rad] = ["indicated_deg", "reference_deg"].map((name) =>
      toSI(numberOf(one, name), "deg"),
    );
    expect((bearingError_rad(indicated_rad ?? 0, reference_rad ?? 0) * 180) / Math.PI).toBeCloseTo(
      numberOf(one, "error_deg", "expected"),
      9,
    );
    const ruled = answer("bearing-receiver-check", {
      ...ENTERED,
      method: text(one, "method"),
      indicated_rad,
      reference_rad,
      signalOrCheckpointThere: false,
    });
    expect(ruled.holds).toBe(one.expected["pass"]);
  });

  it.each(cases("vor-record"))("$id", (one) => {
    const ruled = answer("bearing-receiver-check", {
      method: text(one, "method"),
      indicated_rad: toSI(numberOf(one, "bearingError_deg"), "deg"),
      reference_rad: 0,
      dateEntered: has(one, "date"),
      placeEntered: has(one, "place"),
      errorEntered: has(one, "bearingError_deg"),
      signed: one.inputs["signature"] !== null,
    });
    expect(ruled.holds).toBe(one.expected["complete"]);
    // as the file has it
    expect(ruled.says).toContain(`lacks: ${(one.expected["missing"] as readonly string[]).join(", ")}`);
  });

  it.each(cases("vor-method"))("$id", (one) => {
    const ruled = answer("bearing-receiver-check", {
      ...ENTERED,
      method: text(one, "method"),
      indicated_rad: 0,
      reference_rad: 0,
      signalOrCheckpointThere: flag(one, "testSignalAtDeparture") || flag(one, "groundCheckpointAtDeparture"),
    });
    expect({ valid: ruled.holds, failing: failing(ruled) }).toEqual(one.expected);
  });
});

it.each(cases("navdb"))("navigation data: $id", (one) => {
  const verified = flag(one, "verifiedUnamendedSinceExpiry");
  const ruled = answer("navigation-data", {
    current: text(one, "flight_date") <= text(one, "databaseLastDay_date"),
    byData: text(one, "flightRules") === "IFR",
    verified,
    manualAsksCurrent: false,
  });
  expect(ruled.holds).toBe(one.expected["allowed"]);
  if (verified) expect(ruled.says).toContain("verified unchanged since");
});

describe("the pilot", () => {
  it.each(cases("flight-review"))("$id", (one) => {
    const ruled = answer("flight-review", {
      // 2025-09-01 for a flight on 2026-01-10 is in time, 2023-06-10 is not
      inTime: text(one, "flightReview_date") >= "2024-01-01",
      endorsed: has(one, "endorsed") ? flag(one, "endorsed") : true,
      what: has(one, "flightInstructorRenewal_date") ? "instructor-renewal" : "review",
    });
    expect(legal(ruled)).toEqual({ legal: one.expected["legal"], failing: one.expected["failing"] });
  });

  it.each(cases("basicmed"))("$id", (one) => {
    const ruled = answer("basicmed", {
      occupants_count: numberOf(one, "occupantsAuthorized_count"),
      maxTakeOff_kg: toSI(numberOf(one, "mtow_lb"), "lb"),
      passengers_count: numberOf(one, "passengers_count"),
      altitude_m: toSI(numberOf(one, "altitude_ft"), "ft"),
      speed_mPerS: toSI(numberOf(one, "speed_kias"), "kt"),
      forHire: false,
    });
    expect(legal(ruled)).toEqual(one.expected);
  });

  it.each(cases("endorse"))("$id", (one) => {
    const number = (name: string, none: number) => (has(one, name) ? numberOf(one, name) : none);
    const ruled = answer("endorsements", {
      large: numberOf(one, "mtow_lb") > 12_500,
      turbojet: text(one, "engine") === "turbojet",
      typeRating: false,
      retractableGear: flag(one, "retractableGear"),
      flaps: flag(one, "flaps"),
      controllablePropeller: flag(one, "controllablePropOrFadecEquivalent"),
      complex: false,
      power_W: toSI(number("powerPerEngine_hp", 0), "hp"),
      highPerformance: false,
      pressurised: flag(one, "pressurized"),
      ceiling_m: toSI(Math.min(number("serviceCeiling_ft", 0), number("maxOperatingAltitude_ft", 0)), "ft"),
      highAltitude: false,
      tailwheel: flag(one, "tailwheel"),
      tailwheelHeld: false,
    });
    const NAMES: Readonly<Record<string, string>> = {
      "61.31(a)": "type-rating",
      "61.31(e)": "complex",
      "61.31(f)": "high-performance",
      "61.31(g)": "pressurized-high-altitude",
      "61.31(i)": "tailwheel",
    };
    expect(failing(ruled).map((rule) => NAMES[rule])).toEqual(one.expected["required"]);
  });

  it.each(cases("alcohol"))("$id", (one) => {
    const ruled = answer("alcohol", {
      sinceLastDrink_s:
        (Date.parse(`${text(one, "actAsCrew_utc")}Z`) - Date.parse(`${text(one, "lastDrink_utc")}Z`)) / 1000,
      underTheInfluence: flag(one, "underTheInfluence"),
      concentration_1: numberOf(one, "alcoholConcentration_g_per_dL"),
    });
    expect(legal(ruled)).toEqual(one.expected);
  });
});

describe("papers", () => {
  it.each(cases("registration-expired"))("$id", (one) => {
    const ruled = answer("registration-aboard", {
      flight: text(one, "flight_date"),
      expires: text(one, "registrationExpires_date"),
      newReceived: flag(one, "newCertificateReceived"),
    });
    expect(legal(ruled)).toEqual(one.expected);
  });

  it.each(cases("arc-third"))("$id", (one) => {
    const ruled = answer("review-certificate", {
      expires: text(one, "expiry_date"),
      extended: text(one, "extension_date"),
      used_count: numberOf(one, "extensionsAlreadyUsed_count"),
      managed: true,
    });
    expect(ruled.holds).toBe(one.expected["allowed"]);
    expect(ruled.says).not.toContain("good until");
  });

  it.each(cases("arc-review"))("$id", (one) => {
    const began = one.inputs["reviewStart_date"] as readonly string[]; // as the file has it
    expect(began.map((day) => reviewKeepsDay(text(one, "expiry_date"), day))).toEqual(
      one.expected["patternKept"],
    );
  });
});

describe("airworthiness directives, as a person follows them", () => {
  const ORIGIN = {
    event: "e",
    device: "d",
    deviceSeq: 1,
    author: { id: "p", name: "MK", role: "pilot" },
    hlc: "0",
    recordedAt: "2026-03-15T12:00:00Z",
  } as const;
  /** From the day it took effect: within so many hours, the earlier or the later of them. */
  function due(effective_h: number, now_h: number, within_h: readonly number[], combine: "first" | "later") {
    const at = "2026-06-01T12:00:00Z";
    const item: TimedItem = {
      id: "directive",
      name: "Directive",
      about: "aircraft",
      limits: within_h.map((every) => ({ by: "counter", counter: "hours", every })),
      combine,
      recurring: false,
      endsLife: false,
      why: "It is asked.",
    };
    const [figure] = timedFigures({
      book: {
        ...smallBook({ checks: [] }),
        counters: [{ id: "hours", name: "Airframe hours", of: "airframe", unit: "h" }],
        timedItems: [item],
      },
      state: {
        ...emptyState("ZZ-SML"),
        counters: new Map([
          ["hours", [{ ...ORIGIN, at, at_ms: Date.parse(at), shown: now_h, total: now_h, backwards: false }]],
        ]),
        timedDone: new Map([
          [
            "directive",
            [
              {
                ...ORIGIN,
                item: "directive",
                on: "2026-03-15",
                counters: { hours: effective_h },
                by: "In effect",
              },
            ],
          ],
        ]),
      },
      flight: null,
      clock: { now_ms: Date.parse(at), offset_min: 0 },
      pilot: undefined,
    });
    return figure?.nearest?.by === "counter" ? figure.nearest : undefined;
  }

  it.each(cases("ad-initial"))("$id", (one) => {
    const left = due(
      numberOf(one, "timeInServiceAtEffective_h"),
      numberOf(one, "now_h"),
      [numberOf(one, "within_h")],
      "first",
    );
    expect(left?.at).toBeCloseTo(numberOf(one, "due_h", "expected"), 9);
    expect(left?.left).toBeCloseTo(numberOf(one, "remaining_h", "expected"), 9);
  });

  it.each(cases("ad-whichever"))("$id", (one) => {
    const effective_h = numberOf(one, "timeInServiceAtEffective_h");
    const toTotal_h = numberOf(one, "totalThreshold_h") - effective_h;
    const within = [toTotal_h, numberOf(one, "within_h")];
    expect(due(effective_h, effective_h, within, "later")?.at).toBeCloseTo(
      numberOf(one, "due_h", "expected"),
      9,
    );
    expect(due(effective_h, effective_h, within, "first")?.at).toBeCloseTo(effective_h + toTotal_h, 9);
  });
});

describe("release by the pilot-owner, ML.A.803 and appendix II", () => {
  it.each(cases("pilot-owner"))("$id", (one) => {
    // a case says each answer as yes, no or kilograms, by the name under which it is asked, and which of the nine it is
    const { privately, licence, owns, inProgramme, didIt, entered, maxTakeOff_kg } = one.inputs as Said;
    const task = NOT_FOR_PILOT_OWNER_NAMES.find((name) => flag(one, name)) ?? "none";
    const said = { privately, licence, owns, inProgramme, didIt, entered, maxTakeOff_kg, task };
    expect(legal(answer("nco-pilot-owner", said))).toEqual(one.expected);
  });
});

it("takes up every case of the file", () => {
  expect(CASES.filter(({ id }) => !tried.has(id)).map(({ id }) => id)).toEqual([]);
});
