import { fromSI, roundToSafeSide, type UnitId, type Wind, withSymbol } from "@witnessmark/engine";

const three = (angle_rad: number): string => {
  const whole = Math.round(fromSI(angle_rad, "deg")) % 360;
  return `${String(whole === 0 ? 360 : whole).padStart(3, "0")}°`;
};

/** A metre a second is two knots: half of one is the step there. */
const stepOf = (unit: UnitId): number => (unit === "mPerS" ? 0.5 : 1);

/**
 * `240° 14 G 22 kt`, `variable 4 kt`, `240° (180° to 300°) 14 kt`, `calm`.
 *
 * @param unit of the speeds, which are rounded up to its step
 */
export function windText({ direction, speed_mPerS, gust_mPerS }: Wind, unit: UnitId = "kt"): string {
  const inUnit = (value_mPerS: number): string =>
    String(roundToSafeSide(fromSI(value_mPerS, unit), stepOf(unit), "up"));
  if (speed_mPerS === 0 && (gust_mPerS ?? 0) === 0) return "calm";
  const gust = gust_mPerS === undefined ? "" : ` G ${inUnit(gust_mPerS)}`;
  const speed = withSymbol(`${inUnit(speed_mPerS)}${gust}`, unit);
  if (direction.kind === "variable") return `variable ${speed}`;
  if (direction.kind === "from") return `${three(direction.from_rad)} ${speed}`;
  const { sector, from_rad } = direction;
  const between = `${three(sector.from_rad)} to ${three(sector.to_rad)}`;
  return from_rad === undefined ? `${between} ${speed}` : `${three(from_rad)} (${between}) ${speed}`;
}
