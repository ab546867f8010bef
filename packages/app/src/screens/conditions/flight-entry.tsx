import { type FieldFigures, rulePacks } from "@witnessmark/assess";
import type { UnitId } from "@witnessmark/engine";
import type { FlightPlan, OwnMinima, PlannedRoute, Read } from "@witnessmark/ledger";
import { useState } from "react";
import { Fold } from "./fold.tsx";
import { MeasureField } from "./measure-field.tsx";
import { type RouteSoFar, wholeRoute, withOwn } from "./plan-field.ts";

interface FlightEntryProps {
  readonly plan: FlightPlan;
  readonly faults: FieldFigures["faults"];
  readonly onSet: (change: Partial<Pick<FlightPlan, "rulePack" | "flightRules">> & RouteAndOwn) => void;
}

interface RouteAndOwn {
  readonly route?: PlannedRoute | undefined;
  readonly own?: OwnMinima | undefined;
}

const FUEL: readonly [UnitId, ...UnitId[]] = ["kg", "lb", "L", "USgal"];
const TIME: readonly [UnitId, ...UnitId[]] = ["min", "h"];

const ROUTE: readonly {
  readonly part: Exclude<keyof PlannedRoute, "contingency_1" | "inSightOfField">;
  readonly label: string;
  readonly units: readonly [UnitId, ...UnitId[]];
  readonly example: string;
}[] = [
  { part: "distance", label: "Distance", units: ["NM", "km", "mi"], example: "128" },
  { part: "time", label: "Time, take-off to landing", units: TIME, example: "52" },
  { part: "level", label: "Cruise level", units: ["ft", "m"], example: "17000" },
  { part: "alternateTime", label: "Time on to the alternate", units: TIME, example: "20" },
  { part: "tripFuel", label: "Trip fuel", units: FUEL, example: "150" },
  { part: "taxiFuel", label: "Taxi fuel", units: FUEL, example: "10" },
  { part: "extraFuel", label: "Extra fuel", units: FUEL, example: "30" },
];

/** Route, rules, and what the pilot asks for beyond them: of the flight, whichever field stands open. */
export function FlightEntry({ plan, faults, onSet }: FlightEntryProps) {
  return (
    <>
      <RouteEntry plan={plan} onSet={onSet} />
      <RulesEntry plan={plan} onSet={onSet} />
      <OwnEntry plan={plan} faults={faults} onSet={onSet} />
    </>
  );
}

function RouteEntry({ plan, onSet }: Omit<FlightEntryProps, "faults">) {
  // what is said of a route before it is whole stands here only
  const [begun, setBegun] = useState<RouteSoFar>({});
  const route: RouteSoFar = plan.route ?? begun;
  const set = (change: RouteSoFar) => {
    const next = { ...route, ...change };
    setBegun(next);
    onSet({ route: wholeRoute(next) });
  };
  const isBegun = plan.route === undefined && Object.values(begun).some((part) => part !== undefined);
  return (
    <Fold title="Route" opens={plan.route === undefined}>
      {isBegun ? (
        <p className="cond-fault">Distance, time and level: it counts when all three are there.</p>
      ) : null}
      <div className="cond-fields">
        {ROUTE.map(({ part, label, units, example }) => (
          <MeasureField
            key={part}
            label={label}
            read={route[part]}
            units={units}
            example={example}
            onSet={(read) => set({ [part]: read })}
          />
        ))}
        <MeasureField
          label="Contingency, share of the trip"
          read={asPercent(route.contingency_1)}
          units={["percent"]}
          example="5"
          onSet={(read) => set({ contingency_1: read === undefined ? undefined : read.value / 100 })}
        />
      </div>
      <label className="cond-tick">
        <input
          type="checkbox"
          checked={route.inSightOfField === true}
          onChange={({ target }) => set({ inSightOfField: target.checked ? true : undefined })}
        />
        <span>Lands where it took off, and stays in sight of that field</span>
      </label>
      <p>Without trip or taxi fuel, the book’s burn is used.</p>
    </Fold>
  );
}

