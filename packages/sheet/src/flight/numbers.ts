import { type FieldFigures, isSettled, placeText, type Verdict } from "@witnessmark/assess";
import { roundToSafeSide, toSI } from "@witnessmark/engine";
import type { Status } from "@witnessmark/ledger";
import { clockText } from "../local-time.ts";
import { countWord, lastsText, marginText, safeText } from "./figure-text.ts";
import type { FlightAsk } from "./flight-ask.ts";
import { minimaLines } from "./minima-lines.ts";
import { leftOf, type SheetNumber, whyOf } from "./number-line.ts";
import { climbLines, speedLines, stopLines } from "./performance-lines.ts";
import { worse } from "./worse.ts";

/** What the figures say of one line; undefined where they say nothing that counts. */
interface Said {
  readonly needs: string;
  readonly has: string;
  readonly left: string;
  readonly status: Status;
}

const HOUR_S = 3600;

/**
 * A line of the numbers. The assessment has the last word on what it is worth: where it says open, the line is open,
 * whatever the figures show.
 */
function line(
  what: string,
  said: Said | undefined,
  verdict: Verdict | undefined,
  missing: readonly string[],
  known: Partial<Pick<Said, "needs" | "has">> = {},
): SheetNumber {
  if (said === undefined || verdict?.status === "open") {
    const lacks = missing.length > 0 ? missing : verdict?.status === "open" ? verdict.missing : [];
    return { what, needs: "", has: "", ...known, left: "open", status: "open", why: whyOf(lacks) };
  }
  return { what, ...said, status: verdict === undefined ? said.status : worse(said.status, verdict.status) };
}

/** A verdict on an alternate that no rule asks for is softened by the assessment: it alone says what that is worth. */
const asJudged = (number: SheetNumber, verdict: Verdict | undefined): SheetNumber =>
  verdict === undefined ? number : { ...number, status: verdict.status };

const lacksOf = ({
  missing,
}: {
  readonly missing: readonly { readonly what: string }[];
}): readonly string[] => missing.map(({ what }) => what);

function distanceLine({ verdict }: FlightAsk, { role, planned, distance }: FieldFigures): SheetNumber {
  const kind = role === "departure" ? "take-off" : "landing";
  const { value } = distance;
  const isKnown = value !== undefined && (isSettled(distance) || value.status === "stop");
  const name = role === "departure" ? "Take-off" : "Landing";
  const judged = verdict(`runway:${role}:${kind}`);
  const said: Said | undefined = isKnown
    ? {
        needs: safeText(value.nearest.needed_m, "m", "up"),
        has: safeText(value.nearest.available_m, "m", "down"),
        left: marginText(value.nearest.left_m, "m"),
        status: value.status,
      }
    : undefined;
  const what = `${name}, ${placeText(planned)}${planned.condition === undefined ? "" : `, ${planned.condition}`}`;
  return asJudged(line(what, said, judged, lacksOf(distance)), judged);
}

function crosswindLine(
  { verdict }: FlightAsk,
  { role, planned, crosswind, wind }: FieldFigures,
): SheetNumber {
  const { value } = crosswind;
  const isKnown = value !== undefined && (isSettled(crosswind) || value.status === "stop");
  const gust = wind.value?.worst.wind.gust_mPerS === undefined ? "" : " gust";
  const said: Said | undefined = isKnown
    ? {
        needs: safeText(value.value_mPerS, "kt", "up"),
        has: safeText(value.limit.value_mPerS, "kt", "down"),
        left: marginText(value.left_mPerS, "kt"),
        status: value.status,
      }
    : undefined;
  const judged = verdict(`wind:${role}:crosswind`);
  return line(`Crosswind${gust}, ${placeText(planned)}`, said, judged, lacksOf(crosswind));
}

