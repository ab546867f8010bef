import type { FieldFigures, FlightField } from "@witnessmark/assess";
import type { PlannedField, RunwayCondition } from "@witnessmark/ledger";
import { fieldAt, type Role } from "./plan-field.ts";
import { sentence } from "./sentence.ts";

interface PlaceEntryProps {
  readonly role: Role;
  /** Those of the book, and those that were said for a flight. */
  readonly fields: readonly FlightField[];
  readonly planned: PlannedField | undefined;
  /** What the flight's own words mean, where nothing is chosen. */
  readonly meant: FlightField | undefined;
  readonly faults: FieldFigures["faults"];
  /** What may fall there at the time, by the reports: "moderate rain shower". */
  readonly falling: string | undefined;
  readonly onSet: (planned: PlannedField | undefined) => void;
  /** Whether the one that stands there was said for a flight: then what was said can be changed. */
  readonly isSaid: boolean;
  /** Asks for a field that is not in the book. */
  readonly onSay: () => void;
}

const CONDITIONS: readonly (readonly [RunwayCondition, string])[] = [
  ["dry", "Dry"],
  ["wet", "Wet"],
  ["snow", "Snow"],
  ["slush", "Slush"],
  ["ice", "Ice"],
];

/** No code of a field. */
const ANOTHER = "another";

/** Which field, which runway, and how its surface is. */
export function PlaceEntry(props: PlaceEntryProps) {
  const { role, fields, planned, meant, faults, falling, onSet, isSaid, onSay } = props;
  const field = fields.find(({ code }) => code === (planned?.code ?? meant?.code));
  const known = planned === undefined || fields.some(({ code }) => code === planned.code);
  const wrong = faults.filter(({ where }) => where.kind === "field" || where.kind === "runway");
  const atField = (code: string) => {
    if (code === ANOTHER) return onSay();
    if (code === "") return onSet(undefined);
    const next = fields.find((one) => one.code === code);
    if (next !== undefined && code !== planned?.code) onSet(fieldAt(code));
  };
  const atRunway = (runway: string) => {
    if (planned !== undefined) onSet({ ...planned, runway });
    else if (field !== undefined && runway !== "") onSet(fieldAt(field.code, runway));
  };
  return (
    <section className="cond-place" aria-label="Field and runway">
      <label>
        <span>Field</span>
        <select value={planned?.code ?? meant?.code ?? ""} onChange={({ target }) => atField(target.value)}>
          <option value="">{role === "alternate" ? "None" : "Choose"}</option>
          {known ? null : <option value={planned?.code}>{planned?.code}</option>}
          {fields.map(({ code, name }) => (
            <option key={code} value={code}>
              {name === "" ? code : `${code}, ${name}`}
            </option>
          ))}
          <option value={ANOTHER}>Another, not in the book …</option>
        </select>
      </label>
      <label>
        <span>Runway</span>
        <select
          value={planned?.runway ?? ""}
          disabled={field === undefined && planned === undefined}
          onChange={({ target }) => atRunway(target.value)}
        >
          {planned?.runway === undefined ? <option value="">Choose</option> : null}
          {planned?.runway !== undefined &&
          !(field?.runways.some(({ name }) => name === planned.runway) ?? false) ? (
            <option value={planned.runway}>{planned.runway}</option>
          ) : null}
          {(field?.runways ?? []).map(({ name, surface }) => (
            <option key={name} value={name}>
              {surface === "paved" ? name : `${name}, ${surface}`}
            </option>
          ))}
        </select>
      </label>
      <label>
        <span>Surface</span>
        <select
          value={planned?.condition ?? ""}
          disabled={planned === undefined}
          onChange={({ target }) => {
            const condition = CONDITIONS.find(([id]) => id === target.value)?.[0];
            if (planned !== undefined && condition !== undefined) onSet({ ...planned, condition });
          }}
        >
          {planned?.condition === undefined ? (
            <option value="">{planned === undefined ? "Not said" : "Choose"}</option>
          ) : null}
          {CONDITIONS.map(([id, name]) => (
            <option key={id} value={id}>
              {name}
            </option>
          ))}
        </select>
      </label>
      {isSaid && field !== undefined ? (
        <button type="button" className="button cond-say" onClick={onSay}>
          What was said of {field.code}
        </button>
      ) : null}
      {planned === undefined ? null : (
        <SurfaceAsked
          condition={planned.condition}
          falling={falling}
          onWet={() => onSet({ ...planned, condition: "wet" })}
        />
      )}
      {wrong.map(({ says }) => (
        <p key={says} className="cond-fault">
          {sentence(says)}
        </p>
      ))}
    </section>
  );
}

/** Asks how the surface is; where something may fall by then, wet is offered, and dry is questioned. */
function SurfaceAsked({
  condition,
  falling,
  onWet,
}: {
  readonly condition: RunwayCondition | undefined;
  readonly falling: string | undefined;
  readonly onWet: () => void;
}) {
  if (condition !== undefined && (condition !== "dry" || falling === undefined)) return null;
  const asks =
    condition === undefined
      ? "Say how the surface is; the distance waits for it."
      : "Dry was said. Wet surfaces need more.";
  return (
    <div className="cond-surface">
      <p>
        {falling === undefined ? "" : `By the reports ${falling} may fall by then. `}
        {asks}
      </p>
      {falling === undefined ? null : (
        <button type="button" className="button" onClick={onWet}>
          Wet
        </button>
      )}
    </div>
  );
}
