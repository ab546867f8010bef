import type { BookPath, Plain } from "@witnessmark/book";
import { plainText } from "./field-input.tsx";
import { Box } from "./place-input.tsx";
import { useDesk } from "./use-desk.ts";
import { gaugeUnitAt, withUnit } from "./with-unit.ts";

interface SpanInputProps {
  readonly path: BookPath;
  readonly value: Plain | undefined;
  readonly label: string;
  readonly optional: boolean;
  readonly note: string | undefined;
}

/** Two values in the unit of a gauge, low end first; both left empty, neither stands in the book. */
export function SpanInput({ path, value, label, optional, note }: SpanInputProps) {
  const desk = useDesk();
  const unit = gaugeUnitAt(desk.plain, path);
  const ends: readonly Plain[] = Array.isArray(value) ? value : ["", ""];
  const keep = (index: number, text: string) => {
    const to = withUnit(text, ends[index], unit === undefined ? [] : [unit]);
    const next = [0, 1].map((at) => (at === index ? to : plainText(ends[at])));
    if (next.some((end) => end !== "") || !optional) desk.edit([{ set: path, to: next }]);
    else if (value !== undefined) desk.edit([{ remove: path }]);
  };
  return (
    <>
      <div className="bk-boxes">
        {["from", "to"].map((end, index) => (
          <Box
            key={end}
            label={`${label}, ${end}`}
            unit={end}
            value={plainText(ends[index])}
            onKeep={(text) => keep(index, text)}
          />
        ))}
      </div>
      {value !== undefined || note === undefined ? null : <p className="bk-need">{note}</p>}
    </>
  );
}
