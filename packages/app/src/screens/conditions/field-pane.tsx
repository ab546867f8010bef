import type { FieldFigures, Figure, Verdict } from "@witnessmark/assess";
import type { Book } from "@witnessmark/book";
import { airCells } from "./air-cells.ts";
import { AirTable } from "./air-table.tsx";
import { type ConditionsUnits, leftText } from "./conditions-units.ts";
import { DistanceDrawing } from "./distance-drawing.tsx";
import { Effects } from "./effects.tsx";
import { performanceCells } from "./performance-cells.ts";
import { closed } from "./sentence.ts";
import { WindDrawing } from "./wind-drawing.tsx";

interface FieldPaneProps {
  readonly book: Book;
  readonly figures: FieldFigures;
  readonly verdicts: readonly Verdict[];
  readonly units: ConditionsUnits;
}

/** The figures of one field: wind on the runway, distance, air, and what they come to. */
export function FieldPane({ book, figures, verdicts, units }: FieldPaneProps) {
  return (
    <>
      <WindPart figures={figures} units={units} />
      <DistancePart figures={figures} book={book} units={units} />
      <AirTable label="Air" cells={airCells(figures, units)} />
      <Performance figures={figures} units={units} />
      <Effects verdicts={verdicts} />
    </>
  );
}

function Performance({ figures, units }: Omit<FieldPaneProps, "book" | "verdicts">) {
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

function WindPart({ figures, units }: Omit<FieldPaneProps, "book" | "verdicts">) {
  const { runway, wind, crosswind, planned } = figures;
  const margin = crosswind.value;
  const isSettled = crosswind.missing.length === 0;
  return (
    <section className="cond-sect">
      <h2>
        Runway {planned.runway}, crosswind{" "}
        {margin !== undefined && (isSettled || margin.status === "stop") ? (
          <span className={margin.status}>{leftText(margin.left_mPerS, units.speed)}</span>
        ) : (
          <span className="open">not known</span>
        )}
      </h2>
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

function DistancePart({ figures, book, units }: Omit<FieldPaneProps, "verdicts">) {
  const { role, planned, distance } = figures;
  const { value } = distance;
  const isSettled = distance.missing.length === 0;
  const name = role === "departure" ? "Take-off distance" : "Landing distance";
  return (
    <section className="cond-sect">
      <h2>
        {name}, {planned.condition}{" "}
        {value !== undefined && (isSettled || value.status === "stop") ? (
          <span className={value.status}>{leftText(value.nearest.left_m, units.distance)}</span>
        ) : (
          <span className="open">not known</span>
        )}
      </h2>
      {value === undefined ? null : (
        <DistanceDrawing distance={value} geometry={book.geometry} unit={units.distance} />
      )}
      <Missing figure={distance} />
    </section>
  );
}

function Missing({ figure }: { readonly figure: Figure<unknown> }) {
  if (figure.missing.length === 0) return null;
  return (
    <p className="cond-missing">{closed(`Missing: ${figure.missing.map(({ what }) => what).join("; ")}`)}</p>
  );
}
