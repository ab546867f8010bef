import { useEffect, useState } from "react";
import { useKeep } from "../../keep/react.ts";

/** A book in the making on this phone. */
export interface DraftHere {
  readonly registration: string;
  readonly type: string;
  readonly changedAt_ms: number;
  /** The revision that it changes; `null` for a book never issued. */
  readonly from: number | null;
}

/** The drafts on this phone, the last changed first; none until the storage has said. */
export function useDrafts(): { readonly drafts: readonly DraftHere[]; readonly trouble: string | null } {
  const keep = useKeep();
  const [drafts, setDrafts] = useState<readonly DraftHere[]>([]);
  const [trouble, setTrouble] = useState<string | null>(null);
  useEffect(() => {
    let left = false;
    keep.drafts.all().then(
      (rows) => {
        if (left) return;
        setDrafts(
          rows
            .map(({ registration, draft, changedAt_ms }) => ({
              registration,
              changedAt_ms,
              type: /^ {2}type: (.+)$/m.exec(draft.text)?.[1] ?? "",
              from: draft.base?.revision ?? null,
            }))
            .toSorted((a, b) => b.changedAt_ms - a.changedAt_ms),
        );
      },
      (error: unknown) => {
        if (!left) setTrouble(error instanceof Error ? error.message : String(error));
      },
    );
    return () => {
      left = true;
    };
  }, [keep]);
  return { drafts, trouble };
}
