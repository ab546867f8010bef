/** Quantities that count from midnight, by id. */
const FROM_MIDNIGHT = new Set(["civil-dawn", "sunrise", "sunset", "civil-dusk"]);
const DAY_s = 86_400;

/** The clock that a time after midnight stands for, to the minute; undefined for what is no time of day. */
export function clockOf(quantity: string, value_s: number): string | undefined {
  if (!FROM_MIDNIGHT.has(quantity)) return undefined;
  const minutes = Math.round((((value_s % DAY_s) + DAY_s) % DAY_s) / 60) % 1440;
  const two = (n: number) => String(n).padStart(2, "0");
  return `${two(Math.floor(minutes / 60))}:${two(minutes % 60)}`;
}
