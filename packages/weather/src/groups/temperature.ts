import { toSI } from "@witnessmark/engine";
import { impossible, notObserved, notUnderstood } from "../aspect.ts";
import { faulty, type Reader, tokenAt, used } from "./read.ts";

/** One temperature of a report, in whole degrees. */
export interface WholeDegrees {
  /** As coded; M00 is 0 with `belowZero`. */
  readonly coded_degC: number;
  readonly temperature_K: number;
  /** Coded with M: below 0 °C, even where the figure is 0. */
  readonly belowZero?: true;
}

/** Air temperature and dew point; `null`: not given. */
export interface AirTemperature {
  readonly temperature: WholeDegrees | null;
  readonly dewPoint: WholeDegrees | null;
}

/** Colder and hotter than any place where a report is made. */
const COLDEST_C = -70;
const HOTTEST_C = 58;

export const degrees = (text: string): WholeDegrees | null => {
  const found = /^(M?)(\d{2})$/u.exec(text);
  if (found === null) return null;
  const figure = Number(found[2]);
  const coded_degC = found[1] === "M" && figure !== 0 ? -figure : figure; // never a negative zero
  return {
    coded_degC,
    temperature_K: toSI(coded_degC, "degC"),
    ...(found[1] === "M" ? { belowZero: true } : {}),
  };
};

const PAIR = /^(M?\d{2}|\/\/|XX)\/(M?\d{2}|\/\/|XX|)$/u;

export const readTemperature: Reader = (place) => {
  const token = tokenAt(place);
  if (place.section !== "body") return undefined;
  const found = PAIR.exec(token);
  if (found === null)
    return /^M?\d{1,2}\/M?\d{1,3}$/u.test(token)
      ? faulty(
          notUnderstood(
            "temperature not understood; expected a form like 04/M02",
            "temperature",
            "dew point",
          ),
        )
      : undefined;
  const [temperature, dewPoint] = [degrees(found[1] ?? ""), degrees(found[2] ?? "")];
  const air: AirTemperature = { temperature, dewPoint };
  const part = { is: "temperature", air } as const;
  for (const one of [temperature, dewPoint])
    if (one !== null && (one.coded_degC < COLDEST_C || one.coded_degC > HOTTEST_C))
      return faulty(
        impossible(
          `${one.coded_degC} C is not a temperature of the air; not used`,
          "temperature",
          "dew point",
        ),
      );
  if (temperature === null && dewPoint === null)
    return faulty(notObserved("temperature missing", "temperature", "dew point"), part);
  if (temperature === null) return faulty(notObserved("temperature missing", "temperature"), part);
  if (dewPoint === null) return faulty(notObserved("dew point missing", "dew point"), part);
  if (dewPoint.coded_degC > temperature.coded_degC)
    return faulty(impossible("dew point above the temperature; neither is used", "temperature", "dew point"));
  return used(part);
};
