import { type BookEdit, type BookPath, type Plain, valueAt } from "@witnessmark/book";
import type { DrawingMark, DrawingView, PlaceOnView } from "../../drawing/aircraft-drawing.tsx";
import { cm } from "../../drawing/centimetre.ts";

/** A place of the outline that can be dragged on a view. */
export interface OutlineHandle {
  readonly id: string;
  readonly name: string;
  readonly place: DrawingMark["place"];
  readonly edits: (at: PlaceOnView) => readonly BookEdit[];
}

const numberAt = (plain: Plain, path: BookPath): number | undefined => {
  const value = valueAt(plain, path);
  return typeof value === "number" && Number.isFinite(value) ? value : undefined;
};

const setTo = (path: BookPath, to: number | undefined): readonly BookEdit[] =>
  to === undefined ? [] : [{ set: path, to: cm(to) }];

/** Every place of the draft's outline that can be dragged on this view. What is no figure has none. */
export function handlesOf(plain: Plain, view: DrawingView): readonly OutlineHandle[] {
  if (view === "front") return [];
  return [
    ...stationHandles(plain, view),
    ...(view === "plan"
      ? (["wing", "tailplane"] as const).flatMap((part) => surfaceHandles(plain, part))
      : []),
    ...(view === "side" ? finHandles(plain) : []),
  ];
}

function stationHandles(plain: Plain, view: "plan" | "side"): readonly OutlineHandle[] {
  const stations = valueAt(plain, ["geometry", "fuselage"]);
  if (!Array.isArray(stations)) return [];
  return stations.flatMap((_, index): OutlineHandle[] => {
    const path = ["geometry", "fuselage", index] as const;
    const figures = [0, 1, 2, 3].map((axis) => numberAt(plain, [...path, axis]));
    const [x_m, half_m, top_m, bottom_m] = figures;
    if (x_m === undefined || half_m === undefined || top_m === undefined || bottom_m === undefined) return [];
    const id = `fuselage-${index}`;
    const name = `Station ${index + 1}`;
    if (view === "plan")
      return [
        {
          id,
          name,
          place: [x_m, half_m, (top_m + bottom_m) / 2],
          edits: (at) => [
            ...setTo([...path, 0], at.x_m),
            ...setTo([...path, 1], at.y_m === undefined ? undefined : Math.abs(at.y_m)),
          ],
        },
      ];
    return [
      {
        id: `${id}-top`,
        name: `${name}, top`,
        place: [x_m, 0, top_m],
        edits: (at) => [...setTo([...path, 0], at.x_m), ...setTo([...path, 2], at.z_m)],
      },
      {
        id: `${id}-bottom`,
        name: `${name}, bottom`,
        place: [x_m, 0, bottom_m],
        edits: (at) => [...setTo([...path, 0], at.x_m), ...setTo([...path, 3], at.z_m)],
      },
    ];
  });
}

const NAMES = { wing: "Wing", tailplane: "Tailplane" } as const;

function surfaceHandles(plain: Plain, part: keyof typeof NAMES): readonly OutlineHandle[] {
  return (["root", "tip"] as const).flatMap((end): OutlineHandle[] => {
    const path = ["geometry", part, end] as const;
    const [y_m, edge_m, chord_m, z_m] = ["y", "leadingEdge", "chord", "z"].map((key) =>
      numberAt(plain, [...path, key]),
    );
    if (y_m === undefined || edge_m === undefined || chord_m === undefined || z_m === undefined) return [];
    const aft_m = edge_m + chord_m;
    const out = (at: PlaceOnView) =>
      setTo([...path, "y"], at.y_m === undefined ? undefined : Math.abs(at.y_m));
    return [
      {
        id: `${part}-${end}-edge`,
        name: `${NAMES[part]} ${end}, leading edge`,
        place: [edge_m, y_m, z_m],
        // the trailing edge stays where it is
        edits: (at) =>
          at.x_m === undefined
            ? []
            : [
                ...out(at),
                ...setTo([...path, "leadingEdge"], at.x_m),
                ...setTo([...path, "chord"], aft_m - at.x_m),
              ],
      },
      {
        id: `${part}-${end}-aft`,
        name: `${NAMES[part]} ${end}, trailing edge`,
        place: [aft_m, y_m, z_m],
        edits: (at) =>
          at.x_m === undefined ? [] : [...out(at), ...setTo([...path, "chord"], at.x_m - edge_m)],
      },
    ];
  });
}

function finHandles(plain: Plain): readonly OutlineHandle[] {
  const outline = valueAt(plain, ["geometry", "fin", "outline"]);
  if (!Array.isArray(outline)) return [];
  return outline.flatMap((_, index): OutlineHandle[] => {
    const path = ["geometry", "fin", "outline", index] as const;
    const [x_m, z_m] = [numberAt(plain, [...path, 0]), numberAt(plain, [...path, 1])];
    if (x_m === undefined || z_m === undefined) return [];
    return [
      {
        id: `fin-${index}`,
        name: `Fin, corner ${index + 1}`,
        place: [x_m, 0, z_m],
        edits: (at) => [...setTo([...path, 0], at.x_m), ...setTo([...path, 1], at.z_m)],
      },
    ];
  });
}
