import { type Measure, measure } from "@witnessmark/engine";
import { doubtful, impossible, notObserved, notUnderstood } from "../aspect.ts";
import { faulty, type Reader, tokenAt, used } from "./read.ts";

export interface Visibility {
  /** Exact conversion of the coded value; with a bound, the bound. */
  readonly visibility_m: number;
  readonly bound?: "less than" | "more than" | "at least";
  /** As it stands in the report, in statute miles (mi), m or km; 9999 is 10,000 m at least, 0000 less than 50 m. */
  readonly coded: Measure;
}

/** The lowest visibility of a report, and the direction in which it is. */
export interface SectorVisibility extends Visibility {
  readonly direction?: string;
}

const COMPASS = /^(?:N|NE|E|SE|S|SW|W|NW)$/u;
const FRACTIONS = new Set([2, 4, 8, 16]);

export const visibilityOf = (coded: Measure, bound?: Visibility["bound"]): Visibility => ({
  visibility_m: coded.valueSI,
  ...(bound === undefined ? {} : { bound }),
  coded,
});

/** The value of 3/4 or 1/16; what is wrong with it as a text. */
export function fraction(text: string): number | string {
  const found = /^(\d{1,2})\/(\d{1,2})$/u.exec(text);
  if (found === null) return "not a fraction";
  const [above, below] = [Number(found[1]), Number(found[2])];
  if (below === 0) return "zero denominator; visibility unknown";
  if (!FRACTIONS.has(below))
    return "a fraction that no report uses; expected halves, quarters, eighths or sixteenths";
  if (/(?:^|\/)0\d/u.test(text)) return "a nought before a figure: a digit may be wrong; visibility unknown";
  if (above === 0) return "a fraction of nought; visibility unknown";
  if (above >= below) return "a fraction above one: a space may be missing (1 1/2SM); visibility unknown";
  if (above % 2 === 0) return "a fraction that can be shortened: a digit may be wrong; visibility unknown";
  return above / below;
}

/** Whole miles; 05 is no way to write 5. */
const wholeMiles = (text: string): number | string =>
  /^0\d/u.test(text) ? "a nought before a figure: a digit may be wrong; visibility unknown" : Number(text);

const MILES = /^([PM]?)(?:(\d{1,2})|(\d{1,2}\/\d{1,2}))SM$/u;

/** 3/4SM, M1/4SM, P6SM, 10SM, and 1 1/2SM with its space. */
const readMiles: Reader = (place) => {
  const token = tokenAt(place);
  const next = tokenAt(place, 1);
  const whole =
    /^\d{1,2}$/u.test(token) && /^\d{1,2}\/\d{1,2}SM$/u.test(next) ? wholeMiles(token) : undefined;
  if (whole !== undefined) {
    const part = fraction(next.slice(0, -2));
    const wrong = [
      whole,
      part,
      whole === 0 ? "no whole mile before the fraction; visibility unknown" : 0,
    ].find((one) => typeof one === "string");
    return typeof wrong === "string" || typeof whole === "string" || typeof part === "string"
      ? faulty(impossible(String(wrong), "visibility"), undefined, 2)
      : used({ is: "visibility", visibility: visibilityOf(measure(whole + part, "mi")) }, 2);
  }
  if (/^\/+SM$/u.test(token)) return faulty(notObserved("visibility missing", "visibility"));
  const found = MILES.exec(token);
  if (found === null) return undefined;
  const [, sign, miles, share] = found;
  const value = miles === undefined ? fraction(share ?? "") : wholeMiles(miles);
  if (typeof value === "string") return faulty(impossible(value, "visibility"));
  const bound = sign === "P" ? "more than" : sign === "M" ? "less than" : undefined;
  return used({ is: "visibility", visibility: visibilityOf(measure(value, "mi"), bound) });
};

const METRES = /^(\d{4})(NDV|N|NE|E|SE|S|SW|W|NW)?$/u;

/** 0600, 9999, 0000, 0900NW. */
const readMetres: Reader = (place) => {
  const token = tokenAt(place);
  if (token === "////" || token === "////NDV") return faulty(notObserved("visibility missing", "visibility"));
  const found = METRES.exec(token);
  if (found === null) return undefined;
  const [, digits = "", direction] = found;
  const metres = Number(digits);
  if (metres !== 9999 && metres % 50 !== 0)
    return faulty(
      impossible("no visibility is coded so finely: expected steps of 50 or 100 m; not used", "visibility"),
    );
  const visibility =
    metres === 9999
      ? visibilityOf(measure(10_000, "m"), "at least")
      : metres === 0
        ? visibilityOf(measure(50, "m"), "less than")
        : visibilityOf(measure(metres, "m"));
  if (direction === undefined || direction === "NDV") return used({ is: "visibility", visibility });
  return used({ is: "minimum visibility", minimum: { ...visibility, direction } });
};

export const readVisibility: Reader = (place) => {
  const token = tokenAt(place);
  if (token === "CAVOK") return used({ is: "cavok" });
  const kilometres = /^(\d{1,2})KM$/u.exec(token);
  if (kilometres !== null)
    return used({ is: "visibility", visibility: visibilityOf(measure(Number(kilometres[1]), "km")) });
  const read = readMiles(place) ?? readMetres(place);
  if (read !== undefined) return read;
  const stray = /^([PM]?(?:\d{1,2}|\d{1,2}\/\d{1,2})SM)[+-]$/u.exec(token);
  if (stray !== null) {
    const inner = readMiles({ ...place, tokens: [stray[1] ?? ""], at: 0 });
    return faulty(
      doubtful("stray sign after the visibility; visibility not certain", "visibility"),
      inner?.part,
    );
  }
  if (/^[PM]?[\d/]*SM$/u.test(token))
    return faulty(
      notUnderstood("visibility not understood; expected a form like 3SM, 1 1/2SM, M1/4SM", "visibility"),
    );
  return undefined;
};

export const isCompass = (text: string): boolean => COMPASS.test(text);
