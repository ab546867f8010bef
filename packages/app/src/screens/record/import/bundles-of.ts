import type { AircraftState, Origin } from "@witnessmark/ledger";

/** What was brought in from one file at one time. */
export interface Bundle {
  readonly id: string;
  readonly at_ms: number;
  readonly by: string;
  /** How many entries of it count. */
  readonly count: number;
  /** What its entries are called: one, several. */
  readonly noun: readonly [string, string];
}

const READINGS = ["reading", "readings"] as const;
const TIMED = ["entry of what runs out", "entries of what runs out"] as const;

/** What was brought in before and still counts, each file by itself, the latest first. */
export function bundlesOf(state: AircraftState): readonly Bundle[] {
  const bundles = new Map<string, Bundle & { count: number }>();
  const add = (id: string | undefined, { author }: Origin, at: string, noun: Bundle["noun"]): void => {
    if (id === undefined) return;
    const bundle = bundles.get(id) ?? { id, at_ms: Date.parse(at), by: author.name, count: 0, noun };
    bundle.count += 1;
    bundles.set(id, bundle);
  };
  for (const { readings } of state.checks.values())
    for (const reading of readings)
      add(reading.imported?.import, reading, reading.imported?.broughtInAt ?? "", READINGS);
  for (const dones of state.timedDone.values())
    for (const done of dones) add(done.import, done, done.recordedAt, TIMED);
  for (const added of state.timedAdded.values()) add(added.import, added, added.recordedAt, TIMED);
  return [...bundles.values()].sort((a, b) => b.at_ms - a.at_ms);
}
