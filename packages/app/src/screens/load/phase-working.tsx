import type { LoadFigures, LoadState, Verdict, WorstPoint } from "@witnessmark/assess";
import { fromSI } from "@witnessmark/engine";
import { Fragment } from "react";
import { figure } from "../../words/figures.ts";
import { Working } from "../decide/working.tsx";
import { edgeArm_m } from "./envelope-words.ts";
import { type LoadUnits, plain, symbolOf } from "./load-units.ts";
import { type RowKey, worstBetween } from "./phase-rows.ts";

interface PhaseWorkingProps {
  readonly at: RowKey;
  readonly figures: LoadFigures;
  readonly units: LoadUnits;
  /** As Decide shows them; they follow a moment after the finger rests. */
  readonly verdicts: readonly Verdict[];
}

/** How a row came about: everything that was added up, where the edges are, and the verdicts of the moment. */
export function PhaseWorking({ at, figures, units, verdicts }: PhaseWorkingProps) {
  const state = figures.states.find((one) => one.at === at);
  const worst = at === "worst" ? worstBetween(figures) : undefined;
  const sum = state ?? worst;
  if (sum === undefined) return null;
  const found = verdicts.filter(({ id }) => id === `load:${at}` || id === "load:envelope");
  return (
    <>
      <div className="working">
        <Sum of={sum} units={units} />
        <dl>
          {linesOf(state, worst, units).map(([label, value]) => (
            <div key={label}>
              <dt>{label}</dt>
              <dd>{value}</dd>
            </div>
          ))}
        </dl>
        {state?.at === "ramp" ? <p>The edges hold from take-off on, a few kilograms later.</p> : null}
        {state?.at === "zero-fuel" && !state.inEnvelope ? (
          <p>Past the edge with the tanks dry is a caution only: the flight lands before it comes to that.</p>
        ) : null}
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

/** Masses, arms and moments, to be added up by hand. */
function Sum({
  of: { parts, mass_kg, arm_m },
  units,
}: {
  readonly of: Pick<LoadState, "parts" | "mass_kg" | "arm_m">;
  readonly units: LoadUnits;
}) {
  const [mass, arm] = [symbolOf(units.mass), symbolOf(units.arm)];
  const massOf = (value_kg: number) => figure(fromSI(value_kg, units.mass), 1);
  const momentOf = (value_kgm: number) => figure(fromSI(fromSI(value_kgm, units.mass), units.arm), 1);
  return (
    <table className="phase-sum">
      <caption className="out-of-sight">What was added up</caption>
      <thead>
        <tr>
          <th scope="col">
            <span className="out-of-sight">What</span>
          </th>
          <th scope="col">{mass}</th>
          <th scope="col">{arm}</th>
          <th scope="col">
            {mass}·{arm}
          </th>
        </tr>
      </thead>
      <tbody>
        {parts.map((part, index) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: two bags may be called the same
          <tr key={index}>
            <th scope="row">{part.what}</th>
            <td>{massOf(part.mass_kg)}</td>
            <td>{part.arm_m === undefined ? "" : fineArm(part.arm_m, units)}</td>
            <td>{momentOf(part.moment_kgm)}</td>
          </tr>
        ))}
      </tbody>
      <tfoot>
        <tr>
          <th scope="row">Together; the arm is moment by mass</th>
          <td>{massOf(mass_kg)}</td>
          <td>{fineArm(arm_m, units)}</td>
          <td>{momentOf(mass_kg * arm_m)}</td>
        </tr>
      </tfoot>
    </table>
  );
}

/** To a tenth of a millimetre, a thousandth of an inch: a hair past an edge is seen. */
const fineArm = (arm_m: number, { arm }: LoadUnits): string =>
  figure(fromSI(arm_m, arm), arm === "in" ? 3 : 4);

type Line = readonly [label: string, value: string];

function linesOf(
  state: LoadState | undefined,
  worst: WorstPoint | undefined,
  units: LoadUnits,
): readonly Line[] {
  if (worst !== undefined) {
    const { edge, left } = worst;
    return edge === "forward" || edge === "aft" ? edgeLines(edgeArm_m(worst), edge, left, units) : [];
  }
  if (state === undefined) return [];
  const { fuel_kg, mac_1, mass, chance_1, at, armRange_m, nearest } = state;
  const isHeld = at !== "ramp";
  return [
    ["Usable fuel aboard", `${plain(fuel_kg, units.mass)} ${symbolOf(units.mass)}`],
    ...(mac_1 === undefined ? [] : [["Share of the mean chord", `${(mac_1 * 100).toFixed(1)} %`] as const]),
    ...(isHeld && armRange_m !== undefined && nearest !== undefined
      ? [
          [
            "Arms allowed at this mass",
            `${fineArm(armRange_m[0], units)} to ${fineArm(armRange_m[1], units)} ${symbolOf(units.arm)}`,
          ] as const,
          ...leftLines(nearest.edge, nearest.left_m, units),
        ]
      : []),
    ...(mass?.chance_1 === undefined
      ? []
      : [["Mass limit kept, by how the weights are known", percent(mass.chance_1)] as const]),
    ...(isHeld ? [["Edges kept, by how the weights are known", percent(chance_1)] as const] : []),
  ];
}

const edgeLines = (
  edge_m: number,
  edge: "forward" | "aft",
  left_m: number,
  units: LoadUnits,
): readonly Line[] => [
  [`The ${edge} edge at this mass`, `${fineArm(edge_m, units)} ${symbolOf(units.arm)}`],
  ...leftLines(edge, left_m, units),
];

/** What is left before it is rounded. */
function leftLines(edge: "forward" | "aft", left_m: number, { margin }: LoadUnits): readonly Line[] {
  const size = `${figure(fromSI(Math.abs(left_m), margin), margin === "in" ? 3 : 1)} ${symbolOf(margin)}`;
  return [
    left_m < 0
      ? [`Past the ${edge} edge, before it is rounded up`, size]
      : [`Left to the ${edge} edge, before it is rounded down`, size],
  ];
}

const percent = (chance_1: number) =>
  chance_1 > 0.999 ? "more than 99.9 %" : `${(Math.floor(chance_1 * 1000) / 10).toFixed(1)} %`;
