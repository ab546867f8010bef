import { type BookEdit, firstFiguresOf, freeId, type Plain, type Section, valueAt } from "@witnessmark/book";
import { cm } from "../../drawing/centimetre.ts";
import { capital } from "../../words/capital.ts";
import { datumWords } from "../begin/first-figures.ts";

/** What puts a page in that is not there, or one more item on it, with what stands above it where that is missing. */
export function sectionBlank(plain: Plain, section: Section): readonly BookEdit[] {
  const [top] = section.path;
  if (section.one === undefined)
    return [...above(plain, section), { set: section.path, to: blankOf(plain, section) }];
  const list = valueAt(plain, section.path);
  const item = withId(plain, section);
  if (Array.isArray(list)) return [{ insert: [...section.path, list.length], item }];
  const before = section.path.length > 1 && typeof top === "string" ? above(plain, section) : [];
  return [...before, { set: section.path, to: [item] }];
}

function above(plain: Plain, { path }: Section): readonly BookEdit[] {
  const [top] = path;
  if (path.length < 2 || top === undefined || valueAt(plain, [top]) !== undefined) return [];
  const whole: Plain = top === "loading" ? loadingBlank(plain) : top === "performance" ? PERFORMANCE : {};
  return [{ set: [top], to: whole }];
}

const PERFORMANCE: Plain = { tables: [], crosswind: { value: "", kind: "demonstrated" }, tailwindMax: "" };

const blankOf = (plain: Plain, section: Section): Plain =>
  section.id === "loading"
    ? loadingBlank(plain)
    : section.id === "fuel"
      ? fuelBlank(plain, section)
      : section.blank;

/** An item that has a short name of its own from the start. */
function withId(plain: Plain, { blank, one, path }: Section): Plain {
  if (valueAt(blank, ["id"]) === undefined) return blank;
  return {
    ...(blank as { readonly [key: string]: Plain }),
    id: freeId(plain, path, one ?? "item"),
  }; // with an id it is keys and values
}

function fuelBlank(plain: Plain, { blank }: Section): Plain {
  const tanks = valueAt(plain, ["loading", "tanks"]);
  const ids = Array.isArray(tanks) ? tanks.flatMap((tank: Plain) => valueAt(tank, ["id"]) ?? []) : [];
  const isJet = valueAt(plain, ["aircraft", "engine"]) === "turboprop";
  return {
    ...(blank as { readonly [key: string]: Plain }), // a page of keys and values
    ...(isJet ? { kind: "jet-a1", density15: "0.80 kg/L" } : {}),
    order: ids.length === 0 ? [] : [ids],
  };
}

/** Where the arms are counted from, as the first figures say. */
function datumOf(plain: Plain): string {
  const figures = firstFiguresOf(plain);
  return figures === undefined
    ? "The datum of the drawing."
    : capital(`${datumWords(figures.datumAft_m, "m")}.`);
}

/**
 * A seat for each that the aircraft has and a tank in each wing, where they are likely drawn. Every figure is asked, arms
 * too: where something is drawn is no arm of the handbook.
 */
function loadingBlank(plain: Plain): Plain {
  const number = (path: readonly (string | number)[], instead: number): number => {
    const value = valueAt(plain, path);
    return typeof value === "number" ? value : instead;
  };
  const seats = number(["aircraft", "seats"], 2);
  const windscreen = number(["geometry", "windscreen", "x", 1], number(["geometry", "hatch", "x", 0], 2));
  const up = number(["geometry", "wing", "root", "z"], 1.2);
  const root = number(["geometry", "wing", "root", "leadingEdge"], 2);
  const chord = number(["geometry", "wing", "root", "chord"], 1.5);
  const out = number(["geometry", "wing", "tip", "y"], 5) * 0.35;
  const seat = (index: number): Plain => {
    const row = Math.floor(index / 2);
    const single = index === seats - 1 && index % 2 === 0;
    const side = single ? "centre" : index % 2 === 0 ? "left" : "right";
    const x = cm(windscreen + 0.35 + row * 0.85);
    return {
      id: `seat-${index + 1}`,
      name: `Seat ${index + 1}`,
      kind: "seat",
      side,
      arm: "",
      max: "",
      place: [x, side === "centre" ? 0 : side === "left" ? -0.25 : 0.25, 1.2],
      ...(index === 0 ? { crew: true } : {}),
    };
  };
  const tank = (side: "left" | "right"): Plain => {
    const [x, y] = [cm(root + chord * 0.35), cm(side === "left" ? -out : out)];
    return {
      id: `${side}-tank`,
      name: `${side === "left" ? "Left" : "Right"} wing tank`,
      side,
      capacity: "",
      unusable: "",
      arms: [
        { volume: "0 L", arm: "" },
        { volume: "", arm: "" },
      ],
      place: [x, y, up],
    };
  };
  return {
    datum: datumOf(plain),
    empty: { weighedOn: "", mass: "", arm: "" },
    stations: Array.from({ length: seats }, (_, index) => seat(index)),
    tanks: valueAt(plain, ["aircraft", "engine"]) === "none" ? [] : [tank("left"), tank("right")],
    limits: { takeOff: "" },
    envelopes: [{ id: "normal", name: "Normal", points: [1, 2, 3, 4].map(() => ({ arm: "", mass: "" })) }],
  };
}
