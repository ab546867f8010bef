/** What one outlet delivers at a cabin altitude, as the equipment's table has it; free oxygen, NTPD. */
export interface FlowRow {
  readonly cabinAltitude_m: number;
  readonly flow_m3PerS: number;
}

export type FlowFound =
  | { readonly ok: true; readonly flow_m3PerS: number }
  | {
      readonly ok: false;
      readonly why: "off-the-table";
      readonly asked_m: number;
      /** The nearest cabin altitude that the table covers. */
      readonly nearest_m: number;
    }
  | { readonly ok: false; readonly why: "no-table" | "not-ascending" | "not-a-number" };

/** What a conversion from feet may leave over at the end of a table. */
const ROUNDING_M = 1e-6;

const isSound = ({ cabinAltitude_m, flow_m3PerS }: FlowRow): boolean =>
  Number.isFinite(cabinAltitude_m) && Number.isFinite(flow_m3PerS) && flow_m3PerS >= 0;

/**
 * The flow of one outlet at a cabin altitude: linear between two rows, never beyond the first or the last.
 *
 * @param table rows by ascending cabin altitude, at least one
 * @param cabinAltitude_m pressure altitude of the cabin
 */
export function flowAt(table: readonly FlowRow[], cabinAltitude_m: number): FlowFound {
  const [first] = table;
  const last = table.at(-1);
  if (first === undefined || last === undefined) return { ok: false, why: "no-table" };
  if (!table.every(isSound) || !Number.isFinite(cabinAltitude_m)) return { ok: false, why: "not-a-number" };
  const ascends = table.every((row, at) => {
    const before = table[at - 1];
    return before === undefined || before.cabinAltitude_m < row.cabinAltitude_m;
  });
  if (!ascends) return { ok: false, why: "not-ascending" };
  const off = (nearest_m: number): FlowFound => ({
    ok: false,
    why: "off-the-table",
    asked_m: cabinAltitude_m,
    nearest_m,
  });
  if (cabinAltitude_m < first.cabinAltitude_m - ROUNDING_M) return off(first.cabinAltitude_m);
  if (cabinAltitude_m > last.cabinAltitude_m + ROUNDING_M) return off(last.cabinAltitude_m);
  const above = table.findIndex((row) => row.cabinAltitude_m >= cabinAltitude_m);
  const upper = table[above] ?? last;
  const lower = table[above - 1] ?? upper;
  if (above <= 0 || upper === lower) return { ok: true, flow_m3PerS: upper.flow_m3PerS };
  const share = (cabinAltitude_m - lower.cabinAltitude_m) / (upper.cabinAltitude_m - lower.cabinAltitude_m);
  return { ok: true, flow_m3PerS: lower.flow_m3PerS + share * (upper.flow_m3PerS - lower.flow_m3PerS) };
}
