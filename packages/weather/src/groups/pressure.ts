import { type Measure, measure } from "@witnessmark/engine";
import { type Fault, impossible, notObserved } from "../aspect.ts";
import { faulty, type Reader, tokenAt, used } from "./read.ts";

/** What is accepted as an altimeter setting. Common practice; the lowest and highest ever measured lie inside. */
export const POSSIBLE_HPA = [850, 1090] as const;
export const POSSIBLE_INHG = [25, 32] as const;

const within = (value: number, [low, high]: readonly [number, number]): boolean =>
  value >= low && value <= high;
const hectopascals = (digits: string): Measure => measure(Number(digits), "hPa");
const inches = (digits: string): Measure => measure(Number(digits) / 100, "inHg");

function settingOf(letter: "A" | "Q", digits: string): Measure | Fault {
  const [read, other] = letter === "A" ? [inches, hectopascals] : [hectopascals, inches];
  const [range, otherRange] = letter === "A" ? [POSSIBLE_INHG, POSSIBLE_HPA] : [POSSIBLE_HPA, POSSIBLE_INHG];
  const setting = read(digits);
  if (within(setting.value, range)) return setting;
  const figure = letter === "A" ? `${setting.value.toFixed(2)} inHg` : `${setting.value} hPa`;
  const meant = within(other(digits).value, otherRange)
    ? `; probably ${letter === "A" ? "Q" : "A"}${digits}`
    : "";
  return impossible(`${figure} is impossible${meant}; not used without confirmation`, "pressure");
}

/** A2992 and Q1013; in a forecast QNH2985INS, the lowest setting that is expected. */
export const readPressure: Reader = (place) => {
  const token = tokenAt(place);
  if (/^[AQ]\/{2,4}$/u.test(token))
    return faulty(
      notObserved(
        token.startsWith("A") ? "altimeter missing" : "altimeter setting (QNH) missing",
        "pressure",
      ),
    );
  const forecast = /^QNH(\d{4})(INS|HPA)?$/u.exec(token);
  const found = forecast ?? /^([AQ])(\d{4})$/u.exec(token);
  if (found === null)
    return /^[AQ]\d{1,3}$|^[AQ]\d{5,}$/u.test(token)
      ? faulty(impossible("altimeter group needs four digits; not used", "pressure"))
      : undefined;
  const letter = forecast !== null ? (forecast[2] === "INS" ? "A" : "Q") : found[1] === "A" ? "A" : "Q";
  const setting = settingOf(letter, (forecast !== null ? forecast[1] : found[2]) ?? "");
  if ("says" in setting) return faulty(setting);
  return used({
    is: forecast !== null && place.section === "forecast" ? "lowest pressure" : "pressure",
    setting,
  });
};
