import type { Plain } from "../edit/edit-text.ts";
import { valueAt } from "../edit/plain-of.ts";
import { type DrawnFrom, TAILS, WINGS } from "../schema/drawn-from.ts";
import { ENGINES, GEARS } from "../schema/kinds.ts";
import type { Figures } from "./figures.ts";

/** The first figures of an aircraft, without its names. */
export type FirstFigures = Omit<Figures, "registration" | "type">;

/** As they are written in the book. */
export const writtenFigures = (figures: FirstFigures): DrawnFrom => ({
  span: figures.span_m,
  length: figures.length_m,
  ...(figures.height_m === undefined ? {} : { height: figures.height_m }),
  // a program of before knows no other datum than the foremost part
  ...(figures.datumAft_m === 0 ? {} : { datum: figures.datumAft_m }),
  wing: figures.wing,
  tail: figures.tail,
  gear: figures.gear,
  retractable: figures.retractable,
  engine: figures.engine,
  engines: figures.engines,
  seats: figures.seats,
  pressurised: figures.pressurised,
  tows: figures.tows,
});

const oneOf = <T extends string>(value: Plain | undefined, of: readonly T[]): T | undefined =>
  of.find((each) => each === value);

/** The figures that a book was drawn from; nothing where it does not say them, or not all of them. */
export function firstFiguresOf(plain: Plain): FirstFigures | undefined {
  const at = (key: string) => valueAt(plain, ["drawnFrom", key]);
  const number = (key: string) => {
    const value = at(key);
    return typeof value === "number" && Number.isFinite(value) ? value : undefined;
  };
  const [span_m, length_m, seats] = [number("span"), number("length"), number("seats")];
  const [wing, tail] = [oneOf(at("wing"), WINGS), oneOf(at("tail"), TAILS)];
  const [gear, engine] = [oneOf(at("gear"), GEARS), oneOf(at("engine"), ENGINES)];
  const engines = ([0, 1, 2] as const).find((count) => count === at("engines"));
  if (span_m === undefined || length_m === undefined || seats === undefined) return undefined;
  if (wing === undefined || tail === undefined || gear === undefined) return undefined;
  if (engine === undefined || engines === undefined) return undefined;
  return {
    span_m,
    length_m,
    height_m: number("height"),
    datumAft_m: number("datum") ?? 0,
    wing,
    tail,
    gear,
    retractable: at("retractable") === true,
    engine,
    engines,
    seats,
    pressurised: at("pressurised") === true,
    tows: at("tows") === true,
  };
}