function daylightLine({ verdict }: FlightAsk, figures: FieldFigures, east_min: number): SheetNumber {
  const { role, planned, daylight } = figures;
  const { value } = daylight;
  const judged = verdict(`light:${role}`);
  const clock = (at_ms: number): string => clockText(at_ms, east_min);
  const isEarly = value?.sunrise_ms !== undefined && value.at_ms < value.sunrise_ms;
  const sun = isEarly ? value.sunrise_ms : value?.sunset_ms;
  const said: Said | undefined =
    value === undefined || !isSettled(daylight)
      ? undefined
      : {
          needs: clock(value.at_ms),
          has: sun === undefined ? "no sunset" : isEarly ? `from ${clock(sun)}` : clock(sun),
          left:
            value.left_s === undefined
              ? value.light
              : value.left_s >= 0
                ? lastsText(value.left_s)
                : `${lastsText(Math.ceil(-value.left_s / 60) * 60)} ${isEarly ? "too early" : "too late"}`,
          status: value.status,
        };
  return line(`Daylight at ${planned.code}`, said, judged, lacksOf(daylight));
}

function fuelLine({ fuel, plan, verdict }: FlightAsk): SheetNumber {
  const { required_kg, usable_kg, left_kg, reserve, status, missing, faults } = fuel;
  const judged = verdict("fuel:required");
  const isKnown =
    status !== "open" && required_kg !== undefined && usable_kg !== undefined && left_kg !== undefined;
  const said: Said | undefined = isKnown
    ? {
        needs: safeText(required_kg, "kg", "up"),
        has: safeText(usable_kg, "kg", "down"),
        left: left_kg < 0 ? `${safeText(-left_kg, "kg", "up")} short` : safeText(left_kg, "kg", "down"),
        status,
      }
    : undefined;
  const what = reserve === undefined ? "Fuel" : `Fuel, with ${lastsText(reserve.time_s)} reserve`;
  const lacks = [
    ...(plan.route === undefined ? ["distance, time and level of the flight"] : []),
    ...missing.map((one) => one.what),
    ...faults.map(({ says }) => says),
    ...(usable_kg === undefined ? ["what is in the tanks"] : []),
  ];
  // with all of that known it is open for what the assessment names
  return line(what, said, judged, judged?.status === "open" ? judged.missing : lacks, {
    ...(required_kg === undefined ? {} : { needs: safeText(required_kg, "kg", "up") }),
  });
}

/** Gauges, dips and totaliser held together against what is planned; none where no totaliser was read. */
function fuelTogetherLine({ fuel: { whole }, verdict }: FlightAsk): readonly SheetNumber[] {
  const judged = verdict("fuel:together");
  if (whole === undefined || judged === undefined) return [];
  return [
    {
      what: "Fuel by every way it is known",
      needs: safeText(whole.planned_kg, "kg", "up"),
      has: safeText(whole.believed_kg, "kg", "down"),
      left: leftOf(judged),
      status: judged.status,
    },
  ];
}

function oxygenLine({ oxygen, plan, verdict }: FlightAsk): SheetNumber {
  const { need_m3, needPressure_Pa, cylinder, left_Pa, seats, status, missing, faults } = oxygen;
  const judged = verdict("oxygen:need");
  const what = seats.length === 0 ? "Oxygen" : `Oxygen, ${countWord(seats.length)} aboard`;
  const needs = needPressure_Pa === undefined ? undefined : safeText(needPressure_Pa, "bar", "up");
  const isKnown = status !== "open" && need_m3 !== undefined && plan.route !== undefined && seats.length > 0;
  const has = cylinder === undefined ? "" : safeText(cylinder.pressure_Pa, "bar", "down");
  const left =
    left_Pa === undefined
      ? "short"
      : left_Pa < 0
        ? `${safeText(-left_Pa, "bar", "up")} short`
        : safeText(left_Pa, "bar", "down");
  const said: Said | undefined = !isKnown
    ? undefined
    : need_m3 === 0
      ? { needs: "none", has, left: "none needed", status }
      : { needs: needs ?? "more than it holds", has, left, status };
  const lacks = [
    ...missing.map((one) => one.what),
    ...faults.map(({ says }) => says),
    ...(plan.route === undefined ? ["the level and the time of the flight"] : []),
    ...(seats.length === 0 ? ["who is aboard"] : []),
  ];
  return line(
    what,
    said,
    judged,
    judged?.status === "open" ? judged.missing : lacks,
    needs === undefined ? {} : { needs },
  );
}

