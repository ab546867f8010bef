import type { LedgerEvent } from "@witnessmark/ledger";
import { useState } from "react";
import { Trouble } from "../../frame/trouble.tsx";
import { type Keeping, useKeeping } from "../../frame/use-keeping.ts";
import type { Draft } from "../../keep/contract.ts";
import { useKeep } from "../../keep/react.ts";

/** What was kept last from one form, until it is taken back or something else is said. */
export interface KeptHere {
  readonly keeping: Keeping;
  /** What was kept, in words; `null` before, and once taken back. */
  readonly said: string | null;
  /** Keeps the drafts as one; true when they were. */
  keepAll(drafts: readonly Draft[], said: string): Promise<boolean>;
  undo(): Promise<void>;
}

export function useKeptHere(registration: string): KeptHere {
  const keep = useKeep();
  const keeping = useKeeping();
  const [last, setLast] = useState<{ readonly events: readonly LedgerEvent[]; readonly said: string } | null>(
    null,
  );
  return {
    keeping,
    said: last?.said ?? null,
    async keepAll(drafts, said) {
      let events: readonly LedgerEvent[] = [];
      const kept = await keeping.keep(async () => {
        events = await keep.append(registration, drafts);
      });
      if (kept) setLast({ events, said });
      return kept;
    },
    async undo() {
      const events = last?.events ?? [];
      const taken = await keeping.keep(() =>
        keep.append(
          registration,
          events.map(({ id }) => ({
            type: "event.withdrawn",
            body: { event: id, why: "Undone by the one who said it" },
          })),
        ),
      );
      if (taken) setLast(null);
    },
  };
}

interface KeepRowProps {
  readonly kept: KeptHere;
  readonly act: string;
  /** Why it cannot be kept yet, once that was tried. */
  readonly fault: string | null;
}

/** The one act of a form, what it cannot keep and why, and what it kept, with its Undo. */
export function KeepRow({ kept, act, fault }: KeepRowProps) {
  return (
    <div className="after-keep">
      {fault === null ? null : (
        <p className="trouble" role="alert">
          {fault}
        </p>
      )}
      <Trouble words={kept.keeping.trouble} onDismiss={kept.keeping.dismiss} />
      {kept.said === null ? null : (
        <p className="after-kept" role="status">
          <span>{kept.said}</span>
          <button type="button" className="quiet" onClick={() => void kept.undo()}>
            Undo
          </button>
        </p>
      )}
      <button type="submit" className="button filled tall full" aria-busy={kept.keeping.busy}>
        {act}
      </button>
    </div>
  );
}
