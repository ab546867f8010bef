import { useEffect, useState } from "react";
import { justKept, type Said } from "../../walk/just-kept.ts";
import { clockTime } from "../../words/dates.ts";

interface KeptStripProps {
  readonly said: Said | null;
  readonly onUndo: (() => void) | undefined;
}

/** It gives way to the drawing after a while; Undo itself stays. */
const SHOWN_ms = 12_000;
/** On a tablet it lies over Undo and More: what offers no Undo of its own lets them free sooner. */
const SHOWN_WITHOUT_UNDO_ms = 4_000;

/** "Right strut, as it should be. Kept 07:41." with a way back. Said only once the storage has committed. */
export function KeptStrip({ said: before, onUndo }: KeptStripProps) {
  const said = justKept.use() ?? before;
  const [gone, setGone] = useState("");
  const hasUndo = onUndo !== undefined;
  const key = said === null ? "" : `${said.at_ms} ${said.name} ${said.words}`;
  useEffect(() => {
    if (key === "") return;
    const timer = setTimeout(() => setGone(key), hasUndo ? SHOWN_ms : SHOWN_WITHOUT_UNDO_ms);
    return () => clearTimeout(timer);
  }, [key, hasUndo]);
  const shown = said !== null && key !== gone;
  return (
    <div className={shown ? "kept-strip" : "kept-strip kept-none"}>
      <p role="status">
        {shown ? (
          <>
            {said.name === undefined ? null : <b>{said.name}, </b>}
            {said.words}. Kept {clockTime(said.at_ms)}.
          </>
        ) : null}
      </p>
      {shown && onUndo !== undefined ? (
        <button type="button" onClick={onUndo}>
          Undo
        </button>
      ) : null}
    </div>
  );
}
