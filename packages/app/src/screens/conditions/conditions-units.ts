import { fromSI, roundToSafeSide, toSI, UNITS, type UnitId, withSymbol } from "@witnessmark/engine";
import { isRecord, stored } from "../../preferences/stored.ts";
import { figure } from "../../words/figures.ts";

/** What the sheet is read in; none of it changes what is kept. */
export const CHOICES = {
  speed: { name: "Wind speeds", units: ["kt", "mPerS", "kmPerH", "mph"] },
  airspeed: { name: "Speeds of the aircraft", units: ["kt", "kmPerH", "mph"] },
  distance: { name: "Runway lengths", units: ["m", "ft"] },
  height: { name: "Heights", units: ["ft", "m"] },
  temperature: { name: "Temperatures", units: ["degC", "degF"] },
  pressure: { name: "Altimeter setting", units: ["hPa", "inHg"] },
  visibility: { name: "Distances seen", units: ["m", "km", "mi"] },
  gradient: { name: "Climb over the ground", units: ["ftPerNM", "percent"] },
  climb: { name: "Rates of climb", units: ["ftPerMin", "mPerS"] },
} as const satisfies Record<
  string,
  { readonly name: string; readonly units: readonly [UnitId, ...UnitId[]] }
>;

export type Choice = keyof typeof CHOICES;
export type ConditionsUnits = Readonly<Record<Choice, UnitId>>;

export const conditionsUnits = stored<ConditionsUnits>("conditions-units", (found) => {
  const given = isRecord(found) ? found : {};
  const of = (choice: Choice): UnitId => {
    const { units } = CHOICES[choice];
    return units.find((unit) => unit === given[choice]) ?? units[0];
  };
  return {
    speed: of("speed"),
    airspeed: of("airspeed"),
    distance: of("distance"),
    height: of("height"),
    temperature: of("temperature"),
    pressure: of("pressure"),
    visibility: of("visibility"),
    gradient: of("gradient"),
    climb: of("climb"),
  };
});

/** The step in which a unit is read here. */
const STEP: Readonly<Partial<Record<UnitId, number>>> = {
  inHg: 0.01,
  km: 0.1,
  mi: 0.25,
  mPerS: 0.5,
  percent: 0.1,
  ftPerMin: 10,
};
const stepOf = (unit: UnitId): number => STEP[unit] ?? 1;

const decimalsOfStep = (step: number): number => (step >= 1 ? 0 : step === 0.25 ? 2 : step === 0.01 ? 2 : 1);

/** A value rounded to the side that does not flatter, with its unit. */
export function safeText(valueSI: number, unit: UnitId, way: "up" | "down", step = stepOf(unit)): string {
  const text = figure(roundToSafeSide(fromSI(valueSI, unit), step, way), decimalsOfStep(step));
  // an altimeter setting is written in one piece
  return withSymbol(unit === "hPa" ? text.replace(",", "") : text, unit);
}

/** A difference (a margin, a factor's gain): no offset. */
export function safeDifference(valueSI: number, unit: UnitId, way: "up" | "down"): string {
  const step = stepOf(unit);
  const value = valueSI / UNITS[unit].factor;
  return withSymbol(figure(roundToSafeSide(value, step, way), decimalsOfStep(step)), unit);
}

/** To the nearest step, for what has no safe side. */
export function nearText(valueSI: number, unit: UnitId, step = stepOf(unit)): string {
  const value = fromSI(valueSI, unit);
  return withSymbol(figure(Math.round(value / step) * step, decimalsOfStep(step)), unit);
}

/** "3 kt left", "2 kt over": what is left down, what is over up. */
export const leftText = (leftSI: number, unit: UnitId): string =>
  leftSI < 0 ? `${safeDifference(-leftSI, unit, "up")} over` : `${safeDifference(leftSI, unit, "down")} left`;

/** What is left of a runway before it is rounded to metres: rounded once, in the unit that is read. */
export const exactLeft_m = ({
  available_m,
  exact_m,
}: {
  readonly available_m: number;
  readonly exact_m: number;
}): number => available_m - exact_m;

/** "3 kt to the limit", "2 kt over": of a wind, of which "left" would be a side. */
export const toLimitText = (leftSI: number, unit: UnitId): string =>
  leftSI < 0 ? leftText(leftSI, unit) : `${safeDifference(leftSI, unit, "down")} to the limit`;

export const FOOT_m = toSI(1, "ft");
