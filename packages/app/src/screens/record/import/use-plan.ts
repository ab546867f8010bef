import type { Table } from "@witnessmark/record";
import { useEffect, useState } from "react";
import type { OpenAircraft } from "../../../frame/open-aircraft.ts";
import { type Plan, planOf, type Settled } from "./plan.ts";

export interface Planning {
  /** `null` while the file is read. */
  readonly plan: Plan | null;
  /** How many rows have been read. */
  readonly read: number;
  readonly trouble: string | null;
}

const NOTHING: Planning = { plan: null, read: 0, trouble: null };

/** What a plan was made of: with another of these it is another plan. */
interface About {
  readonly table: Table | null;
  readonly settled: Settled | null;
  readonly book: OpenAircraft["book"];
  readonly state: OpenAircraft["state"];
}

interface Found extends Planning, About {}

/**
 * How a file reads, as it was settled; read anew when that changes, or what is on record does.
 *
 * @param isHeld what was looked at is what is brought in: meanwhile the file is not read again
 */
export function usePlan(
  { book, state, person }: OpenAircraft,
  table: Table | null,
  settled: Settled | null,
  isHeld: boolean,
): Planning {
  const [found, setFound] = useState<Found>({ ...NOTHING, table, settled, book, state });
  useEffect(() => {
    if (table === null || settled === null || isHeld) return;
    const giveUp = new AbortController();
    const request = { book, state, table, settled, now_ms: Date.now(), person: person.id };
    const about = { table, settled, book, state };
    const say = (change: (before: Planning) => Planning) => {
      if (giveUp.signal.aborted) return;
      setFound((before) => ({ ...change(isAbout(before, about) ? before : NOTHING), ...about }));
    };
    planOf(request, (read) => say((before) => ({ ...before, read })), giveUp.signal).then(
      (plan) => say((before) => (plan === null ? before : { ...NOTHING, plan })),
      (error: unknown) =>
        say(() => ({ ...NOTHING, trouble: error instanceof Error ? error.message : String(error) })),
    );
    return () => giveUp.abort();
  }, [book, state, person.id, table, settled, isHeld]);
  return isAbout(found, { table, settled, book, state }) ? found : NOTHING;
}

const isAbout = (found: About, now: About): boolean =>
  found.table === now.table &&
  found.settled === now.settled &&
  found.book === now.book &&
  found.state === now.state;
