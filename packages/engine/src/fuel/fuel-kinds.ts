import type { QuantitySource } from "../registry/quantity.ts";

export type FuelKind = "jet-a1" | "jet-a" | "avgas-100ll" | "mogas";

/** What a specification says of a fuel. A delivery note is better than any of it. */
export interface FuelKindFacts {
  readonly id: FuelKind;
  readonly name: string;
  /** Least and greatest density at 15 °C. */
  readonly density15_kgPerM3: readonly [least: number, greatest: number];
  /** The greatest freezing point that the specification allows; a batch may be lower. None is known for mogas. */
  readonly freezingPointMax_K: number | undefined;
  readonly sources: readonly [QuantitySource, ...QuantitySource[]];
}

const D1655: QuantitySource = {
  title: "ASTM D1655, Standard Specification for Aviation Turbine Fuels",
  edition: "D1655-22",
  locator: "freezing point; density at 15 °C",
  status: "published",
};

export const FUEL_KINDS: Readonly<Record<FuelKind, FuelKindFacts>> = {
  "jet-a1": {
    id: "jet-a1",
    name: "Jet A-1",
    density15_kgPerM3: [775, 840],
    freezingPointMax_K: 226.15,
    sources: [D1655],
  },
  "jet-a": {
    id: "jet-a",
    name: "Jet A",
    density15_kgPerM3: [775, 840],
    freezingPointMax_K: 233.15,
    sources: [D1655],
  },
  "avgas-100ll": {
    id: "avgas-100ll",
    name: "Avgas 100LL",
    density15_kgPerM3: [690, 740],
    freezingPointMax_K: 215.15,
    sources: [
      {
        title: "ASTM D910, Standard Specification for Leaded Aviation Gasolines",
        locator: "freezing point −58 °C; the specification limits no density, the span is remembered",
        status: "from memory",
      },
    ],
  },
  mogas: {
    id: "mogas",
    name: "Mogas",
    density15_kgPerM3: [720, 775],
    freezingPointMax_K: undefined,
    sources: [
      {
        title: "EN 228, Automotive fuels: unleaded petrol",
        locator: "density at 15 °C",
        status: "from memory",
      },
    ],
  },
};

/** Round figures for fluids where nothing better is known, as a handbook prints them in pounds per US gallon. */
export const HANDBOOK_FLUID_LBPERUSGAL = {
  gasoline: 6,
  "jet-a": 6.8,
  "jet-b": 6.5,
  oil: 7.5,
  water: 8.35,
} as const;
