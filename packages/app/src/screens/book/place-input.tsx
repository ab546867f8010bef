import type { BookEdit, BookPath, Plain } from "@witnessmark/book";
import { valueAt } from "@witnessmark/book";
import { useEffect, useState } from "react";
import { plainText } from "./field-input.tsx";
import { useDesk } from "./use-desk.ts";

/** The two or three figures of a place, metres from the datum. */
export function PlaceInput({
  path,
  value,
  ways,
  label,
  optional = false,
}: {
  readonly path: BookPath;
  readonly value: Plain | undefined;
  readonly ways: readonly string[];
  readonly label: string;
  readonly optional?: boolean;
}) {
  const desk = useDesk();
  return (
    <div className="bk-boxes">
      {ways.map((way, axis) => (
        <Box
          key={way}
          label={`${label}, ${way}, metres`}
          unit={`m ${way}`}
          value={Array.isArray(value) ? plainText(value[axis]) : ""}
          onKeep={(text) => {
            const metres = Number(text.replace("−", "-").replace(",", "."));
            const to = text === "" || Number.isNaN(metres) ? text : metres;
            if (!Array.isArray(value)) {
              // the first figure of a place that is not there yet; the others are asked for
              desk.edit([{ set: path, to: ways.map((_, index) => (index === axis ? to : "")) }]);
              return;
            }
            const isEmptied = value.every((each, index) => index === axis || each === "");
            if (optional && text === "" && isEmptied) desk.edit([{ remove: path }]);
            else desk.edit(desk.plain === null ? [] : placeEdits(desk.plain, path, axis, to));
          }}
        />
      ))}
    </div>
  );
}

/** One figure of a place, and that of its mirror image with it. */
export function placeEdits(plain: Plain, path: BookPath, axis: number, to: Plain): readonly BookEdit[] {
  const mine: BookEdit = { set: [...path, axis], to };
  const [list, index] = path;
  if (list !== "points" || typeof index !== "number" || typeof to !== "number") return [mine];
  const other = mirrorOf(plain, index);
  return other === undefined
    ? [mine]
    : [mine, { set: ["points", other, "place", axis], to: axis === 1 ? 0 - to : to }];
}

/** Where the mirror image of a point stands in the list, whichever of the two says it. */
export function mirrorOf(plain: Plain, index: number): number | undefined {
  const points = valueAt(plain, ["points"]);
  if (!Array.isArray(points)) return undefined;
  const mine: Plain = points[index];
  const found = points.findIndex(
    (point: Plain) =>
      (valueAt(point, ["id"]) !== undefined && valueAt(point, ["id"]) === valueAt(mine, ["mirrors"])) ||
      (valueAt(point, ["mirrors"]) !== undefined && valueAt(point, ["mirrors"]) === valueAt(mine, ["id"])),
  );
  return found < 0 ? undefined : found;
}

export function Box({
  label,
  unit,
  value,
  onKeep,
}: {
  readonly label: string;
  readonly unit: string;
  readonly value: string;
  readonly onKeep: (text: string) => void;
}) {
  const [typed, setTyped] = useState(value);
  useEffect(() => setTyped(value), [value]);
  const keep = () => {
    if (typed.trim() !== value) onKeep(typed.trim());
  };
  return (
    <label className="bk-box">
      <input
        aria-label={label}
        value={typed}
        inputMode="text"
        autoComplete="off"
        onChange={(event) => setTyped(event.target.value)}
        onBlur={keep}
        onKeyDown={(event) => event.key === "Enter" && keep()}
      />
      <small aria-hidden="true">{unit}</small>
    </label>
  );
}
