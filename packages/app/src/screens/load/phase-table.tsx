import type { LoadFigures, LoadMoment, LoadState, Verdict } from "@witnessmark/assess";
import type { Status } from "@witnessmark/ledger";
import { Fragment, memo, useCallback, useState } from "react";
import { Working } from "../decide/working.tsx";
import { MOMENT_NAMES } from "./envelope-layout.ts";
import { type LiveLoad, useFollowing, useMoments } from "./follow/live-load.ts";
import { useParts } from "./follow/parts.ts";
import { StatusMark, sayStatus } from "./follow/status-mark.tsx";
import { armText, type LoadUnits, marginWords, plain, rangeText, safe, symbolOf } from "./load-units.ts";

interface PhaseTableProps {
  readonly figures: LoadFigures;
  readonly units: LoadUnits;
  readonly verdicts: readonly Verdict[];
  readonly wide: boolean;
  readonly live: LiveLoad;
}

/** Kilograms against their limit, arm against its range, and what is left, at each moment; each opens its working. */
export const PhaseTable = memo(function PhaseTable(props: PhaseTableProps) {
  const { units, verdicts, wide, live } = props;
  const figures = useMoments(live, props.figures);
  const [open, setOpen] = useState<LoadMoment | null>(null);
  const onOpen = useCallback((at: LoadMoment) => setOpen((was) => (was === at ? null : at)), []);
  const mass = symbolOf(units.mass);
  const arm = symbolOf(units.arm);
  const columns = wide ? 7 : 5;
  return (
    <table className="phases">
      <caption className="out-of-sight">Mass and centre of gravity along the flight</caption>
      <thead>
        <tr>
          <th scope="col">
            <span className="out-of-sight">When</span>
          </th>
          <th scope="col">{mass}</th>
          <th scope="col">limit</th>
          {wide ? (
            <>
              <th scope="col">arm, {arm}</th>
              <th scope="col">range, {arm}</th>
            </>
          ) : null}
          <th scope="col">left</th>
          <th scope="col">
            <span className="out-of-sight">Status</span>
          </th>
        </tr>
      </thead>
      <tbody>
        {figures.states.map((state) => (
          <Fragment key={state.at}>
            <Row
              {...rowOf(state, units)}
              units={units}
              wide={wide}
              open={open === state.at}
              onOpen={onOpen}
              live={live}
            />
            {open === state.at ? (
              <tr className="phase-working">
                <td colSpan={columns}>
                  <PhaseWorking state={state} units={units} verdicts={verdicts} />
                </td>
              </tr>
            ) : null}
          </Fragment>
        ))}
      </tbody>
    </table>
  );
});

interface RowProps {
  readonly at: LoadMoment;
  readonly mass: string;
  readonly limit: string;
  readonly arm: string;
  readonly range: string;
  readonly left: string;
  readonly status: Status;
  readonly units: LoadUnits;
  readonly wide: boolean;
  readonly open: boolean;
  readonly onOpen: (at: LoadMoment) => void;
  readonly live: LiveLoad;
}

const rowOf = (state: LoadState, units: LoadUnits) => ({
  at: state.at,
  mass: safe(state.mass_kg, units.mass, "up"),
  limit: state.mass === undefined ? "none" : safe(state.mass.limit, units.mass, "down"),
  arm: armText(state.arm_m, units.arm),
  range: state.armRange_m === undefined ? "none" : rangeText(state.armRange_m, units.arm),
  left: leftOf(state, units),
  status: state.status,
});

