import type { BookFault, BookPath, Plain } from "@witnessmark/book";
import { useEffect, useRef } from "react";
import { type ToldFault, toldFault } from "./fault-words.ts";
import { useDesk } from "./use-desk.ts";

/**
 * What is told at a place of the draft: one thing, what is wrong before what is missing.
 *
 * @param value what stands there: as long as the text rests, nothing is told of what has been changed meanwhile
 * @param deep also of what is inside
 */
export function useFaultAt(path: BookPath, value: Plain | undefined, deep: boolean): ToldFault | undefined {
  const desk = useDesk();
  const read = useRef(value);
  const { isRead } = desk;
  useEffect(() => {
    if (isRead) read.current = value;
  }, [isRead, value]);
  const isAnother = !isRead && JSON.stringify(read.current) !== JSON.stringify(value);
  return isAnother ? undefined : worst(desk.faultsAt(path, deep), desk.plain);
}

function worst(faults: readonly BookFault[], plain: Plain | null): ToldFault | undefined {
  const told = faults.map((fault) => toldFault(fault, plain));
  return told.find(({ is }) => is === "wrong") ?? told[0];
}

/** What is wrong at this very place, and what to do; or calmly, what is still to be put in. */
export function FieldFault({ id, told }: { readonly id?: string; readonly told: ToldFault | undefined }) {
  if (told === undefined) return null;
  return (
    <p className={told.is === "wrong" ? "bk-fault" : "bk-need"} {...(id === undefined ? {} : { id })}>
      {told.text}
    </p>
  );
}
