import { type Flight, type FlightField, fieldFigures, fieldOf, loadFigures } from "@witnessmark/assess";
import { useMemo, useState } from "react";
import { useFlightEditing } from "../../flight/use-flight-editing.ts";
import { AircraftFrame } from "../../frame/aircraft-frame.tsx";
import type { OpenAircraft } from "../../frame/open-aircraft.ts";
import { useMinute } from "../../preferences/clock.ts";
import { useWide } from "../../preferences/wide.ts";
import { clockTime } from "../../words/dates.ts";
import { FlightLine } from "../decide/flight-line.tsx";
import { ApproachEntry } from "./approach-entry.tsx";
import { conditionsUnits } from "./conditions-units.ts";
import { fallingThere } from "./falling.ts";
import { FieldPane } from "./field-pane.tsx";
import { conditionVerdicts, FieldTabs } from "./field-tabs.tsx";
import { FlightEntry } from "./flight-entry.tsx";
import { OxygenRow } from "./oxygen-row.tsx";
import { PlaceEntry } from "./place-entry.tsx";
import {
  codeOf,
  fieldAt,
  meantField,
  planOf,
  type Role,
  withField,
  withKnownReports,
  withPart,
  withPlaces,
  withPlan,
} from "./plan-field.ts";
import { ReportShown } from "./report-shown.tsx";
import { EMPTY_BOX, type ReportsBox, ReportsEntry } from "./reports-entry.tsx";
import { placesSaid } from "./said-place.ts";
import { SaidPlaceForm } from "./said-place-form.tsx";
import { TypedEntry } from "./typed-entry.tsx";
import { UnitsEntry } from "./units-entry.tsx";
import "../decide/decide.css";
import "./conditions.css";

/** Weather, runway, wind and air at each field of the flight, and what they do to the numbers. */
export function ConditionsScreen({ open }: { readonly open: OpenAircraft }) {
  const { flight } = open;
  const under =
    flight === null
      ? "No flight planned"
      : `${flight.from} to ${flight.to}, ${clockTime(Date.parse(flight.offBlocks))}`;
  return (
    <AircraftFrame open={open} sheet="conditions" title="Conditions" under={under} className="conditions">
      {flight === null ? (
        <main className="cond-main">
          <div className="cond-pane">
            <section className="cond-part">
              <p>Say first which flight it is; then its weather, runway and wind are worked out here.</p>
            </section>
            <FlightLine open={open} />
          </div>
        </main>
      ) : (
        <OfFlight open={open} />
      )}
    </AircraftFrame>
  );
}

