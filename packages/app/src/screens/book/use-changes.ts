import { changeWords, plainOf } from "@witnessmark/book";
import { useMemo } from "react";
import { useDesk } from "./use-desk.ts";

const NONE: readonly string[] = [];

/** The revision that the draft was begun from; `null` for a book never issued. */
export function useBefore() {
  const base = useDesk().draft?.base?.text;
  return useMemo(() => {
    const read = base === undefined ? undefined : plainOf(base, "the book");
    return read?.ok === true ? read.plain : null;
  }, [base]);
}

/** What the draft says otherwise than the revision it was begun from; nothing for a book never issued. */
export function useChanges(): readonly string[] {
  const { plain } = useDesk();
  const before = useBefore();
  return useMemo(
    () => (before === null || plain === null ? NONE : changeWords(before, plain)),
    [before, plain],
  );
}
