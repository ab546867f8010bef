import { NONE_GIVEN, type Plain } from "@witnessmark/book";
import type { ReactNode } from "react";

interface LimitInputProps {
  readonly label: string;
  readonly value: Plain | undefined;
  readonly set: (to: Plain) => void;
  readonly children: ReactNode;
}

/** A limit, or the statement that the manual gives none: a box left empty says neither. */
export function LimitInput({ label, value, set, children }: LimitInputProps) {
  if (value === NONE_GIVEN) {
    return (
      <div className="bk-none-given">
        <p>The manual gives none. Nothing is held against it.</p>
        <button type="button" className="button" onClick={() => set("")}>
          Put one in<span className="out-of-sight">, {label.toLowerCase()}</span>
        </button>
      </div>
    );
  }
  return (
    <div className="bk-none-given">
      {children}
      <button type="button" className="button" onClick={() => set(NONE_GIVEN)}>
        The manual gives none<span className="out-of-sight">, {label.toLowerCase()}</span>
      </button>
    </div>
  );
}
