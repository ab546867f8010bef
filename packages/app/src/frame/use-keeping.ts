import { useCallback, useState } from "react";

export interface Keeping {
  /** Something is on its way to the storage: a second tap would say it twice. */
  readonly busy: boolean;
  /** What was not kept, and what to do; `null` when all is well. */
  readonly trouble: string | null;
  /** Runs it and says whether it was kept. What was typed stays where it is when it was not. */
  keep(task: () => Promise<unknown>): Promise<boolean>;
  dismiss(): void;
}

/** One place for what can go wrong when something is kept: words, never a lost entry. */
export function useKeeping(): Keeping {
  const [busy, setBusy] = useState(false);
  const [trouble, setTrouble] = useState<string | null>(null);
  const keep = useCallback(async (task: () => Promise<unknown>) => {
    setBusy(true);
    try {
      await task();
      setTrouble(null);
      return true;
    } catch (error) {
      setTrouble(error instanceof Error ? error.message : `Not kept: ${String(error)}`);
      return false;
    } finally {
      setBusy(false);
    }
  }, []);
  const dismiss = useCallback(() => setTrouble(null), []);
  return { busy, trouble, keep, dismiss };
}
