import type { FieldFigures } from "@witnessmark/assess";
import type { UnitId } from "@witnessmark/engine";
import type { PlannedField, TypedConditions } from "@witnessmark/ledger";
import { clockTime, isoWithOffset, lasting } from "../../words/dates.ts";
import { Fold } from "./fold.tsx";
import { MeasureField, type MeasureWord } from "./measure-field.tsx";
import { withPart, withTyped, withVariableWind } from "./plan-field.ts";
import { sentence } from "./sentence.ts";

type Part = Exclude<keyof TypedConditions, "observedAt" | "windVariable">;

const PARTS: readonly {
  readonly part: Part;
  readonly label: string;
  readonly units: readonly [UnitId, ...UnitId[]];
  readonly example: string;
}[] = [
  { part: "windFrom", label: "Wind from, true", units: ["deg"], example: "240" },
  { part: "windSpeed", label: "Wind speed", units: ["kt", "mPerS", "kmPerH", "mph"], example: "14" },
  { part: "windGust", label: "Gust", units: ["kt", "mPerS", "kmPerH", "mph"], example: "22" },
  { part: "oat", label: "Temperature", units: ["degC", "degF"], example: "5" },
  { part: "dewPoint", label: "Dew point", units: ["degC", "degF"], example: "3" },
  { part: "qnh", label: "QNH", units: ["hPa", "inHg"], example: "1008" },
  { part: "visibility", label: "Visibility", units: ["m", "km", "mi"], example: "9000" },
  { part: "ceiling", label: "Ceiling above the field", units: ["ft", "m"], example: "2200" },
];

interface TypedEntryProps {
  readonly planned: PlannedField;
  readonly faults: FieldFigures["faults"];
  readonly now_ms: number;
  readonly onSet: (planned: PlannedField) => void;
}

/** What the pilot read off or was told; each element takes the place of the report's. */
export function TypedEntry({ planned, faults, now_ms, onSet }: TypedEntryProps) {
  const { typed } = planned;
  const faultOf = (part: keyof TypedConditions) =>
    faults.find(({ where }) => where.kind === "typed" && where.part === part)?.says;
  const timeFault = faultOf("observedAt");
  const isVariable = typed?.windVariable === true;
  const variable: MeasureWord = {
    text: "VRB",
    also: ["variable"],
    isSet: isVariable,
    onSet: () => onSet(withVariableWind(planned, isoWithOffset(Date.now()))),
  };
  return (
    <Fold title="What you read or were told" opens={typed !== undefined}>
      <p>Each of these takes the place of the report’s.</p>
      <div className="cond-fields">
        {PARTS.map(({ part, label, units, example }) => (
          <MeasureField
            key={part}
            label={label}
            read={typed?.[part]}
            units={units}
            example={example}
            fault={faultOf(part)}
            word={part === "windFrom" ? variable : undefined}
            onSet={(read) => onSet(withTyped(planned, part, read, isoWithOffset(Date.now())))}
          />
        ))}
      </div>
      <p>
        {isVariable
          ? "VRB: worked out for the worst of all directions, as crosswind and as tailwind."
          : "A wind from no one direction is VRB; it counts as if it came from anywhere."}
      </p>
      {typed === undefined ? null : (
        <>
          <p>
            Read at {clockTime(Date.parse(typed.observedAt))},{" "}
            {lasting(Math.max(0, now_ms - Date.parse(typed.observedAt)))} ago. It counts as old as the first
            of them.
          </p>
          {timeFault === undefined ? null : <p className="cond-fault">{sentence(timeFault)}</p>}
          <div className="row-of-buttons">
            <button
              type="button"
              className="button"
              onClick={() =>
                onSet({ ...planned, typed: { ...typed, observedAt: isoWithOffset(Date.now()) } })
              }
            >
              All read again just now
            </button>
            <button
              type="button"
              className="button"
              onClick={() => onSet(withPart(planned, { typed: undefined }))}
            >
              Take them away
            </button>
          </div>
        </>
      )}
    </Fold>
  );
}