/** In plain values, so that a row whose figures stay is not made again. */
const Row = memo(function Row(props: RowProps) {
  const { at, mass, limit, arm, range, left, status, units, wide, open, onOpen, live } = props;
  const parts = useParts();
  useFollowing(
    live,
    ({ figures }) => {
      const state = figures.states.find((one) => one.at === at);
      if (state === undefined) return null;
      const now = rowOf(state, units);
      return wide ? now : { ...now, arm: inBrief(now) };
    },
    (now) => {
      if (now === null) return true; // the table lets it go
      parts.say("mass", now.mass);
      parts.say("left", now.left);
      parts.put("left cell", "class", leftClass(now.status));
      parts.say("arm", now.arm);
      if (wide) parts.say("range", now.range);
      sayStatus(parts, "mark", now.status);
      return true;
    },
  );
  return (
    <tr>
      <th scope="row">
        <button type="button" className="chevron" aria-expanded={open} onClick={() => onOpen(at)}>
          {MOMENT_NAMES[at]}
        </button>
        {wide ? null : (
          <span className="phase-arm" ref={parts.ref("arm")}>
            {inBrief({ arm, range })}
          </span>
        )}
      </th>
      <td>
        <span ref={parts.ref("mass")}>{mass}</span>
      </td>
      <td>{limit}</td>
      {wide ? (
        <>
          <td>
            <span ref={parts.ref("arm")}>{arm}</span>
          </td>
          <td>
            <span ref={parts.ref("range")}>{range}</span>
          </td>
        </>
      ) : null}
      <td ref={parts.ref("left cell")} className={leftClass(status)}>
        <span ref={parts.ref("left")}>{left}</span>
      </td>
      <td>
        <StatusMark status={status} size_px={22} part={parts.ref("mark")} />
      </td>
    </tr>
  );
});

const leftClass = (status: Status): string => `phase-left ${status}`;

/** On a phone, under the name of the moment; the range stays on one line. */
const inBrief = ({ arm, range }: Pick<RowProps, "arm" | "range">): string =>
  `${arm}, ${range.replaceAll(" ", "\u00a0")}`;

/** What is left to the mass limit; where the edge is what is passed, that. */
function leftOf({ at, mass, nearest, inEnvelope }: LoadState, units: LoadUnits): string {
  if (mass !== undefined && mass.left < 0) return marginWords(mass.left, units.mass);
  // on the ramp the edges do not hold yet: take-off, a few kilograms later, is what counts
  if (at !== "ramp" && !inEnvelope && nearest !== undefined && nearest.left_m < 0)
    return marginWords(nearest.left_m, units.margin);
  if (mass === undefined)
    return nearest === undefined
      ? "–"
      : `${safe(nearest.left_m, units.margin, "down")} ${symbolOf(units.margin)}`;
  return `${safe(mass.left, units.mass, "down")} ${symbolOf(units.mass)}`;
}

/** The working of the verdicts of this moment, as Decide shows it; they follow a moment after the finger rests. */
function PhaseWorking({
  state,
  units,
  verdicts,
}: {
  readonly state: LoadState;
  readonly units: LoadUnits;
  readonly verdicts: readonly Verdict[];
}) {
  const found = verdicts.filter(({ id }) => id === `load:${state.at}` || id === "load:envelope");
  const { fuel_kg, mac_1, mass, chance_1 } = state;
  return (
    <>
      <div className="working">
        <dl>
          <div>
            <dt>Usable fuel aboard</dt>
            <dd>
              {plain(fuel_kg, units.mass)} {symbolOf(units.mass)}
            </dd>
          </div>
          {mac_1 === undefined ? null : (
            <div>
              <dt>Share of the mean chord</dt>
              <dd>{(mac_1 * 100).toFixed(1)} %</dd>
            </div>
          )}
          {mass?.chance_1 === undefined ? null : (
            <div>
              <dt>Mass limit kept, by how the weights are known</dt>
              <dd>{percent(mass.chance_1)}</dd>
            </div>
          )}
          <div>
            <dt>Edges kept, by how the weights are known</dt>
            <dd>{percent(chance_1)}</dd>
          </div>
        </dl>
      </div>
      {found.map((verdict) => (
        <Fragment key={verdict.id}>
          <h3 className="phase-verdict">{verdict.title}</h3>
          <Working verdict={verdict} />
        </Fragment>
      ))}
    </>
  );
}

const percent = (chance_1: number) =>
  chance_1 > 0.999 ? "more than 99.9 %" : `${(Math.floor(chance_1 * 1000) / 10).toFixed(1)} %`;
