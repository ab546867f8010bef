import type { Lack } from "./read-work.ts";

interface SaidProps {
  readonly lack: Lack | undefined;
  readonly on: Lack["on"];
}

/** What is still to do or wrong at this place of the screen; a wrong value of an axis stands at its field already. */
export function Said({ lack, on }: SaidProps) {
  if (lack === undefined || !isSame(lack.on, on)) return null;
  if (lack.is === "wrong" && (on === "x" || on === "y")) return null;
  return (
    <p className={lack.is === "wrong" ? "chart-wrong chart-whole" : "chart-lack"} role="status">
      {lack.says}
    </p>
  );
}

const isSame = (one: Lack["on"], other: Lack["on"]): boolean =>
  typeof one === "string" || typeof other === "string" ? one === other : one.curve === other.curve;
