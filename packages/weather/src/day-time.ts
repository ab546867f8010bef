/** Day of the month and time of day, UTC: what a report carries in place of a date. */
export interface DayTime {
  readonly day: number;
  /** 0 to 23; 24 only at the end of a forecast period. */
  readonly hour: number;
  readonly minute: number;
}

/** Reads ddhhmm. `undefined` for a day, an hour or a minute that cannot be; hour 24 with minutes cannot be either. */
export function dayTimeOf(digits: string): DayTime | undefined {
  if (!/^\d{6}$/u.test(digits)) return undefined;
  const [day, hour, minute] = [0, 2, 4].map((at) => Number(digits.slice(at, at + 2)));
  if (day === undefined || hour === undefined || minute === undefined) return undefined;
  if (day < 1 || day > 31 || hour > 24 || minute > 59 || (hour === 24 && minute > 0)) return undefined;
  return { day, hour, minute };
}

const two = (figure: number): string => String(figure).padStart(2, "0");
export const clockOf = ({ hour, minute }: DayTime): string => `${two(hour)}${two(minute)}`;
export const dayTimeText = (time: DayTime): string => `${two(time.day)}${clockOf(time)}`;
