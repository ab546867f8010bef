import { fromSI, type Measure, toSI } from "@witnessmark/engine";
import { doubtful, impossible, type Problem } from "./aspect.ts";
import { type Elements, settingsDisagree } from "./elements.ts";
import { type Group, problemOf } from "./group.ts";
import type { WholeDegrees } from "./groups/temperature.ts";
import type { Remark } from "./remarks/remark.ts";

const find = <Is extends Remark["is"]>(
  remarks: readonly Remark[],
  is: Is,
): Extract<Remark, { is: Is }> | undefined =>
  remarks.find((remark): remark is Extract<Remark, { is: Is }> => remark.is === is);

/**
 * The sea-level pressure of a remark: tens, units and tenths of hPa, with 9 or 10 left out in front. The altimeter
 * setting of the body says which, being near it; without one, 10 below 500 and 9 from there.
 *
 * @source FAA-H-8083-28B, 24.4.3.13.22
 */
export function seaLevelPressure_Pa(
  remarks: readonly Remark[],
  setting: Measure | undefined,
): number | undefined {
  const digits = find(remarks, "sea-level pressure")?.digits;
  if (digits === undefined || digits === null) return undefined;
  const [low_Pa, high_Pa] = [toSI(900 + Number(digits) / 10, "hPa"), toSI(1000 + Number(digits) / 10, "hPa")];
  if (setting === undefined) return Number(digits) < 500 ? high_Pa : low_Pa;
  return Math.abs(low_Pa - setting.valueSI) < Math.abs(high_Pa - setting.valueSI) ? low_Pa : high_Pa;
}

/** Far more than reduction by another rule makes at a station of the lowlands, and than it makes at any. Common practice. */
const UNUSUAL_PA = 500;
const UNBELIEVABLE_PA = 1500;

function pressureChecks(
  { pressure }: Elements,
  remarks: readonly Remark[],
  groups: readonly Group[],
): readonly Problem[] {
  const problems: Problem[] = [];
  const textOf = (is: Remark["is"]): string =>
    groups.find(({ remarks: here }) => here?.some((remark) => remark.is === is))?.text ?? "";
  const body = groups.find(({ part }) => part?.is === "pressure")?.text ?? "";
  const second = find(remarks, "altimeter setting")?.setting;
  if (pressure !== undefined && second !== undefined && settingsDisagree([second, pressure]))
    problems.push(
      problemOf(
        `${body} / ${textOf("altimeter setting")}`,
        impossible("two altimeter settings that disagree", "pressure"),
      ),
    );
  const seaLevel_Pa = seaLevelPressure_Pa(remarks, pressure);
  if (pressure === undefined || seaLevel_Pa === undefined) return problems;
  const apart_Pa = Math.abs(seaLevel_Pa - pressure.valueSI);
  if (apart_Pa <= UNUSUAL_PA) return problems;
  const says = `${fromSI(seaLevel_Pa, "hPa").toFixed(1)} hPa at sea level and a setting of ${fromSI(pressure.valueSI, "hPa").toFixed(1)} hPa are ${(apart_Pa / 100).toFixed(0)} hPa apart; unlikely unless the station lies high`;
  const fault = apart_Pa > UNBELIEVABLE_PA ? doubtful(says, "pressure") : doubtful(says);
  problems.push(problemOf(`${body} / ${textOf("sea-level pressure")}`, fault));
  return problems;
}

/** A half goes to the warmer whole: −1.5 is M01. @source FAA-H-8083-28B, 24.4.3.10 */
const roundsTo = (tenths_degC: number, whole: WholeDegrees): boolean =>
  Math.floor(tenths_degC + 0.5) === whole.coded_degC ||
  Math.floor(tenths_degC + 0.5 + 1e-9) === whole.coded_degC;

function tenthsChecks(
  said: Elements,
  remarks: readonly Remark[],
  groups: readonly Group[],
): readonly Problem[] {
  const tenths = find(remarks, "tenths");
  if (tenths === undefined) return [];
  const text = groups.find(({ remarks: here }) => here?.includes(tenths))?.text ?? "";
  const problems: Problem[] = [];
  const compare = (
    value: number | undefined,
    whole: WholeDegrees | undefined,
    aspect: "temperature" | "dew point",
  ): void => {
    if (value === undefined || whole === undefined || roundsTo(value, whole)) return;
    const says = `${value.toFixed(1)} C does not round to the ${whole.coded_degC} C of the body`;
    problems.push(problemOf(text, impossible(says, aspect)));
  };
  compare(tenths.temperature_degC, said.temperature, "temperature");
  compare(tenths.dewPoint_degC, said.dewPoint, "dew point");
  return problems;
}

const minutesBefore = (at_UTC: string, report: string): number => {
  const minutes = (clock: string): number => Number(clock.slice(0, 2)) * 60 + Number(clock.slice(2));
  return (minutes(report) - minutes(at_UTC) + 1440) % 1440;
};

/** Weather that the remarks say has begun must be in the body, and weather that has ended must not. */
function weatherChecks(
  said: Elements,
  remarks: readonly Remark[],
  groups: readonly Group[],
): readonly Problem[] {
  const report = groups
    .find(({ section, text }) => section === "header" && /^\d{6}Z$/u.test(text))
    ?.text.slice(2, 6);
  if (report === undefined || said.weatherNotObserved) return [];
  const now = new Set(
    said.weather.flatMap(({ phenomena, descriptor, vicinity }) => [
      ...(vicinity === undefined ? phenomena : []),
      ...(descriptor === "TS" ? ["TS"] : []),
    ]),
  );
  return remarks.flatMap((remark) => {
    if (remark.is !== "begun and ended") return [];
    const text = groups.find(({ remarks: here }) => here?.includes(remark))?.text ?? "";
    const last = remark.events.toSorted(
      (one, other) => minutesBefore(one.at_UTC, report) - minutesBefore(other.at_UTC, report),
    )[0];
    const what = remark.code.replace(/^[-+]/u, "").replace(/^(?:SH|FZ)/u, "");
    const there = now.has(what === "TS" ? "TS" : what.slice(-2));
    if (last?.event === "ended" && there) {
      const inOrder = remark.events.at(-1)?.event === "ended";
      return inOrder
        ? [problemOf(text, doubtful("has ended by the remark, and is in the body of the report"))]
        : [];
    }
    if (last?.event === "began" && !there && remark.events.at(-1)?.event === "began")
      return [
        problemOf(text, doubtful("has begun by the remark, and is not in the body of the report", "weather")),
      ];
    if (last?.event === "began" && there && remark.events.at(-1)?.event === "ended")
      return [
        problemOf(text, doubtful("the order of its times does not fit what the body of the report says")),
      ];
    return [];
  });
}

/** Where the remarks contradict the body. */
export const remarkChecks = (
  said: Elements,
  remarks: readonly Remark[],
  groups: readonly Group[],
): readonly Problem[] => [
  ...tenthsChecks(said, remarks, groups),
  ...pressureChecks(said, remarks, groups),
  ...weatherChecks(said, remarks, groups),
];