const asPercent = (share_1: number | undefined): Read | undefined =>
  share_1 === undefined ? undefined : { value: Number((share_1 * 100).toPrecision(6)), unit: "percent" };

function RulesEntry({ plan, onSet }: Omit<FlightEntryProps, "faults">) {
  return (
    <section className="cond-part">
      <h2>Rules</h2>
      <div className="cond-fields">
        <label className="field cond-whole">
          <span>Rules that hold</span>
          <select value={plan.rulePack} onChange={({ target }) => onSet({ rulePack: target.value })}>
            {rulePacks.has(plan.rulePack) ? null : <option value={plan.rulePack}>{plan.rulePack}</option>}
            {[...rulePacks.values()].map(({ id, title }) => (
              <option key={id} value={id}>
                {title}
              </option>
            ))}
          </select>
        </label>
        <label className="field">
          <span>Flown by</span>
          <select
            value={plan.flightRules}
            onChange={({ target }) => onSet({ flightRules: target.value === "IFR" ? "IFR" : "VFR" })}
          >
            <option value="VFR">Sight (VFR)</option>
            <option value="IFR">Instruments (IFR)</option>
          </select>
        </label>
      </div>
    </section>
  );
}

function OwnEntry({ plan, faults, onSet }: FlightEntryProps) {
  const { own } = plan;
  const set = (change: { readonly [K in keyof OwnMinima]?: OwnMinima[K] | undefined }) =>
    onSet({ own: withOwn(plan, change) });
  const faultOf = (part: string) =>
    faults.find(({ where }) => where.kind === "own" && where.part === part)?.says;
  const factor = (value: number | undefined): Read | undefined =>
    value === undefined ? undefined : { value, unit: "1" };
  return (
    <Fold title="Your own minima" opens={own !== undefined}>
      <p>They add to the rules and the book; they never take from them.</p>
      <div className="cond-fields">
        <MeasureField
          label="Ceiling"
          read={own?.ceiling}
          units={["ft", "m"]}
          example="1000"
          fault={faultOf("ceiling")}
          onSet={(ceiling) => set({ ceiling })}
        />
        <MeasureField
          label="Visibility"
          read={own?.visibility}
          units={["m", "km", "mi"]}
          example="5000"
          fault={faultOf("visibility")}
          onSet={(visibility) => set({ visibility })}
        />
        <MeasureField
          label="Crosswind"
          read={own?.crosswind}
          units={["kt", "mPerS", "kmPerH", "mph"]}
          example="15"
          fault={faultOf("crosswind")}
          onSet={(crosswind) => set({ crosswind })}
        />
        <MeasureField
          label="Climb after take-off"
          read={own?.climbGradient}
          units={["ftPerNM", "percent"]}
          example="250"
          fault={faultOf("climbGradient")}
          onSet={(climbGradient) => set({ climbGradient })}
        />
        <FactorField
          label="Take-off distance times"
          read={factor(own?.takeOffFactor_1)}
          onSet={(takeOffFactor_1) => set({ takeOffFactor_1 })}
        />
        <FactorField
          label="Landing distance times"
          read={factor(own?.landingFactor_1)}
          onSet={(landingFactor_1) => set({ landingFactor_1 })}
        />
      </div>
    </Fold>
  );
}

interface FactorFieldProps {
  readonly label: string;
  readonly read: Read | undefined;
  readonly onSet: (factor_1: number | undefined) => void;
}

/** What the ledger takes for a factor: nothing that would shorten a distance. */
const [LEAST_1, MOST_1] = [1, 10];

function FactorField({ label, read, onSet }: FactorFieldProps) {
  const [refused, setRefused] = useState<string | undefined>(undefined);
  return (
    <MeasureField
      label={label}
      read={read}
      units={["1"]}
      example="1.15"
      fault={refused}
      onSet={(next) => {
        const good = next === undefined || (next.value >= LEAST_1 && next.value <= MOST_1);
        setRefused(
          good
            ? undefined
            : `Expected a factor from ${LEAST_1} to ${MOST_1}, such as 1.15; ${next.value} was not taken.`,
        );
        if (good) onSet(next?.value);
      }}
    />
  );
}
