import { UNITS, type UnitId } from "@witnessmark/engine";
import type { Read } from "@witnessmark/ledger";
import { type FormEvent, useId, useRef, useState } from "react";
import { Popup } from "../../frame/popup.tsx";
import { figure, understoodText } from "../../words/figures.ts";

/** What was typed, understood; or why it was not, in words for the person who typed it. */
export type Understood =
  | { readonly ok: true; readonly read: Read }
  | { readonly ok: false; readonly message: string };

interface FigurePopupProps {
  readonly title: string;
  readonly units: readonly UnitId[];
  readonly unit: UnitId;
  readonly value: number | null;
  readonly decimals: number;
  readonly step: number;
  readonly hint?: string;
  readonly understand: (text: string, unit: UnitId) => Understood;
  /** The figure as it was typed, in the unit it was typed in: never converted on the way. */
  readonly onSet: (read: Read) => void;
  /** Where a figure may be taken away again: set with nothing typed, it is not known. */
  readonly onEmpty?: () => void;
  readonly onClose: () => void;
}

/** A figure typed: it says what it understood, and refuses what cannot be, with a reason. */
export function FigurePopup(props: FigurePopupProps) {
  const { value, decimals, step } = props;
  const id = useId();
  const field = useRef<HTMLInputElement>(null);
  const [unit, setUnit] = useState(props.unit);
  const [text, setText] = useState(value === null ? "" : plain(value, decimals));
  const [asked, setAsked] = useState(false);
  const typed = props.understand(text, unit);
  const isEmpty = props.onEmpty !== undefined && text.trim() === "";
  const send = (event: FormEvent) => {
    event.preventDefault();
    setAsked(true);
    if (isEmpty) props.onEmpty?.();
    else if (typed.ok) props.onSet(typed.read);
  };
  const nudge = (way: 1 | -1) => {
    const from = typed.ok ? typed.read.value : (value ?? 0);
    setText(plain(from + way * step, decimals));
  };
  const refused = !isEmpty && !typed.ok && (asked || text !== "");
  return (
    <Popup title={props.title} onClose={props.onClose} first={field}>
      <form className="popup-body" onSubmit={send} noValidate>
        {props.hint === undefined ? null : <p className="note">{props.hint}</p>}
        <div className="figure-entry">
          <button type="button" className="step-button" onClick={() => nudge(-1)} aria-label="Less">
            −
          </button>
          <input
            ref={field}
            value={text}
            onChange={(event) => setText(event.target.value)}
            inputMode="decimal"
            autoComplete="off"
            aria-label={`${props.title} in ${UNITS[unit].symbol || "plain figures"}`}
            aria-invalid={refused}
            aria-describedby={id}
          />
          <button type="button" className="step-button" onClick={() => nudge(1)} aria-label="More">
            +
          </button>
        </div>
        {props.units.length > 1 ? (
          <label className="field figure-unit">
            <span>Read in</span>
            <select
              value={unit}
              onChange={(event) => setUnit(props.units.find((each) => each === event.target.value) ?? unit)}
            >
              {props.units.map((each) => (
                <option key={each} value={each}>
                  {UNITS[each].symbol || "plain figures"}
                </option>
              ))}
            </select>
          </label>
        ) : null}
        <p className={refused ? "figure-echo stop" : "figure-echo"} id={id} role="status">
          {typed.ok
            ? understoodText(typed.read, typed.read.unit === props.unit ? decimals : 0)
            : refused
              ? `${typed.message.replace(/[.?]$/, "")}${typed.message.endsWith("?") ? "?" : "."}`
              : isEmpty && value !== null
                ? "Understood: not known. What rests on it is open again."
                : ""}
        </p>
        <button type="submit" className="button filled tall full">
          Set
        </button>
      </form>
    </Popup>
  );
}

const plain = (value: number, decimals: number) => figure(value, decimals).replaceAll(",", "");
