import { type FieldFigures, type Figure, hottestThatFits, type Verdict } from "@witnessmark/assess";
import type { Book } from "@witnessmark/book";
import type { OwnMinima } from "@witnessmark/ledger";
import { ended } from "@witnessmark/sheet";
import { useMemo } from "react";
import { airCells } from "./air-cells.ts";
import { AirTable } from "./air-table.tsx";
import { type ConditionsUnits, exactLeft_m, leftText, safeText, toLimitText } from "./conditions-units.ts";
import { DistanceDrawing } from "./distance-drawing.tsx";
import { Effects } from "./effects.tsx";
import { performanceCells } from "./performance-cells.ts";
import { WindDrawing } from "./wind-drawing.tsx";
import { windsWords } from "./wind-words.ts";

interface FieldPaneProps {
  readonly book: Book;
  readonly figures: FieldFigures;
  readonly own: OwnMinima | undefined;
  readonly verdicts: readonly Verdict[];
  readonly units: ConditionsUnits;
}

/** The figures of one field: wind on the runway, distance, air, and what they come to. */
export function FieldPane({ book, figures, own, verdicts, units }: FieldPaneProps) {
  return (
    <>
      <WindPart figures={figures} units={units} />
      <DistancePart figures={figures} book={book} own={own} units={units} />
      <AirTable label="Air" cells={airCells(figures, units)} />
      <Performance figures={figures} units={units} />
      <Effects verdicts={verdicts} />
    </>
  );
}

function Performance({ figures, units }: Pick<FieldPaneProps, "figures" | "units">) {
  const cells = performanceCells(figures, units);
  if (cells.length === 0) return null;
  const name = figures.role === "departure" ? "Climb and speeds" : "Speeds";
  return (
    <>
      <h2 className="cond-cells-head">{name}</h2>
      <AirTable label={name} cells={cells} />
    </>
  );
}

function WindPart({ figures, units }: Pick<FieldPaneProps, "figures" | "units">) {
  const { runway, wind, crosswind, planned } = figures;
  const margin = crosswind.value;
  const isSettled = crosswind.missing.length === 0;
  return (
    <section className="cond-sect">
      <h2>
        {planned.runway === undefined ? "Crosswind" : `Runway ${planned.runway}, crosswind`}{" "}
        {margin !== undefined && (isSettled || margin.status === "stop") ? (
          <span className={margin.status}>{toLimitText(margin.left_mPerS, units.speed)}</span>
        ) : (
          <span className="open">not known</span>
        )}
      </h2>
      {margin === undefined || wind.value === undefined ? null : (
        <p className="cond-winds">{windsWords(wind.value, units.speed)}</p>
      )}
      {margin === undefined || wind.value === undefined || runway === undefined ? null : (
        <WindDrawing
          wind={wind.value}
          margin={margin}
          runway={runway.name}
          heading_deg={runway.trueHeading_deg}
          unit={units.speed}
        />
      )}
      <Missing figure={crosswind} />
    </section>
  );
}

function DistancePart({ figures, book, own, units }: Omit<FieldPaneProps, "verdicts">) {
  const { role, planned, distance } = figures;
  const { value } = distance;
  const isSettled = distance.missing.length === 0;
  const name = role === "departure" ? "Take-off distance" : "Landing distance";
  return (
    <section className="cond-sect">
      <h2>
        {name}
        {planned.condition === undefined ? "" : `, ${planned.condition}`}{" "}
        {value !== undefined && (isSettled || value.status === "stop") ? (
          <span className={value.status}>{leftText(exactLeft_m(value.nearest), units.distance)}</span>
        ) : (
          <span className="open">not known</span>
        )}
      </h2>
      {value === undefined ? null : (
        <DistanceDrawing distance={value} geometry={book.geometry} unit={units.distance} />
      )}
      {value === undefined ? null : <Hottest distance={value} {...{ book, figures, own, units }} />}
      <Missing figure={distance} />
    </section>
  );
}

/** At which temperature the runway is gone, with everything else as it is. */
function Hottest({
  distance,
  book,
  figures,
  own,
  units,
}: Omit<FieldPaneProps, "verdicts"> & {
  readonly distance: NonNullable<FieldFigures["distance"]["value"]>;
}) {
  const found = useMemo(() => hottestThatFits(book, figures, distance, own), [book, figures, distance, own]);
  if (found === undefined) return null;
  const unit = units.temperature;
  const hottest = safeText(found.oat_K, unit, "down");
  return (
    <p className="cond-hottest">
      {found.isEndOfTable ? (
        <>
          Still fits at <b>{hottest}</b>, where the table ends.
        </>
      ) : (
        <>
          Fits up to <b>{hottest}</b>; hotter, it is gone.
        </>
      )}
    </p>
  );
}

function Missing({ figure }: { readonly figure: Figure<unknown> }) {
  if (figure.missing.length === 0) return null;
  return (
    <p className="cond-missing">{ended(`Missing: ${figure.missing.map(({ what }) => what).join("; ")}`)}</p>
  );
}