function OfFlight({ open }: { readonly open: OpenAircraft }) {
  const { book, state, assessment } = open;
  const editing = useFlightEditing(open);
  const { flight } = editing;
  // each change here is made whole, and is a step of its own for Undo
  const change = (next: Flight) => {
    editing.change(next);
    editing.release();
  };
  const [role, setRole] = useState<Role>("departure");
  const [box, setBox] = useState<ReportsBox>(EMPTY_BOX);
  const [saying, setSaying] = useState(false);
  const now_ms = useMinute() * 60_000;
  const units = conditionsUnits.use();
  const wide = useWide();
  const plan = flight?.plan;
  const masses = useMemo(() => {
    const states = plan === undefined ? [] : loadFigures(book, plan).states;
    const massAt = (moment: string) => states.find(({ at }) => at === moment)?.mass_kg;
    return { takeOff_kg: massAt("take-off"), landing_kg: massAt("landing") };
  }, [book, plan]);
  const figures = useMemo(
    () => (flight === null ? undefined : fieldFigures(book, flight, role, now_ms, { masses })),
    [book, flight, role, now_ms, masses],
  );
  if (flight === null) return null;
  const inBook = book.fields ?? [];
  const said = placesSaid(state, plan, inBook);
  const fields: readonly FlightField[] = [
    ...inBook,
    ...said.flatMap((place) => fieldOf(book, { places: [place] }, place.code) ?? []),
  ];
  const planned = plan?.[role];
  const meant = meantField(flight, fields, role);
  const verdicts = conditionVerdicts(assessment, role);
  const set = (next: typeof planned, places = said) =>
    change(withPlaces(withField(flight, state, role, next), state, places));
  const here = planned?.code ?? meant?.code ?? codeOf(flight, role) ?? "";
  const saidHere = said.find(({ code }) => code === here);
  const faults = figures?.faults ?? [];
  const hasReport = planned !== undefined && (planned.metar ?? planned.taf) !== undefined;
  const place = (
    <PlaceEntry
      role={role}
      fields={fields}
      planned={planned}
      meant={meant}
      faults={faults}
      falling={figures === undefined ? undefined : fallingThere(figures.weather)}
      onSet={(next) =>
        set(next === undefined || next.code === planned?.code ? next : withKnownReports(next, plan))
      }
      isSaid={saidHere !== undefined}
      onSay={() => setSaying(true)}
    />
  );
  const pane =
    figures === undefined ? (
      <section className="cond-part">
        <p>
          {role === "alternate"
            ? "No alternate is planned. Choose one above, if the rules or you ask for it."
            : "Choose field and runway above, also a field that is not in the book. Reports can be taken in at once."}
        </p>
      </section>
    ) : (
      <FieldPane book={book} figures={figures} own={plan?.own} verdicts={verdicts} units={units} />
    );
  const entries = (
    <>
      <ReportsEntry
        key={role}
        places={flight}
        plan={planOf(flight, state)}
        role={role}
        box={box}
        onBox={setBox}
        onPlan={(next) => change({ ...flight, plan: next })}
      />
      {planned === undefined ? null : (
        <>
          <ApproachEntry
            key={`${role} ${planned.code} approach`}
            role={role}
            field={fields.find(({ code }) => code === planned.code)}
            planned={planned}
            byInstruments={plan?.flightRules === "IFR"}
            faults={faults}
            onSet={set}
          />
          <TypedEntry key={`${role} typed`} planned={planned} faults={faults} now_ms={now_ms} onSet={set} />
        </>
      )}
    </>
  );
  const reports = (
    <>
      {figures?.observation === undefined ? null : (
        <ReportShown
          name="METAR"
          figures={figures.observation}
          now_ms={now_ms}
          onTakeAway={() => planned !== undefined && set(withPart(planned, { metar: undefined }))}
        />
      )}
      {figures?.forecast === undefined ? null : (
        <ReportShown
          name="TAF"
          figures={figures.forecast}
          now_ms={now_ms}
          onTakeAway={() => planned !== undefined && set(withPart(planned, { taf: undefined }))}
        />
      )}
    </>
  );
  const ofFlight = (
    <>
      <FlightEntry
        plan={planOf(flight, state)}
        faults={faults}
        onSet={(next) => change(withPlan(flight, state, next))}
      />
      <OxygenRow assessment={assessment} registration={open.registration} />
      <FlightLine open={open} />
      <UnitsEntry />
    </>
  );
  const undo = editing.canUndo ? (
    <div className="cond-undo">
      <button type="button" className="button" onClick={editing.undo}>
        Undo
      </button>
    </div>
  ) : null;
  const tabs = (
    <FieldTabs
      assessment={assessment}
      plan={plan}
      here={role}
      codeOf={(each) =>
        plan?.[each]?.code ?? { departure: flight.from, destination: flight.to, alternate: undefined }[each]
      }
      onChoose={setRole}
    />
  );
  // before there is a report, what brings one in stands first on a phone; typing the first element moves nothing
  const entriesFirst = !wide && !hasReport;
  return (
    <main className={wide ? "cond-main cond-two" : "cond-main"}>
      <div className="cond-pane">
        {tabs}
        <div id="cond-panel" role="tabpanel" aria-labelledby={`cond-tab-${role}`}>
          {place}
          {figures === undefined ? pane : null}
          {entriesFirst ? entries : null}
          {figures === undefined ? null : pane}
        </div>
      </div>
      <div className="cond-pane cond-side">
        {reports}
        {entriesFirst ? null : entries}
        {ofFlight}
      </div>
      {undo}
      {saying ? (
        <SaidPlaceForm
          code={inBook.some(({ code }) => code === here) ? "" : here}
          before={saidHere}
          onPlace={(place) =>
            set(planned?.code === place.code ? planned : fieldAt(place.code, place.runways[0]?.name), [
              place,
              ...said.filter(({ code }) => code !== place.code),
            ])
          }
          onClose={() => setSaying(false)}
        />
      ) : null}
    </main>
  );
}
