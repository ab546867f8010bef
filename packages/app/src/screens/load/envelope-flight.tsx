import type { LoadFigures } from "@witnessmark/assess";
import type { Status } from "@witnessmark/ledger";
import { useMemo } from "react";
import type { ChartScale } from "./envelope-layout.ts";
import {
  type FlightPicture,
  flightPicture,
  isDot,
  LINES,
  MARGINS,
  type PlacedText,
} from "./envelope-picture.ts";
import { type LiveLoad, useFollowing, useRows } from "./follow/live-load.ts";
import { type Parts, useParts } from "./follow/parts.ts";
import { StatusMarkAt, sayStatusAt } from "./follow/status-mark.tsx";
import type { LoadUnits } from "./load-units.ts";
import { pointsOf, type RowKey } from "./phase-rows.ts";

interface EnvelopeFlightProps {
  readonly scale: ChartScale;
  readonly figures: LoadFigures;
  readonly units: LoadUnits;
  readonly small: boolean;
  readonly live: LiveLoad;
}

/** The flight in the envelope: the burn as a line, its moments as marks, what is left as dimensions. */
export function EnvelopeFlight(props: EnvelopeFlightProps) {
  const { scale, units, small, live } = props;
  const figures = useRows(live, props.figures);
  const parts = useParts();
  const picture = usePictures(scale, units, small);
  useFollowing(
    live,
    (step) => ({
      picture: picture(step.figures),
      isWithin: isWithin(scale, step.figures),
      statuses: step.figures.states.map(({ at, status }) => [`mark ${at}`, status] as const),
    }),
    ({ picture: now, isWithin: stays, statuses }) => {
      if (!stays) return false;
      for (const [name] of LINES.slice(0, AT_ONCE)) parts.put(name, "d", now.lines[name]);
      for (const { at, x, y } of now.moments) parts.put(`at ${at}`, "transform", placeOf(x, y));
      for (const [part, status] of statuses) sayStatusAt(parts, part, status);
      return true;
    },
  );
  useFollowing(
    live,
    (step) => picture(step.figures),
    (now) => {
      for (const name of MARGINS) move(parts, `margin ${name}`, now.margins[name], marginClass);
      for (const [name] of LINES.slice(AT_ONCE)) parts.put(name, "d", now.lines[name]);
      return true;
    },
    "margins",
  );
  useFollowing(
    live,
    (step) => picture(step.figures),
    (now) => {
      parts.put("leaders", "d", now.leaders);
      for (const { at, name } of now.moments) move(parts, `name ${at}`, name, nameClass);
      return true;
    },
    "names",
  );
  const { lines, margins, moments, leaders } = picture(figures);
  const marks = moments.filter(({ at }) => !isDot(at));
  const dots = moments.filter(({ at }) => isDot(at));
  return (
    <>
      {LINES.map(([name, className]) => (
        <path key={name} ref={parts.ref(name)} className={className} d={lines[name]} />
      ))}
      {MARGINS.map((name) => (
        <Words key={name} of={margins[name]} className={marginClass} part={parts.ref(`margin ${name}`)} />
      ))}
      {marks.map(({ at, x, y }) => (
        <g key={at} ref={parts.ref(`at ${at}`)} transform={placeOf(x, y)}>
          <StatusMarkAt
            status={statusAt(figures, at)}
            size_px={small ? 24 : 26}
            part={parts.ref(`mark ${at}`)}
          />
        </g>
      ))}
      {dots.map(({ at, x, y }) => (
        <circle
          key={at}
          ref={parts.ref(`at ${at}`)}
          className="envelope-dot"
          r={3}
          transform={placeOf(x, y)}
        />
      ))}
      <path ref={parts.ref("leaders")} className="load-leader-ink" d={leaders} />
      {moments.map(({ at, name }) => (
        <Words key={at} of={name} className={nameClass} part={parts.ref(`name ${at}`)} />
      ))}
    </>
  );
}

/** The burn itself; dimensions and names follow in their turn. */
const AT_ONCE = 2;

/** Whether all moments are in the picture; where one has left it, the picture grows. */
export const isWithin = ({ plot, x, y }: ChartScale, figures: LoadFigures): boolean =>
  pointsOf(figures).every(({ arm_m, mass_kg }) => {
    const [left, top] = [x(arm_m), y(mass_kg)];
    return left >= plot.left && left <= plot.right && top >= plot.top && top <= plot.bottom;
  });

const placeOf = (x: number, y: number) => `translate(${x.toFixed(1)} ${y.toFixed(1)})`;
const nameClass = () => "envelope-name halo";
const marginClass = (over: boolean) => `envelope-margin halo${over ? " envelope-over" : ""}`;

function move(parts: Parts, part: string, now: PlacedText, className: (over: boolean) => string): void {
  parts.put(part, "x", now.x.toFixed(1));
  parts.put(part, "y", now.y.toFixed(1));
  parts.put(part, "text-anchor", now.anchor);
  parts.put(part, "class", className(now.over));
  parts.say(part, now.text);
}

function Words({
  of,
  className,
  part,
}: {
  readonly of: PlacedText;
  readonly className: (over: boolean) => string;
  readonly part: ReturnType<Parts["ref"]>;
}) {
  return (
    <text
      ref={part}
      className={className(of.over)}
      x={of.x.toFixed(1)}
      y={of.y.toFixed(1)}
      textAnchor={of.anchor}
    >
      {of.text}
    </text>
  );
}

/** The picture of some figures, drawn once for all that shows a part of it. */
function usePictures(
  scale: ChartScale,
  units: LoadUnits,
  small: boolean,
): (figures: LoadFigures) => FlightPicture {
  return useMemo(() => {
    const known = new WeakMap<LoadFigures, FlightPicture>();
    return (figures) => {
      const found = known.get(figures);
      if (found !== undefined) return found;
      const made = flightPicture(scale, figures, units, small);
      known.set(figures, made);
      return made;
    };
  }, [scale, units, small]);
}

/** A moment that is not there has no mark. */
const statusAt = ({ states }: Pick<LoadFigures, "states">, moment: RowKey): Status =>
  states.find(({ at }) => at === moment)?.status ?? "open";
