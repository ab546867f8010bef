import { UNITS, type UnitId } from "@witnessmark/engine";
import type { Read } from "@witnessmark/ledger";
import { useId, useState } from "react";
import { understandFigure } from "../walk/understand-figure.ts";
import { FieldWrong } from "./field-wrong.tsx";

interface FigureFieldProps {
  readonly label: string;
  readonly unit: UnitId;
  /** A value that would be right. */
  readonly example: string;
  /** `null` while nothing, or nothing that can be understood, stands in the field. */
  readonly onRead: (read: Read | null) => void;
}

/** A figure typed into a field, understood as it is typed; another unit of its kind may be written after it. */
export function FigureField({ label, unit, example, onRead }: FigureFieldProps) {
  const [text, setText] = useState("");
  const [wrong, setWrong] = useState<string | null>(null);
  const id = useId();
  const change = (next: string) => {
    setText(next);
    if (next.trim() === "") {
      setWrong(null);
      onRead(null);
      return;
    }
    const understood = understandFigure(next, unit, example);
    setWrong(understood.ok ? null : understood.message);
    onRead(understood.ok ? understood.read : null);
  };
  return (
    <label className="field">
      <span>
        {label}, {UNITS[unit].symbol}
      </span>
      <input
        inputMode="text"
        value={text}
        placeholder="not given"
        aria-invalid={wrong !== null}
        aria-describedby={wrong === null ? undefined : id}
        onChange={(event) => change(event.target.value)}
        maxLength={20}
        autoComplete="off"
      />
      <FieldWrong says={wrong ?? undefined} id={id} />
    </label>
  );
}
