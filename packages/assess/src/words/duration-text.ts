const MIN_S = 60;
const HOUR_S = 3600;
const DAY_S = 86_400;

/** A time span as a person says it, rounded down to what matters: `40 s`, `30 min`, `4 h`, `1 h 30 min`, `2 d`. */
export function durationText(span_s: number): string {
  const whole_s = Math.floor(span_s);
  if (whole_s < MIN_S) return `${whole_s}\u00A0s`;
  if (whole_s < HOUR_S) return `${Math.floor(whole_s / MIN_S)}\u00A0min`;
  if (whole_s >= 2 * DAY_S && whole_s % DAY_S === 0) return `${whole_s / DAY_S}\u00A0d`;
  const hours = Math.floor(whole_s / HOUR_S);
  const minutes = Math.floor((whole_s % HOUR_S) / MIN_S);
  return minutes === 0 ? `${hours}\u00A0h` : `${hours}\u00A0h ${minutes}\u00A0min`;
}
