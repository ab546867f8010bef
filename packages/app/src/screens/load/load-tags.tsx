import type { PlannedLoad } from "@witnessmark/ledger";
import { memo } from "react";
import { figure } from "../../words/figures.ts";
import type { Box, DrawnPlaces, DrawnStation } from "./drawn-load.ts";
import { type LoadUnits, safe, symbolOf } from "./load-units.ts";
import type { LoadLayout } from "./plan-layout.ts";

interface LoadTagsProps {
  readonly places: DrawnPlaces;
  readonly at: LoadLayout;
  readonly items: PlannedLoad["items"];
  readonly units: LoadUnits;
}

interface Tag {
  readonly key: string;
  readonly from: readonly [number, number];
  readonly to: readonly [number, number];
  readonly text: string;
  readonly anchor: "start" | "end";
}

const LINE_px = 23;
const LONGEST = 24;

/** Who and what is in the front seats, the rear ones and the bays, clear of the hull, on leaders. */
export const LoadTags = memo(function LoadTags(props: LoadTagsProps) {
  return (
    <>
      {tagsOf(props).map(({ key, from, to, text, anchor }) => (
        <g key={key}>
          <path className="load-leader" d={`M${from.join()}L${to.join()}`} />
          <circle className="load-leader-end" cx={from[0]} cy={from[1]} r={1.8} />
          <text
            className="load-tag halo"
            x={to[0] + (anchor === "start" ? 4 : -4)}
            y={to[1] + 4}
            textAnchor={anchor}
          >
            {text}
          </text>
        </g>
      ))}
    </>
  );
});

/**
 * The names stand where the wing is not: ahead of it for the front seats, behind it for what lies further aft. A row
 * under the wing has none; it is in the list.
 */
function tagsOf({ places, at, items, units }: LoadTagsProps): readonly Tag[] {
  const k = at.pxPerMetre;
  const { tanks, stations } = places;
  // without tanks there is no wing to keep clear of but that over the seats
  const wing = tanks.length === 0 ? stations : tanks;
  const fore_px = Math.min(...wing.map(({ box }) => box.x - box.halfX)) - 0.25 * k;
  const aft_px = Math.max(...wing.map(({ box }) => box.x + box.halfX)) + 0.45 * k;
  const named = stations.flatMap((drawn) => {
    const text = nameOf(drawn, items, units);
    return text === null ? [] : [{ drawn, text }];
  });
  const tags: Tag[] = [];
  for (const side of [1, -1] as const) {
    const here = named.filter(({ drawn }) => sideOf(drawn) === side);
    const behind = here
      .filter(({ drawn }) => drawn.box.x > aft_px - 0.4 * k)
      .toSorted((a, b) => b.drawn.box.x - a.drawn.box.x);
    const ahead = here
      .filter(({ drawn }) => drawn.box.x < fore_px + 0.9 * k && !behind.some((one) => one.drawn === drawn))
      .toSorted((a, b) => a.drawn.box.x - b.drawn.box.x);
    for (const [index, { drawn, text }] of ahead.entries()) {
      const y = at.planY_px - side * (1.25 * k + index * LINE_px);
      const from = cornerOf(drawn.box, side, -1);
      tags.push({ key: drawn.station.id, from, to: [fore_px - 0.12 * k, y], text, anchor: "end" });
    }
    // the aftmost stands lowest, so that no leader crosses another
    for (const [index, { drawn, text }] of behind.entries()) {
      const y = at.planY_px - side * (1.02 * k + index * LINE_px);
      const from = cornerOf(drawn.box, side, 1);
      const x = Math.max(aft_px, from[0] + 0.16 * k);
      tags.push({ key: drawn.station.id, from, to: [x, y], text, anchor: "start" });
    }
  }
  return tags;
}

const sideOf = ({ station }: DrawnStation): 1 | -1 => (station.place[1] < -0.05 ? -1 : 1);

/** Just inside the corner next to the tag. */
const cornerOf = (box: Box, side: 1 | -1, way: 1 | -1): readonly [number, number] => [
  box.x + way * (box.halfX - 5),
  box.y - side * (box.halfY - 5),
];

function nameOf({ station }: DrawnStation, all: PlannedLoad["items"], units: LoadUnits): string | null {
  const items = all.filter((item) => item.station === station.id);
  const [first] = items;
  if (first === undefined) return null;
  if (station.kind === "bay" && station.max_kg !== undefined) {
    return `${station.name}, to ${safe(station.max_kg, units.mass, "down")} ${symbolOf(units.mass)}`;
  }
  const what = first.what.trim();
  if (what === "") return null;
  const text = items.length > 1 ? `${what} and ${figure(items.length - 1)} more` : what;
  return text.length > LONGEST ? `${text.slice(0, LONGEST - 1)}…` : text;
}
