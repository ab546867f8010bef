import { newId } from "@witnessmark/ledger";
import { useCallback, useMemo, useRef, useState } from "react";
import type { Draft } from "../../../keep/contract.ts";
import { useKeep } from "../../../keep/react.ts";
import type { Plan } from "./plan.ts";

/** So many events are hashed and kept at once: what is kept stays kept when the phone dies in between. */
const BATCH = 200;
/** To take back what stands far behind folds everything anew, once for each batch: those are few and large. */
const BACK_BATCH = 2_000;

export interface Brought {
  /** Ids of the events that were kept. */
  readonly events: readonly string[];
  /** How many rows they came from. */
  readonly count: number;
  readonly noun: readonly [string, string];
  readonly takenBack: boolean;
}

export interface BringIn {
  /** How far it is; `null` when nothing is under way. */
  readonly progress: { readonly done: number; readonly of: number } | null;
  readonly brought: Brought | null;
  readonly trouble: string | null;
  bringIn(plan: Plan): Promise<void>;
  takeBack(events: readonly string[], noun: Brought["noun"]): Promise<void>;
  forget(): void;
}

/** Keeps what a file brings in batches, and takes it back by withdrawing each event. */
export function useBringIn(registration: string): BringIn {
  const keep = useKeep();
  const [progress, setProgress] = useState<BringIn["progress"]>(null);
  const [brought, setBrought] = useState<Brought | null>(null);
  const [trouble, setTrouble] = useState<string | null>(null);
  const underWay = useRef(false);
  const inBatches = useCallback(
    async (drafts: readonly Draft[], left: string, batch = BATCH): Promise<readonly string[]> => {
      if (underWay.current) return [];
      underWay.current = true;
      setTrouble(null);
      const kept: string[] = [];
      try {
        for (let from = 0; from < drafts.length; from += batch) {
          setProgress({ done: from, of: drafts.length });
          const events = await keep.append(registration, drafts.slice(from, from + batch));
          kept.push(...events.map(({ id }) => id));
        }
      } catch (error) {
        const why = error instanceof Error ? error.message : String(error);
        setTrouble(`${why} ${kept.length} of ${drafts.length} ${left}`);
      } finally {
        underWay.current = false;
        setProgress(null);
      }
      return kept;
    },
    [keep, registration],
  );
  const bringIn = useCallback(
    async (plan: Plan) => {
      const drafts = plan.drafts(newId());
      const events = await inBatches(drafts, "were brought in; the others can be brought in again.");
      if (events.length > 0) {
        const count = events.length === drafts.length ? plan.count : events.length;
        setBrought({ events, count, noun: plan.noun, takenBack: false });
      }
    },
    [inBatches],
  );
  const takeBack = useCallback(
    async (events: readonly string[], noun: Brought["noun"]) => {
      const drafts = events.map(
        (event): Draft => ({
          type: "event.withdrawn",
          body: { event, why: "Brought in from a file, and taken back" },
        }),
      );
      const kept = await inBatches(drafts, "were taken back.", BACK_BATCH);
      if (kept.length < events.length) return;
      setBrought((before) =>
        before === null
          ? { events, count: events.length, noun, takenBack: true }
          : { ...before, takenBack: true },
      );
    },
    [inBatches],
  );
  const forget = useCallback(() => {
    setBrought(null);
    setTrouble(null);
  }, []);
  return useMemo(
    () => ({ progress, brought, trouble, bringIn, takeBack, forget }),
    [progress, brought, trouble, bringIn, takeBack, forget],
  );
}
