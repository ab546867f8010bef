import type { LoadFigures } from "@witnessmark/assess";
import type { Book, Loading } from "@witnessmark/book";
import { memo } from "react";
import { beamLoads } from "./drawn-load.ts";
import { type LiveLoad, useFollowing } from "./follow/live-load.ts";
import { type Parts, useParts } from "./follow/parts.ts";
import { type LoadUnits, plain } from "./load-units.ts";
import type { LoadLayout } from "./plan-layout.ts";

interface LoadBeamProps {
  readonly geometry: Book["geometry"];
  readonly loading: Loading;
  readonly figures: LoadFigures;
  readonly units: LoadUnits;
  readonly at: LoadLayout;
  readonly groundY_px: number;
  readonly live: LiveLoad;
}

const CENTRE_px = 9;

/** The elevation as a loaded beam: an arrow a row, heavier with its mass, and the centre of gravity they make. */
export function LoadBeam({ geometry, loading, figures, units, at, groundY_px, live }: LoadBeamProps) {
  const { pxPerMetre: k, originX_px, planY_px, cut_m } = at;
  const roof_m = Math.max(...geometry.fuselage.map(([, , top]) => top));
  const planEnd_px = planY_px + (cut_m ?? 0) * k;
  const head_px = Math.max(groundY_px - (roof_m + 0.36) * k, planEnd_px + 12);
  const [floor_m, top_m] = sectionAt(geometry.fuselage, loading.stations[0]?.arm_m ?? 0);
  const centreY_px = groundY_px - (floor_m + (top_m - floor_m) * 0.36) * k;
  const loads = beamLoads(loading, figures);
  const width_px = (mass_kg: number) => Math.min(8, 1.6 + (50 * mass_kg) / loading.limits.takeOff_kg);
  const centre = centreArm_m(figures);
  const parts = useParts();
  useFollowing(
    live,
    (step) => {
      const rows = beamLoads(loading, step.figures).map(({ arm_m, mass_kg }) => ({
        place: across(originX_px + arm_m * k),
        width: width_px(mass_kg).toFixed(2),
        mass: plain(mass_kg, units.mass),
      }));
      const arm_m = centreArm_m(step.figures);
      return { rows, centre: arm_m === undefined ? null : centreAt(originX_px + arm_m * k, centreY_px) };
    },
    (now) => {
      if (now.rows.length !== loads.length || (now.centre === null) !== (centre === undefined)) return false;
      for (const [index, row] of now.rows.entries()) {
        parts.put(`row ${index}`, "transform", row.place);
        parts.put(`width ${index}`, "stroke-width", row.width);
        parts.say(`mass ${index}`, row.mass);
      }
      if (now.centre !== null) parts.put("centre", "transform", now.centre);
      return true;
    },
    "drawing",
  );
  return (
    <>
      {loads.map(({ arm_m, mass_kg, lateral_m }, index) => {
        const [bottom_m] = sectionAt(geometry.fuselage, arm_m);
        const under = planY_px - lateral_m * k + 0.4 * k;
        return (
          <Arrow
            // biome-ignore lint/suspicious/noArrayIndexKey: the rows of seats and bays, from ahead to behind
            key={index}
            parts={parts}
            index={index}
            x={originX_px + arm_m * k}
            from={isUnderWing(geometry, arm_m) && cut_m !== null ? planY_px + cut_m * k + 10 : under}
            head={head_px}
            foot={groundY_px - (bottom_m + 0.2) * k}
            width_px={width_px(mass_kg)}
            text={plain(mass_kg, units.mass)}
          />
        );
      })}
      {centre === undefined ? null : (
        <Centre part={parts.ref("centre")} at={centreAt(originX_px + centre * k, centreY_px)} />
      )}
    </>
  );
}

/** Where the centre of gravity is at take-off, or with the fuel gone where that is all that is known. */
const centreArm_m = ({ states }: LoadFigures): number | undefined =>
  (states.find(({ at }) => at === "take-off") ?? states[0])?.arm_m;

const across = (x: number) => `translate(${x.toFixed(1)} 0)`;
const centreAt = (x: number, y: number) => `translate(${x.toFixed(1)} ${y.toFixed(1)})`;

interface ArrowProps {
  readonly parts: Parts;
  readonly index: number;
  readonly x: number;
  readonly from: number;
  readonly head: number;
  readonly foot: number;
  readonly width_px: number;
  readonly text: string;
}

const Arrow = memo(function Arrow({ parts, index, x, from, head, foot, width_px, text }: ArrowProps) {
  return (
    <g ref={parts.ref(`row ${index}`)} transform={across(x)}>
      {from < head - 8 ? <path className="load-projection" d={`M0,${from.toFixed(1)}V${head - 4}`} /> : null}
      <path
        ref={parts.ref(`width ${index}`)}
        className="load-arrow"
        strokeWidth={width_px.toFixed(2)}
        d={`M0,${(head - 2).toFixed(1)}V${(foot - 10).toFixed(1)}`}
      />
      <path className="load-arrow-head" d={`M0,${foot.toFixed(1)}l-6.5,-12h13z`} />
      <text ref={parts.ref(`mass ${index}`)} className="load-beam-mass halo" x={8} y={head + 10}>
        {text}
      </text>
    </g>
  );
});

/** The quartered circle of a centre of gravity, and the ring that the enlarged view A shows. */
function Centre({ part, at }: { readonly part: ReturnType<Parts["ref"]>; readonly at: string }) {
  const r = CENTRE_px;
  return (
    <g ref={part} transform={at}>
      <circle className="load-ring" r={20} />
      <circle className="load-centre" r={r} />
      <path
        className="load-centre-dark"
        d={`M0,0V${-r}A${r},${r} 0 0 1 ${r},0zM0,0V${r}A${r},${r} 0 0 1 ${-r},0z`}
      />
      <path className="load-leader-ink" d="M-14,14L-42,44H-58" />
      <LetterA x={-70} y={44} />
    </g>
  );
}

export function LetterA({ x, y }: { readonly x: number; readonly y: number }) {
  return (
    <g transform={`translate(${x} ${y})`}>
      <circle className="load-centre" r={12} />
      <text className="load-letter" y={5.5} textAnchor="middle">
        A
      </text>
    </g>
  );
}

const isUnderWing = ({ wing }: Book["geometry"], arm_m: number): boolean =>
  arm_m > wing.root.leadingEdge - 0.1 && arm_m < wing.root.leadingEdge + wing.root.chord + 0.1;

/** Bottom and top of the fuselage at a place. */
function sectionAt(fuselage: Book["geometry"]["fuselage"], x_m: number): readonly [number, number] {
  const aft = fuselage.findIndex(([x]) => x >= x_m);
  const behind = fuselage[aft] ?? fuselage.at(-1);
  const ahead = fuselage[aft - 1] ?? behind;
  if (behind === undefined || ahead === undefined) return [0, 0];
  const share = behind === ahead ? 0 : (x_m - ahead[0]) / (behind[0] - ahead[0]);
  return [ahead[3] + (behind[3] - ahead[3]) * share, ahead[2] + (behind[2] - ahead[2]) * share];
}
