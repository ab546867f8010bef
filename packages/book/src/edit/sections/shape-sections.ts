import { wheelNames } from "../../begin/wheel-names.ts";
import { TAILS, WINGS } from "../../schema/drawn-from.ts";
import { ENGINES, GEARS } from "../../schema/kinds.ts";
import { HAZARD_KINDS } from "../../schema/walk-order.ts";
import type { Plain } from "../edit-text.ts";
import { valueAt } from "../plain-of.ts";
import { type BookField, NAME, type Section } from "./field.ts";

type More = { readonly optional?: true; readonly note?: string };

const metres = (key: string, label: string, more: More = {}): BookField => ({
  is: "number",
  key,
  label,
  unit: "m",
  ...more,
});
const figures = (key: string, label: string, ways: readonly string[], more: More = {}): BookField => ({
  is: "place",
  key,
  label,
  ways,
  ...more,
});
const span = (key: string, label: string, more: More = {}) =>
  figures(key, label, ["aft, from", "aft, to"], more);
const spanOut = (key: string, label: string, more: More = {}) =>
  figures(key, label, ["out, from", "out, to"], more);

/** The first figures: span, length and layout, from which the rest can be drawn anew. */
export const FIRST_FIGURES: Section = {
  id: "figures",
  title: "First figures",
  group: "aircraft",
  path: ["drawnFrom"],
  blank: null,
  fields: [
    metres("span", "Wing span"),
    metres("length", "Length"),
    metres("height", "Height", { optional: true }),
    metres("datum", "Datum, behind the tip of the nose", { optional: true }),
    { is: "choice", key: "wing", label: "Wing", of: WINGS },
    { is: "choice", key: "tail", label: "Tail", of: TAILS },
    { is: "choice", key: "gear", label: "Stands on", of: GEARS },
    { is: "switch", key: "retractable", label: "Gear comes up" },
    { is: "choice", key: "engine", label: "Engine", of: ENGINES },
    { is: "number", key: "engines", label: "Engines" },
    { is: "number", key: "seats", label: "Seats" },
    { is: "switch", key: "pressurised", label: "Pressurised" },
    { is: "switch", key: "tows", label: "Tows gliders" },
  ],
};

const STATIONS: BookField = {
  is: "rows",
  key: "stations",
  label: "Outline",
  one: "station",
  fields: [figures("", "Station", ["aft", "half width", "top", "bottom"])],
  blank: [0, 0.1, 0.8, 0.6],
};

const END: readonly BookField[] = [
  metres("y", "Out from the centre line"),
  metres("leadingEdge", "Leading edge, aft of the datum"),
  metres("chord", "Chord"),
  metres("z", "Above the ground"),
];
const end = (key: string, label: string): BookField => ({
  is: "part",
  key,
  label,
  fields: END,
  blank: { y: 0, leadingEdge: 0, chord: 1, z: 1 },
});
const hinged = (key: string, label: string): BookField => ({
  is: "part",
  key,
  label,
  optional: true,
  fields: [
    metres("from", "From, out from the centre line"),
    metres("to", "To, out from the centre line"),
    { is: "number", key: "hinge", label: "Hinge, share of the chord" },
  ],
  blank: { from: 1, to: 2, hinge: 0.75 },
});

const CORNERS = figures("", "Corner", ["aft", "up"]);

const WING: BookField = {
  is: "part",
  key: "wing",
  label: "Wing",
  blank: null,
  fields: [
    end("root", "Root"),
    {
      is: "rows",
      key: "kinks",
      label: "Kinks",
      one: "kink",
      fields: END,
      blank: { y: 2, leadingEdge: 2, chord: 1, z: 1 },
      optional: true,
    },
    end("tip", "Tip"),
    metres("tipRound", "Rounded tip, further out by"),
    hinged("flap", "Flap"),
    hinged("aileron", "Aileron"),
    spanOut("tank", "Tank", { optional: true }),
    {
      is: "part",
      key: "boot",
      label: "Ice protection of its edge",
      optional: true,
      fields: [spanOut("span", "Reaches"), { is: "lines", key: "joints", label: "Joints, metres out" }],
      blank: { span: [1, 2], joints: [] },
    },
    {
      is: "rows",
      key: "struts",
      label: "Struts, the right one",
      one: "strut",
      fields: [
        figures("foot", "At the fuselage", ["aft", "right", "up"]),
        figures("head", "At the wing", ["aft", "right", "up"]),
      ],
      blank: { foot: [2, 0.5, 1], head: [2, 2, 2] },
      optional: true,
    },
  ],
};

const TAIL: readonly BookField[] = [
  {
    is: "part",
    key: "tailplane",
    label: "Tailplane",
    blank: null,
    fields: [
      end("root", "Root"),
      end("tip", "Tip"),
      metres("tipRound", "Rounded tip, further out by"),
      { is: "number", key: "elevator", label: "Hinge of the elevator, share of the chord" },
      { is: "switch", key: "boot", label: "Ice protection", optional: true },
      { is: "choice", key: "trimTab", label: "Trim tab", of: ["left", "right", "both"], optional: true },
    ],
  },
  {
    is: "part",
    key: "fin",
    label: "Fin",
    optional: true,
    blank: {
      span: [6, 7],
      outline: [
        [6, 1],
        [6.6, 2],
        [7, 2],
        [7, 1],
      ],
      hinge: [
        [6.7, 2],
        [6.8, 1],
      ],
    },
    fields: [
      span("span", "Reaches"),
      { is: "rows", key: "outline", label: "Outline", one: "corner", fields: [CORNERS], blank: [7, 1] },
      {
        is: "rows",
        key: "hinge",
        label: "Hinge of the rudder",
        one: "end",
        fields: [CORNERS],
        blank: [7, 1],
      },
    ],
  },
];

