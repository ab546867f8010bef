import { fromSI, roundToSafeSide, type Wind } from "@witnessmark/engine";

const three = (angle_rad: number): string => {
  const whole = Math.round(fromSI(angle_rad, "deg")) % 360;
  return `${String(whole === 0 ? 360 : whole).padStart(3, "0")}°`;
};

const knots = (speed_mPerS: number): string => String(roundToSafeSide(fromSI(speed_mPerS, "kt"), 1, "up"));

/** `240° 14 G 22 kt`, `variable 4 kt`, `240° (180° to 300°) 14 kt`, `calm`. Speeds in whole knots, rounded up. */
export function windText({ direction, speed_mPerS, gust_mPerS }: Wind): string {
  if (speed_mPerS === 0 && (gust_mPerS ?? 0) === 0) return "calm";
  const gust = gust_mPerS === undefined ? "" : ` G ${knots(gust_mPerS)}`;
  const speed = `${knots(speed_mPerS)}${gust}\u00A0kt`;
  if (direction.kind === "variable") return `variable ${speed}`;
  if (direction.kind === "from") return `${three(direction.from_rad)} ${speed}`;
  const { sector, from_rad } = direction;
  const between = `${three(sector.from_rad)} to ${three(sector.to_rad)}`;
  return from_rad === undefined ? `${between} ${speed}` : `${three(from_rad)} (${between}) ${speed}`;
}
