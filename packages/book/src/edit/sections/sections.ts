import { AIRCRAFT_CLASSES, ENGINES, GEARS } from "../../schema/kinds.ts";
import { line, type Section, text } from "./field.ts";
import { LOADING_SECTIONS } from "./loading-sections.ts";
import { RECORD_SECTIONS } from "./record-sections.ts";
import { SHAPE_SECTIONS } from "./shape-sections.ts";
import { WALK_SECTIONS } from "./walk-sections.ts";

const AIRCRAFT: Section = {
  id: "aircraft",
  title: "The aircraft",
  group: "aircraft",
  path: [],
  blank: null,
  fields: [
    text("notice", "Fit for"),
    {
      is: "part",
      key: "aircraft",
      label: "Aircraft",
      blank: null,
      fields: [
        line("type", "Type"),
        line("description", "Is a"),
        { is: "number", key: "seats", label: "Seats" },
        { is: "choice", key: "engine", label: "Engine", of: ENGINES },
        { is: "number", key: "engines", label: "Engines" },
        {
          is: "switch",
          key: "carburettor",
          label: "Has a carburettor",
          optional: true,
          note: "A piston engine may have one where nothing is said.",
        },
        { is: "choice", key: "class", label: "Class", of: AIRCRAFT_CLASSES, optional: true },
        line("typeRating", "Type rating", { optional: true, note: "Where its pilot needs one." }),
        { is: "choice", key: "gear", label: "Stands on", of: GEARS },
        { is: "switch", key: "retractable", label: "Gear comes up" },
      ],
    },
  ],
};

/** Every page of a book, in the order in which one is made. */
export const SECTIONS: readonly Section[] = [
  AIRCRAFT,
  ...SHAPE_SECTIONS,
  ...WALK_SECTIONS,
  ...LOADING_SECTIONS,
  ...RECORD_SECTIONS,
];

export const GROUP_NAMES: Readonly<Record<Section["group"], string>> = {
  aircraft: "Aircraft",
  walk: "Walk",
  loading: "Load",
  performance: "Performance",
  record: "Record",
  rules: "Rules",
};

export const sectionOf = (id: string): Section | undefined => SECTIONS.find((section) => section.id === id);
