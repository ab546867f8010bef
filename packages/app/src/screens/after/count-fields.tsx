/** So many of each, by a name of their own. */
export type Counts<K extends string> = Readonly<Record<K, number>>;

/** A pilot makes fewer than this of anything on one day. */
const MOST = 99;

interface CountFieldsProps<K extends string> {
  readonly names: Readonly<Record<K, string>>;
  readonly counts: Counts<NoInfer<K>>;
  readonly onCounts: (counts: Counts<NoInfer<K>>) => void;
}

/** Whole numbers side by side: landings, approaches. */
export function CountFields<K extends string>({ names, counts, onCounts }: CountFieldsProps<K>) {
  return (
    <div className="after-pair">
      {(Object.keys(names) as K[]).map((key) => (
        <label className="field" key={key}>
          <span>{names[key]}</span>
          <input
            type="number"
            inputMode="numeric"
            min={0}
            max={MOST}
            step={1}
            value={counts[key]}
            onChange={(event) => onCounts({ ...counts, [key]: whole(event.target.value) })}
          />
        </label>
      ))}
    </div>
  );
}

const whole = (text: string): number => Math.min(MOST, Math.max(0, Math.trunc(Number(text) || 0)));

/** What cannot be of landings at night; `null` when it can. */
export const nightFault = (night: number, toFullStop: number): string | null =>
  toFullStop > night ? "More full stops at night than landings at night: look at the figures." : null;

/** What cannot be of landings by day; `null` when it can. */
export const fullStopFault = (day: number, toFullStop: number): string | null =>
  toFullStop > day ? "More full stops by day than landings by day: look at the figures." : null;
