import { type BookField, type BookPath, idOf, type Plain, valueAt } from "@witnessmark/book";
import { UNITS, unitFromText } from "@witnessmark/engine";

const BARE = /^[-+−]?\d+([.,]\d+)?$/;
/** `1,900` is asked about where it is read: it is not made 1.9 on the way there. */
const TWO_WAYS = /^[-+−]?[1-9]\d{0,2},\d{3}$/;

/**
 * A bare figure gets the unit that stands there, where it is of the field, or else the usual one. Where the field takes
 * what may be meant by volume or by mass nobody knows which, and it stays bare.
 *
 * @param usual the usual unit of each dimension that the field takes
 */
export function withUnit(text: string, before: Plain | undefined, usual: readonly string[]): string {
  const tidy = text.trim();
  if (!BARE.test(tidy) || TWO_WAYS.test(tidy)) return tidy;
  const standing = /[^\d.,\s−+-].*$/u.exec(typeof before === "string" ? before : "")?.[0].trim();
  const isOfField = standing !== undefined && usual.some((each) => isAlike(each, standing));
  const unit = isOfField ? standing : usual.length > 1 ? undefined : usual[0];
  const figure = tidy.replace("−", "-").replace("+", "").replace(",", ".");
  return unit === undefined ? figure : `${figure} ${unit}`;
}

/** Whether two units are of one dimension; one that is not known is of none. */
function isAlike(one: string, other: string): boolean {
  const [a, b] = [unitFromText(one), unitFromText(other)];
  return a !== undefined && b !== undefined && UNITS[a].dimension === UNITS[b].dimension;
}

/** The usual units of a field: its own, or that of the gauge which reads it. */
export function unitsOfField(field: BookField, plain: Plain | null, path: BookPath): readonly string[] {
  if (field.is === "measure") return field.or === undefined ? [field.unit] : [field.unit, field.or];
  const unit = gaugeUnitAt(plain, path);
  return unit === undefined ? [] : [unit];
}

/** The unit of the gauge that a path is of, or of the one which the check there reads. */
export function gaugeUnitAt(plain: Plain | null, [list, index]: BookPath): string | undefined {
  if (list === undefined || index === undefined) return undefined;
  const item = valueAt(plain ?? undefined, [list, index]);
  const gauges = valueAt(plain ?? undefined, ["gauges"]);
  const read = valueAt(item, ["reading", "gauge"]);
  const gauge =
    list === "gauges" ? item : Array.isArray(gauges) ? gauges.find((each) => idOf(each) === read) : undefined;
  const unit = valueAt(gauge, ["unit"]);
  return typeof unit === "string" && unit !== "" ? unit : undefined;
}