/** What the aircraft looks like: metres from the datum, along the ground and up from it. */
export const OUTLINE: Section = {
  id: "outline",
  title: "Outline",
  group: "aircraft",
  path: ["geometry"],
  blank: null,
  fields: [{ ...STATIONS, key: "fuselage", label: "Fuselage" }, WING, ...TAIL],
};

/** A wheel is told from the others by where it stands; one whose figures are not all there, by its place in the list. */
const namesOfWheels = (rows: readonly Plain[]): readonly string[] => {
  const wheels = rows.map((row) => {
    const [x, y, diameter] = ["x", "y", "diameter"].map((key) => valueAt(row, [key]));
    return typeof x === "number" && typeof y === "number" && typeof diameter === "number"
      ? { x, y, diameter }
      : undefined;
  });
  const names = wheelNames(wheels.filter((wheel) => wheel !== undefined));
  let told = 0;
  return wheels.map(
    (wheel, index) => (wheel === undefined ? undefined : names[told++]) ?? `Wheel ${index + 1}`,
  );
};

/** What it stands on and what turns: the arc of each propeller keeps everybody out. */
export const GEAR_AND_PROPELLERS: Section = {
  id: "gear-and-propellers",
  title: "Wheels and propellers",
  group: "aircraft",
  path: ["geometry"],
  blank: null,
  fields: [
    {
      is: "rows",
      key: "wheels",
      label: "Wheels",
      one: "wheel",
      names: namesOfWheels,
      blank: { x: 2, y: 0, width: 0.16, diameter: 0.4, top: 0.6 },
      fields: [
        metres("x", "Axle, aft of the datum"),
        metres("y", "Right of the centre line"),
        metres("diameter", "Diameter"),
        metres("width", "Width"),
        metres("top", "Top of the leg, above the ground"),
        metres("rake", "Top of the leg, aft of the axle", { optional: true }),
        metres("topY", "Top of the leg, right of the centre line", { optional: true }),
        { is: "choice", key: "cover", label: "Covered by", of: ["spat", "door"], optional: true },
      ],
    },
    {
      is: "rows",
      key: "propellers",
      label: "Propellers: their arc keeps everybody out",
      one: "propeller",
      blank: { x: 0.2, y: 0, z: 1.3, radius: 0.9, spinner: true },
      fields: [
        metres("x", "Hub, aft of the datum"),
        metres("y", "Hub, right of the centre line"),
        metres("z", "Hub, above the ground"),
        metres("radius", "From the hub to the tip of a blade"),
        { is: "number", key: "blades", label: "Blades", optional: true, note: "2" },
        { is: "switch", key: "spinner", label: "Has a spinner" },
      ],
    },
    {
      is: "rows",
      key: "nacelles",
      label: "Nacelles",
      one: "nacelle",
      blank: {
        y: 1.8,
        stations: [
          [1, 0.2, 1.3, 0.9],
          [2.5, 0.1, 1.2, 1],
        ],
      },
      fields: [metres("y", "Right of the centre line"), STATIONS],
    },
    metres("exhaust", "Exhaust stubs, aft of the datum", { optional: true }),
  ],
};

/** Where one gets in, and where one looks out. */
export const OPENINGS: Section = {
  id: "openings",
  title: "Door and windows",
  group: "aircraft",
  path: ["geometry"],
  blank: null,
  fields: [
    {
      is: "part",
      key: "door",
      label: "Door",
      optional: true,
      blank: { x: [2.6, 3.4], z: [0.8, 1.8], side: "left" },
      fields: [
        span("x", "Reaches"),
        figures("z", "Sill and top", ["up, from", "up, to"]),
        { is: "choice", key: "side", label: "On the", of: ["left", "right"] },
      ],
    },
    {
      is: "part",
      key: "hatch",
      label: "Hatch or canopy",
      optional: true,
      blank: { x: [1.5, 2.5], halfWidth: 0.3 },
      fields: [span("x", "Reaches"), metres("halfWidth", "Half its width")],
    },
    {
      is: "part",
      key: "windscreen",
      label: "Windscreen",
      optional: true,
      blank: { x: [2, 2.6], halfWidth: 0.4 },
      fields: [
        span("x", "Reaches"),
        metres("halfWidth", "Half its width"),
        {
          is: "rows",
          key: "side",
          label: "From the side",
          one: "corner",
          fields: [CORNERS],
          blank: [2, 1.5],
          optional: true,
        },
      ],
    },
    {
      is: "rows",
      key: "windows",
      label: "Windows, from above",
      one: "window",
      fields: [span("", "Reaches")],
      blank: [2.5, 3],
    },
    {
      is: "rows",
      key: "sideWindows",
      label: "Windows, from the side",
      one: "window",
      fields: [span("x", "Reaches"), figures("z", "Height", ["up, from", "up, to"])],
      blank: { x: [2.5, 3], z: [1.2, 1.6] },
    },
    { is: "lines", key: "frames", label: "Joints across, metres aft" },
  ],
};

/** What stands round it, and where nobody is to stand. */
export const KEEP_OUTS: Section = {
  id: "keep-outs",
  title: "Steps and keep-outs",
  group: "aircraft",
  path: ["hazards"],
  one: "step or keep-out",
  blank: { name: "", kind: "step", place: [3, -1], radius: 0.3 },
  fields: [
    NAME,
    { is: "choice", key: "kind", label: "Is a", of: HAZARD_KINDS },
    figures("place", "Place", ["aft", "right"]),
    metres("radius", "Reaches"),
  ],
};

export const SHAPE_SECTIONS: readonly Section[] = [
  FIRST_FIGURES,
  OUTLINE,
  GEAR_AND_PROPELLERS,
  OPENINGS,
  KEEP_OUTS,
];