/** What runs out first by hours flown: none where the book follows nothing by hours. */
function inspectionLine({ byHours: [first], plan, verdict }: FlightAsk): readonly SheetNumber[] {
  const nearest = first?.nearest;
  if (first === undefined || nearest?.by !== "counter") return [];
  const { time } = plan.route ?? {};
  const needs_h = time === undefined ? undefined : toSI(time.value, time.unit) / HOUR_S;
  const what = `Nearest inspection, ${first.item.name}`;
  const judged = verdict(`timed:${first.item.id}`);
  if (needs_h === undefined) return [line(what, undefined, judged, ["how long the flight takes"])];
  const left_h = nearest.left - needs_h;
  return [
    line(
      what,
      {
        needs: hoursText(needs_h, "up"),
        has: hoursText(nearest.left, "down"),
        left: left_h < 0 ? `${hoursText(-left_h, "up")} over` : hoursText(left_h, "down"),
        status: left_h < 0 ? "stop" : "clear",
      },
      judged,
      [],
    ),
  ];
}

/** Hours and tenths, as counters show them. */
const hoursText = (hours: number, to: "up" | "down"): string =>
  `${roundToSafeSide(hours, 0.1, to).toFixed(1)} h`;

/** Of departure and destination: all that are not clear, else the one with less left. */
function tellingOf(
  { field }: FlightAsk,
  lineOf: (figures: FieldFigures) => SheetNumber,
  leftOf: (figures: FieldFigures) => number,
): readonly SheetNumber[] {
  const all = (["departure", "destination"] as const).flatMap((role) => {
    const figures = field(role);
    return figures === undefined ? [] : [{ number: lineOf(figures), left: leftOf(figures) }];
  });
  const unclear = all.filter(({ number }) => number.status !== "clear");
  const told = unclear.length > 0 ? unclear : all.toSorted((a, b) => a.left - b.left).slice(0, 1);
  return told.map(({ number }) => number);
}

/** A line for a field that the plan does not name. */
const unnamed = (what: string, role: string): SheetNumber => ({
  what,
  needs: "",
  has: "",
  left: "open",
  status: "open",
  why: `no ${role} is planned`,
});

/** Needs, has, left: what the flight stands on. */
export function numbersOf(ask: FlightAsk, east_min: number): readonly SheetNumber[] {
  const { field } = ask;
  const [departure, destination, alternate] = [field("departure"), field("destination"), field("alternate")];
  return [
    departure === undefined ? unnamed("Take-off", "departure") : distanceLine(ask, departure),
    destination === undefined ? unnamed("Landing", "destination") : distanceLine(ask, destination),
    ...(alternate === undefined ? [] : [distanceLine(ask, alternate)]),
    ...climbLines(ask),
    ...stopLines(ask),
    fuelLine(ask),
    ...fuelTogetherLine(ask),
    oxygenLine(ask),
    ...tellingOf(
      ask,
      (figures) => daylightLine(ask, figures, east_min),
      ({ daylight }) => daylight.value?.left_s ?? Number.POSITIVE_INFINITY,
    ),
    ...tellingOf(
      ask,
      (figures) => crosswindLine(ask, figures),
      ({ crosswind }) => crosswind.value?.left_mPerS ?? Number.POSITIVE_INFINITY,
    ),
    ...minimaLines(ask),
    ...speedLines(ask),
    ...inspectionLine(ask),
  ];
}
