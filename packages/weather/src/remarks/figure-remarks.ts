import { measure, toSI } from "@witnessmark/engine";
import { impossible, notObserved } from "../aspect.ts";
import { type Remark, type RemarkPlace, type RemarkRead, type RemarkReader, remarkToken } from "./remark.ts";

const one = (remark: Remark): RemarkRead => ({ count: 1, remark });

/** 0261 is 26.1 °C, 1015 is −1.5 °C. The result has no negative zero. */
const tenths = (text: string): number => {
  const value = Number(text.slice(1)) / 10;
  return text.startsWith("1") && value !== 0 ? -value : value;
};
const celsius = (value: number): string => `${value.toFixed(1).replace("-", "−")} °C`;

const readTenths: RemarkReader = (place) => {
  const found = /^T([01]\d{3})([01]\d{3})?$/u.exec(remarkToken(place));
  if (found === null) return undefined;
  const temperature_degC = tenths(found[1] ?? "");
  const dewPoint_degC = found[2] === undefined ? undefined : tenths(found[2]);
  return one({
    is: "tenths",
    temperature_degC,
    temperature_K: toSI(temperature_degC, "degC"),
    ...(dewPoint_degC === undefined ? {} : { dewPoint_degC, dewPoint_K: toSI(dewPoint_degC, "degC") }),
    says: `temperature ${celsius(temperature_degC)}${dewPoint_degC === undefined ? "" : `, dew point ${celsius(dewPoint_degC)}`}`,
  });
};

const readExtreme: RemarkReader = (place) => {
  const found = /^([12])([01]\d{3})$/u.exec(remarkToken(place));
  if (found === null) return undefined;
  const temperature_degC = tenths(found[2] ?? "");
  const kind = found[1] === "1" ? "highest" : "lowest";
  return one({
    is: "extreme",
    kind,
    over_h: 6,
    temperature_degC,
    temperature_K: toSI(temperature_degC, "degC"),
    says: `${kind} temperature of 6 hours ${celsius(temperature_degC)}`,
  });
};

const readDayExtremes: RemarkReader = (place) => {
  const found = /^4([01]\d{3})([01]\d{3})$/u.exec(remarkToken(place));
  if (found === null) return undefined;
  const [high, low] = [tenths(found[1] ?? ""), tenths(found[2] ?? "")];
  if (low > high)
    return { count: 1, fault: impossible("lowest temperature of the day above the highest", "remarks") };
  return one({
    is: "other",
    says: `highest temperature of 24 hours ${celsius(high)}, lowest ${celsius(low)}`,
  });
};

/** Synoptic hours have the sum of six hours, those between them of three. The report comes shortly before the hour. */
const sumHours = ({ hour, minute }: RemarkPlace): 3 | 6 =>
  (minute >= 45 ? hour + 1 : hour) % 6 === 0 ? 6 : 3;

const readPrecipitation: RemarkReader = (place) => {
  const found = /^([P67])(\d{4}|\/{4})$/u.exec(remarkToken(place));
  if (found === null) return undefined;
  const [, letter, digits = ""] = found;
  if (digits === "////")
    return { count: 1, fault: notObserved("amount of precipitation not known", "remarks") };
  const over_h = letter === "P" ? 1 : letter === "7" ? 24 : sumHours(place);
  const amount_in = Number(digits) / 100;
  const amount = amount_in === 0 ? "a trace" : `${amount_in.toFixed(2)} in`;
  return one({
    is: "precipitation",
    over_h,
    amount_in,
    amount_m: toSI(amount_in, "in"),
    says: `precipitation of ${over_h === 1 ? "the last hour" : `${over_h} hours`}: ${amount}`,
  });
};

const readTendency: RemarkReader = (place) => {
  const found = /^5([0-8])(\d{3})$/u.exec(remarkToken(place));
  if (found === null) return undefined;
  const code = Number(found[1]);
  const amount = Number(found[2]) / 10;
  if (amount === 99.9) return { count: 1, fault: notObserved("pressure tendency not known", "remarks") };
  const change_hPa = code >= 5 && amount !== 0 ? -amount : amount;
  return one({
    is: "pressure tendency",
    code,
    change_hPa,
    says: `pressure ${amount.toFixed(1)} hPa ${change_hPa < 0 ? "lower" : "higher"} than three hours before`,
  });
};

const readSeaLevel: RemarkReader = (place) => {
  const found = /^SLP(NO|\d{3})$/u.exec(remarkToken(place));
  if (found === null) return undefined;
  const digits = found[1] === "NO" ? null : (found[1] ?? null);
  return one({
    is: "sea-level pressure",
    digits,
    says: digits === null ? "sea-level pressure not available" : `sea-level pressure ends in ${digits}`,
  });
};

const readSetting: RemarkReader = (place) => {
  const found = /^(A|QNH)(\d{4})(?:INS)?$/u.exec(remarkToken(place));
  const figure = Number(found?.[2]);
  if (found === null || figure < 2500 || figure > 3200) return undefined;
  const setting = measure(figure / 100, "inHg");
  return one({
    is: "altimeter setting",
    setting,
    says: `altimeter setting ${setting.value.toFixed(2)} inHg`,
  });
};

const readFieldPressure: RemarkReader = (place) => {
  const found = /^QFE(\d{3,4}(?:[.,]\d)?(?:\/\d{3,4})?)$/u.exec(remarkToken(place));
  return found === null
    ? undefined
    : one({ is: "other", says: `pressure at the aerodrome (QFE) ${found[1] ?? ""}` });
};

const readSnow: RemarkReader = (place) => {
  const depth = /^4\/(\d{3})$/u.exec(remarkToken(place));
  if (depth !== null) return one({ is: "other", says: `snow on the ground ${Number(depth[1])} in` });
  if (remarkToken(place) !== "SNINCR") return undefined;
  const found = /^(\d{1,2})\/(\d{1,3})$/u.exec(remarkToken(place, 1));
  if (found === null) return { count: 1, fault: impossible("increase of snow not understood", "weather") };
  const [lastHour_in, onGround_in] = [Number(found[1]), Number(found[2])];
  return {
    count: 2,
    remark: {
      is: "snow increasing",
      lastHour_in,
      onGround_in,
      says: `snow increasing rapidly: ${lastHour_in} in the last hour, ${onGround_in} in on the ground`,
    },
  };
};

export const readFigureRemark: RemarkReader = (place) =>
  readTenths(place) ??
  readExtreme(place) ??
  readDayExtremes(place) ??
  readPrecipitation(place) ??
  readTendency(place) ??
  readSeaLevel(place) ??
  readSetting(place) ??
  readFieldPressure(place) ??
  readSnow(place);
