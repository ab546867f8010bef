import type { FieldFigures, FlightField } from "@witnessmark/assess";
import type { Approach } from "@witnessmark/book";
import { fromSI } from "@witnessmark/engine";
import type { AirspaceClass, PlannedApproach, PlannedField, Read } from "@witnessmark/ledger";
import { useState } from "react";
import { Fold } from "./fold.tsx";
import { MeasureField } from "./measure-field.tsx";
import { type Role, withPart } from "./plan-field.ts";

interface ApproachEntryProps {
  readonly role: Role;
  readonly field: FlightField | undefined;
  readonly planned: PlannedField;
  readonly byInstruments: boolean;
  readonly faults: FieldFigures["faults"];
  readonly onSet: (planned: PlannedField) => void;
}

const CLASSES: readonly AirspaceClass[] = ["A", "B", "C", "D", "E", "F", "G"];
/** What the list of approaches says for one that the book has not. */
const ANOTHER = "another";

/** Which class the airspace at the field is of, and which approach is planned: what ceiling and visibility are held to. */
export function ApproachEntry({ role, field, planned, byInstruments, faults, onSet }: ApproachEntryProps) {
  const byBook = field?.airspace;
  return (
    <Fold
      title={role === "departure" ? "Airspace" : "Airspace and approach"}
      opens={byInstruments || planned.airspace !== undefined || planned.approach !== undefined}
    >
      <div className="cond-fields">
        <label className="field cond-whole">
          <span>Class at the surface</span>
          <select
            value={planned.airspace ?? ""}
            onChange={({ target }) =>
              onSet(withPart(planned, { airspace: CLASSES.find((each) => each === target.value) }))
            }
          >
            <option value="">{byBook === undefined ? "Not known" : `${byBook}, by the book`}</option>
            {CLASSES.map((each) => (
              <option key={each} value={each}>
                {each}
              </option>
            ))}
          </select>
        </label>
      </div>
      {role === "departure" ? null : (
        <PlannedApproachEntry field={field} planned={planned} faults={faults} onSet={onSet} />
      )}
      <p>A class that is in force for part of the day, and a notice to pilots, come before the book.</p>
    </Fold>
  );
}

/** In whole feet up and metres up: what is asked never shrinks by a conversion. */
const asPlanned = ({ name, kind, minimum_m, visibility_m }: Approach): PlannedApproach => ({
  name,
  kind,
  minimum: { value: Math.ceil(fromSI(minimum_m, "ft") - 1e-6), unit: "ft" },
  visibility: { value: Math.ceil(visibility_m - 1e-6), unit: "m" },
});

type Begun = { readonly [K in keyof PlannedApproach]?: PlannedApproach[K] | undefined };

/** An approach counts when all of it is said. */
const whole = ({ name, kind, minimum, visibility }: Begun): PlannedApproach | undefined =>
  name === undefined || kind === undefined || minimum === undefined || visibility === undefined
    ? undefined
    : { name, kind, minimum, visibility };

function PlannedApproachEntry({
  field,
  planned,
  faults,
  onSet,
}: Pick<ApproachEntryProps, "field" | "planned" | "faults" | "onSet">) {
  const faultOf = (part: "minimum" | "visibility") =>
    faults.find(({ where }) => where.kind === "approach" && where.part === part)?.says;
  const [begun, setBegun] = useState<Begun | undefined>(undefined);
  // one that is whole and not in the plan was undone
  const isBegun = begun !== undefined && whole(begun) === undefined;
  const approach: Begun | undefined = planned.approach ?? (isBegun ? begun : undefined);
  const listed = field?.approaches ?? [];
  const isListed = listed.some(({ name }) => name === approach?.name);
  const choice = approach === undefined ? "" : isListed ? (approach.name ?? "") : ANOTHER;
  const set = (next: Begun | undefined) => {
    setBegun(next);
    onSet(withPart(planned, { approach: next === undefined ? undefined : whole(next) }));
  };
  const choose = (name: string) => {
    if (name === "") return set(undefined);
    const found = listed.find((each) => each.name === name);
    if (found !== undefined) return set(asPlanned(found));
    setBegun({ kind: "non-precision" });
    if (planned.approach !== undefined) onSet(withPart(planned, { approach: undefined }));
  };
  const change = (part: Begun) => set({ ...approach, ...part });
  return (
    <>
      <label className="field cond-whole">
        <span>Approach planned</span>
        <select value={choice} onChange={({ target }) => choose(target.value)}>
          <option value="">None, by sight</option>
          {listed.map(({ name }) => (
            <option key={name} value={name}>
              {name}
            </option>
          ))}
          <option value={ANOTHER}>Another</option>
        </select>
      </label>
      {approach === undefined ? null : (
        <>
          {planned.approach === undefined ? (
            <p className="cond-fault">Name, minimum and visibility: it counts when all are there.</p>
          ) : null}
          <div className="cond-fields">
            {isListed ? null : (
              <>
                <label className="field">
                  <span>Name on the chart</span>
                  <input
                    defaultValue={approach.name ?? ""}
                    maxLength={60}
                    autoComplete="off"
                    onBlur={({ target }) =>
                      change({ name: target.value.trim() === "" ? undefined : target.value.trim() })
                    }
                  />
                </label>
                <label className="field">
                  <span>Glide path</span>
                  <select
                    value={approach.kind ?? "non-precision"}
                    onChange={({ target }) =>
                      change({ kind: target.value === "precision" ? "precision" : "non-precision" })
                    }
                  >
                    <option value="precision">With one</option>
                    <option value="non-precision">Without one</option>
                  </select>
                </label>
              </>
            )}
            <MeasureField
              label="Minimum, height above the field"
              read={approach.minimum}
              units={["ft", "m"]}
              example="420"
              fault={faultOf("minimum")}
              onSet={(minimum: Read | undefined) => change({ minimum })}
            />
            <MeasureField
              label="Visibility that it asks for"
              read={approach.visibility}
              units={["m", "km", "mi"]}
              example="1500"
              fault={faultOf("visibility")}
              onSet={(visibility: Read | undefined) => change({ visibility })}
            />
          </div>
          <p>
            Higher minima of your own go here, or under “Your own minima”. The chart in force comes first.
          </p>
        </>
      )}
    </>
  );
}
