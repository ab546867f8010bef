import { useCallback, useMemo, useRef, useState } from "react";

export interface Keeping {
  /** Something is taking its time on its way to the storage. */
  readonly busy: boolean;
  /** What was not kept, and what to do; `null` when all is well. */
  readonly trouble: string | null;
  /**
   * Runs it and says whether it was kept. What was typed stays where it is when it was not. A second tap while one is
   * on its way is no second entry: it answers false and does nothing.
   */
  keep(task: () => Promise<unknown>): Promise<boolean>;
  dismiss(): void;
}

/** A storage that answers sooner than this needs no sign that it is at work. */
const SLOW_ms = 250;

/** One place for what can go wrong when something is kept: words, never a lost entry. */
export function useKeeping(): Keeping {
  const [busy, setBusy] = useState(false);
  const [trouble, setTrouble] = useState<string | null>(null);
  const underWay = useRef(false);
  const keep = useCallback(async (task: () => Promise<unknown>) => {
    if (underWay.current) return false;
    underWay.current = true;
    const timer = setTimeout(() => setBusy(true), SLOW_ms);
    try {
      await task();
      setTrouble(null);
      return true;
    } catch (error) {
      setTrouble(error instanceof Error ? error.message : `Not kept: ${String(error)}`);
      return false;
    } finally {
      clearTimeout(timer);
      underWay.current = false;
      setBusy(false);
    }
  }, []);
  const dismiss = useCallback(() => setTrouble(null), []);
  return useMemo(() => ({ busy, trouble, keep, dismiss }), [busy, trouble, keep, dismiss]);
}
