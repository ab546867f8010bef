import { changeWords, plainOf } from "@witnessmark/book";
import { useMemo } from "react";
import { useDesk } from "./use-desk.ts";

const NONE: readonly string[] = [];

/** What the draft says otherwise than the revision it was begun from; nothing for a book never issued. */
export function useChanges(): readonly string[] {
  const { draft, plain } = useDesk();
  const base = draft?.base?.text;
  const before = useMemo(() => {
    const read = base === undefined ? undefined : plainOf(base, "the book");
    return read?.ok === true ? read.plain : null;
  }, [base]);
  return useMemo(
    () => (before === null || plain === null ? NONE : changeWords(before, plain)),
    [before, plain],
  );
}
