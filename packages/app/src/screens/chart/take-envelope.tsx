import { idFrom } from "@witnessmark/book";
import {
  type ChartFrame,
  type ChartPoint,
  type EnvelopeAxis,
  type EnvelopeCorner,
  envelopeOf,
  envelopeYaml,
} from "@witnessmark/chart";
import type { UnitId } from "@witnessmark/engine";
import { useState } from "react";
import type { ChartWork } from "./chart-work.ts";
import { CheckByEye } from "./check-by-eye.tsx";
import { Choose, ChooseUnit, TextIn } from "./fields.tsx";
import { numberOf } from "./read-work.ts";
import { isThere } from "./take-table.tsx";
import type { FromPaper, Wanted } from "./wanted.ts";

interface TakeEnvelopeProps {
  readonly work: ChartWork;
  readonly frame: ChartFrame | undefined;
  readonly wanted: Wanted | undefined;
  /** Whether a tap on the picture sets a corner. */
  readonly taps: boolean;
  readonly onTaps: () => void;
  readonly onUnit: (unit: UnitId) => void;
  readonly onTaken: (made: FromPaper) => void;
}

const KINDS = [
  ["arm", "Arm"],
  ["moment", "Moment"],
  ["chord", "Per cent of the chord"],
] as const;

/** What the x axis of the envelope is, the corners it gives, two readings of its edge by eye, and the taking. */
export function TakeEnvelope({ work, frame, wanted, taps, onTaps, onUnit, onTaken }: TakeEnvelopeProps) {
  const [kind, setKind] = useState<EnvelopeAxis["kind"]>("arm");
  const [armUnit, setArmUnit] = useState<UnitId>("m");
  const [momentUnit, setMomentUnit] = useState<UnitId>("lbin");
  const [times, setTimes] = useState("1000");
  const [leadingEdge, setLeadingEdge] = useState("");
  const [chord, setChord] = useState("");
  const axis: EnvelopeAxis =
    kind === "arm"
      ? { kind, unit: armUnit }
      : kind === "moment"
        ? { kind, unit: momentUnit, times: numberOf(times) }
        : { kind, leadingEdge_m: numberOf(leadingEdge), length_m: numberOf(chord) };
  const corners = cornersOf(work, frame);
  const isSaid =
    kind === "arm" ||
    (kind === "moment" ? numberOf(times) > 0 : numberOf(chord) > 0 && numberOf(leadingEdge) >= -100);
  const result = isSaid && corners.length > 0 ? envelopeOf(corners, axis, work.unit, armUnit) : undefined;
  return (
    <section className="chart-section">
      <h2>The envelope</h2>
      <p className="chart-note">Tap its corners on the picture, one after the other round the edge.</p>
      <button type="button" className="button full" aria-pressed={taps} onClick={onTaps}>
        Set the corners
      </button>
      <div className="chart-grid">
        <Choose label="x is" value={kind} options={KINDS} onChange={setKind} />
        {kind === "moment" ? (
          <>
            <ChooseUnit label="x in" dimension="mass-moment" value={momentUnit} onChange={setMomentUnit} />
            <TextIn label="printed in multiples of" value={times} isNumber onChange={setTimes} />
          </>
        ) : null}
        {kind === "chord" ? (
          <>
            <TextIn
              label="Leading edge aft of the datum, m"
              value={leadingEdge}
              isNumber
              onChange={setLeadingEdge}
            />
            <TextIn label="Chord, m" value={chord} isNumber onChange={setChord} />
          </>
        ) : null}
        <ChooseUnit
          label={kind === "arm" ? "x in" : "Arms written in"}
          dimension="length"
          value={armUnit}
          onChange={setArmUnit}
        />
        <ChooseUnit label="y in" dimension="mass" value={work.unit} onChange={onUnit} />
      </div>
      {result?.ok === true && frame !== undefined ? (
        <CornersChecked
          corners={corners}
          made={result.corners}
          frame={frame}
          wanted={wanted}
          onTaken={onTaken}
        />
      ) : (
        <p className={result?.ok === false ? "chart-wrong" : "chart-lack"} role="status">
          {result?.ok === false ? result.says : lackOf(frame, isSaid)}
        </p>
      )}
    </section>
  );
}

function lackOf(frame: ChartFrame | undefined, isSaid: boolean): string {
  if (frame === undefined) return "The axes come first.";
  return isSaid ? "Tap the first corner." : "Say the figures that turn x into an arm.";
}

interface CornersCheckedProps extends Pick<TakeEnvelopeProps, "wanted" | "onTaken"> {
  /** In the units of the chart. */
  readonly corners: readonly ChartPoint[];
  /** As the book writes them. */
  readonly made: readonly EnvelopeCorner[];
  readonly frame: ChartFrame;
}

function CornersChecked({ corners, made, frame, wanted, onTaken }: CornersCheckedProps) {
  const name = wanted?.kind === "envelope" ? wanted.name : undefined;
  return (
    <CheckByEye
      asks={[{ as: "entered", label: "y, on a slanting or upright edge" }]}
      reads="x of the edge there"
      checking={{
        value: ({ entered, read }) => edgeNear(corners, entered[0] ?? Number.NaN, read),
        enteredSpans: [frame.ySpan],
        readSpan: frame.xSpan,
        readScale: "linear",
      }}
      title={name === undefined || name === "" ? "Normal" : name}
      isThere={isThere(wanted)}
      hasFlaps={false}
      onTake={({ title }) => {
        const value = { id: wanted?.id ?? idFrom(title), name: title, points: made };
        onTaken({ kind: "envelope", at: ["loading", "envelopes"], value, yaml: envelopeYaml(value) });
      }}
    >
      <h2>Its corners</h2>
      <ol className="chart-corners">
        {made.map(({ arm, mass }) => (
          <li key={`${arm} ${mass}`}>
            {mass} at {arm}
          </li>
        ))}
      </ol>
    </CheckByEye>
  );
}

function cornersOf(work: ChartWork, frame: ChartFrame | undefined): readonly ChartPoint[] {
  if (frame === undefined) return [];
  const knots = work.panels[0]?.curves[0]?.knots ?? [];
  return knots.map((knot) => frame.toValues(knot)).filter((point) => point !== undefined);
}

/** Where the edge stands at a height, nearest to what was read. */
function edgeNear(corners: readonly ChartPoint[], y: number, read: number): number | undefined {
  let found: number | undefined;
  for (const [i, from] of corners.entries()) {
    const to = corners[(i + 1) % corners.length] ?? from;
    const share = (y - from.y) / (to.y - from.y);
    if (!(share >= 0 && share <= 1)) continue;
    const x = from.x + share * (to.x - from.x);
    if (found === undefined || Math.abs(x - read) < Math.abs(found - read)) found = x;
  }
  return found;
}
