import type { PlannedPlace, PlannedRunway } from "@witnessmark/ledger";
import { type FormEvent, type ReactNode, useId, useState } from "react";
import { Popup } from "../../frame/popup.tsx";
import { useFirstFault } from "../../frame/use-first-fault.ts";
import { NOTHING_TYPED, type PlaceFaults, type PlaceTyped, readPlace, typedOf } from "./said-place.ts";

const SURFACES: readonly (readonly [PlannedRunway["surface"], string])[] = [
  ["paved", "Paved"],
  ["grass", "Grass"],
  ["gravel", "Gravel"],
];

interface SaidPlaceFormProps {
  /** What the flight calls it, where it does. */
  readonly code: string;
  /** What was said of it before. */
  readonly before: PlannedPlace | undefined;
  readonly onPlace: (place: PlannedPlace) => void;
  readonly onClose: () => void;
}

/** A field that the book does not have, with one runway, said for this flight. */
export function SaidPlaceForm({ code, before, onPlace, onClose }: SaidPlaceFormProps) {
  const [typed, setTyped] = useState<PlaceTyped>(() =>
    before === undefined ? { ...NOTHING_TYPED, code } : typedOf(before),
  );
  const [asked, setAsked] = useState(0);
  const form = useFirstFault(asked);
  const read = readPlace(typed, Intl.DateTimeFormat().resolvedOptions().timeZone);
  const faults: PlaceFaults = asked > 0 && !read.ok ? read.faults : {};
  const change = (part: Partial<PlaceTyped>) => setTyped({ ...typed, ...part });
  const send = (event: FormEvent) => {
    event.preventDefault();
    if (!read.ok) {
      setAsked(asked + 1);
      return;
    }
    onPlace(read.place);
    onClose();
  };
  const line = (part: Exclude<keyof PlaceTyped, "surface" | "lights">, label: string, hint?: string) => (
    <Line label={label} hint={hint} fault={faults[part]}>
      {(given) => (
        <input
          {...given}
          value={typed[part]}
          // a phone’s keys for figures have no letters for a unit, and some have no minus
          inputMode={part === "direction" ? "decimal" : "text"}
          autoComplete="off"
          onChange={({ target }) => change({ [part]: target.value })}
        />
      )}
    </Line>
  );
  return (
    <Popup title="A field that is not in the book" onClose={onClose}>
      <form ref={form} className="popup-body" onSubmit={send} noValidate>
        <p>From its chart or its owner, for this flight. A field you go to often belongs in the book.</p>
        {line("code", "Code", "Four letters; for a strip without one, four of your own, such as ZZST")}
        {line("name", "Name, if it has one")}
        {line("latitude", "Latitude", "57.21, or 57 12.6 N")}
        {line("longitude", "Longitude", "−6.35, or 6 21 W")}
        {line("elevation", "Elevation, in ft or m")}
        {line("runway", "Runway", "The other direction is put in with it")}
        {line("direction", "Its direction from true north, in degrees")}
        {line("length", "Length to take off and to land on, in m or ft", "The shorter of the two")}
        {line("slope", "Slope, in %", "Up in this direction; 0 where it is level, −1.5 where it goes down")}
        <Line label="Surface" hint={undefined} fault={faults.surface}>
          {(given) => (
            <select
              {...given}
              value={typed.surface}
              onChange={({ target }) =>
                change({ surface: SURFACES.find(([surface]) => surface === target.value)?.[0] ?? "" })
              }
            >
              <option value="">Choose</option>
              {SURFACES.map(([surface, name]) => (
                <option key={surface} value={surface}>
                  {name}
                </option>
              ))}
            </select>
          )}
        </Line>
        <label className="cond-tick">
          <input
            type="checkbox"
            checked={typed.lights}
            onChange={({ target }) => change({ lights: target.checked })}
          />
          <span>It has lights for night</span>
        </label>
        {asked > 0 && !read.ok ? (
          <p className="trouble" role="alert">
            Not all of it can be read yet: look at the lines that say why.
          </p>
        ) : null}
        <button type="submit" className="button filled tall full">
          Use it for this flight
        </button>
      </form>
    </Popup>
  );
}

interface Given {
  readonly id: string;
  readonly "aria-invalid": boolean;
  readonly "aria-describedby": string | undefined;
}

interface LineProps {
  readonly label: string;
  readonly hint: string | undefined;
  readonly fault: string | undefined;
  readonly children: (given: Given) => ReactNode;
}

/** What is said under a line is no part of its name: a reader says it after. */
function Line({ label, hint, fault, children }: LineProps) {
  const id = useId();
  const says = fault ?? hint;
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      {children({
        id,
        "aria-invalid": fault !== undefined,
        "aria-describedby": says === undefined ? undefined : `${id}-says`,
      })}
      {says === undefined ? null : (
        <span id={`${id}-says`} className={fault === undefined ? undefined : "stop"}>
          {says}
        </span>
      )}
    </div>
  );
}
