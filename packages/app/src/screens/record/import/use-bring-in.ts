import { newId } from "@witnessmark/ledger";
import { useCallback, useMemo, useRef, useState } from "react";
import type { Draft } from "../../../keep/contract.ts";
import { useKeep } from "../../../keep/react.ts";
import type { Plan } from "./plan.ts";

/** So many rows are hashed and kept at once: what is kept stays kept when the phone dies in between. */
const BATCH = 125;

export interface Brought {
  /** The id that all of it has in common, by which it is taken back. */
  readonly bundle: string;
  /** How many rows are on record, of how many that were to be. */
  readonly count: number;
  readonly of: number;
  readonly noun: readonly [string, string];
  readonly takenBack: boolean;
}

/** What is being done now. */
export type UnderWay =
  | { readonly is: "coming-in"; readonly done: number; readonly of: number; readonly isStopping: boolean }
  | { readonly is: "going-back" };

export interface BringIn {
  readonly underWay: UnderWay | null;
  readonly brought: Brought | null;
  readonly trouble: string | null;
  bringIn(plan: Plan): Promise<void>;
  /** Ends the bringing in after the rows that are being kept; nothing of a row is kept without the rest of it. */
  stop(): void;
  /** Goes on where it was stopped. */
  goOn(): Promise<void>;
  /** Takes back all that came from one file, in one step. */
  takeBack(what: Omit<Brought, "takenBack">): Promise<void>;
  forget(): void;
}

interface Coming {
  readonly bundle: string;
  readonly rows: readonly (readonly Draft[])[];
  readonly noun: Brought["noun"];
  readonly done: number;
}

/** Keeps what a file brings in batches of whole rows, and takes it back by one withdrawal. */
export function useBringIn(registration: string): BringIn {
  const keep = useKeep();
  const [underWay, setUnderWay] = useState<UnderWay | null>(null);
  const [brought, setBrought] = useState<Brought | null>(null);
  const [trouble, setTrouble] = useState<string | null>(null);
  const coming = useRef<Coming | null>(null);
  const isBusy = useRef(false);
  const isStopped = useRef(false);

  const alone = useCallback(async (work: () => Promise<void>) => {
    if (isBusy.current) return;
    isBusy.current = true;
    isStopped.current = false;
    setTrouble(null);
    try {
      await work();
    } catch (error) {
      setTrouble(error instanceof Error ? error.message : String(error));
    } finally {
      isBusy.current = false;
      setUnderWay(null);
    }
  }, []);

  const goOn = useCallback(
    () =>
      alone(async () => {
        const { current: begun } = coming;
        if (begun === null) return;
        const { bundle, rows, noun } = begun;
        let { done } = begun;
        try {
          while (done < rows.length && !isStopped.current) {
            setUnderWay({ is: "coming-in", done, of: rows.length, isStopping: false });
            const some = rows.slice(done, done + BATCH);
            await keep.append(registration, some.flat());
            done += some.length;
          }
        } finally {
          coming.current = done < rows.length ? { ...begun, done } : null;
          if (done > 0) setBrought({ bundle, count: done, of: rows.length, noun, takenBack: false });
        }
      }),
    [alone, keep, registration],
  );
  const bringIn = useCallback(
    (plan: Plan) => {
      const bundle = newId();
      coming.current = { bundle, rows: plan.drafts(bundle), noun: plan.noun, done: 0 };
      return goOn();
    },
    [goOn],
  );
  const stop = useCallback(() => {
    isStopped.current = true;
    setUnderWay((now) => (now?.is === "coming-in" ? { ...now, isStopping: true } : now));
  }, []);
  const takeBack = useCallback(
    (what: Omit<Brought, "takenBack">) =>
      alone(async () => {
        setUnderWay({ is: "going-back" });
        const why = "Brought in from a file, and taken back";
        await keep.append(registration, [{ type: "event.withdrawn", body: { event: what.bundle, why } }]);
        coming.current = null;
        setBrought({ ...what, takenBack: true });
      }),
    [alone, keep, registration],
  );
  const forget = useCallback(() => {
    coming.current = null;
    setBrought(null);
    setTrouble(null);
  }, []);
  return useMemo(
    () => ({ underWay, brought, trouble, bringIn, stop, goOn, takeBack, forget }),
    [underWay, brought, trouble, bringIn, stop, goOn, takeBack, forget],
  );
}
