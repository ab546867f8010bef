import { pressureAltitude } from "../air/altimetry.ts";
import { defineQuantity } from "./define-quantity.ts";

/**
 * What must not compile. `tsc` checks this file: each line marked as an error has to be one, or the check fails.
 * Nothing runs it.
 */

const SOURCES = [{ title: "a source", status: "published" }] as const;

const HEIGHT = { name: "height_m", unit: "m", range: [0, 100], meaning: "height" } as const;

export const whatMustNotCompile = [
  // A sound definition compiles, and gives its inputs' names to compute and to its callers.
  () =>
    defineQuantity({
      id: "sound",
      title: "Sound",
      inputs: [HEIGHT],
      output: { name: "twice_m", unit: "m" },
      formula: "2 h",
      sources: SOURCES,
      compute: ({ height_m }) => 2 * height_m,
    }).compute({ height_m: 1 }),

  () =>
    defineQuantity({
      id: "wrong-suffix",
      title: "A name that ends in another unit than it has",
      // @ts-expect-error: height_ft does not end in _m
      inputs: [{ name: "height_ft", unit: "m", range: [0, 100], meaning: "height" }],
      output: { name: "twice_m", unit: "m" },
      formula: "2 h",
      sources: SOURCES,
      compute: () => 1,
    }),

  () =>
    defineQuantity({
      id: "not-si",
      title: "A unit that is not SI",
      // @ts-expect-error: ft is a unit, and not one that values inside are kept in
      inputs: [{ name: "height_ft", unit: "ft", range: [0, 100], meaning: "height" }],
      output: { name: "twice_m", unit: "m" },
      formula: "2 h",
      sources: SOURCES,
      compute: () => 1,
    }),

  () =>
    defineQuantity({
      id: "celsius",
      title: "A unit with factor one that is not SI",
      inputs: [HEIGHT],
      // @ts-expect-error: degC has an offset
      output: { name: "temperature_degC", unit: "degC" },
      formula: "2 h",
      sources: SOURCES,
      compute: ({ height_m }) => height_m,
    }),

  () =>
    defineQuantity({
      id: "no-unit",
      title: "A name without a unit",
      // @ts-expect-error: height has no unit at its end
      inputs: [{ name: "height", unit: "m", range: [0, 100], meaning: "height" }],
      output: { name: "twice_m", unit: "m" },
      formula: "2 h",
      sources: SOURCES,
      compute: () => 1,
    }),

  () =>
    defineQuantity({
      id: "wrong-output",
      title: "An output whose name ends in another unit",
      inputs: [HEIGHT],
      // @ts-expect-error: twice_Pa does not end in _m
      output: { name: "twice_Pa", unit: "m" },
      formula: "2 h",
      sources: SOURCES,
      compute: ({ height_m }) => 2 * height_m,
    }),

  () =>
    // @ts-expect-error: sources are missing
    defineQuantity({
      id: "no-source",
      title: "No source",
      inputs: [HEIGHT],
      output: { name: "twice_m", unit: "m" },
      formula: "2 h",
      compute: ({ height_m }) => 2 * height_m,
    }),

  () =>
    defineQuantity({
      id: "empty-sources",
      title: "An empty list of sources",
      inputs: [HEIGHT],
      output: { name: "twice_m", unit: "m" },
      formula: "2 h",
      // @ts-expect-error: at least one source
      sources: [],
      compute: ({ height_m }) => 2 * height_m,
    }),

  () =>
    defineQuantity({
      id: "unregistered-input",
      title: "An input that compute uses and the definition does not list",
      inputs: [HEIGHT],
      output: { name: "twice_m", unit: "m" },
      formula: "2 h",
      sources: SOURCES,
      // @ts-expect-error: width_m is not registered
      compute: ({ height_m, width_m }) => height_m * width_m,
    }),

  () =>
    defineQuantity({
      id: "no-range",
      title: "An input without a range",
      // @ts-expect-error: range is missing
      inputs: [{ name: "height_m", unit: "m", meaning: "height" }],
      output: { name: "twice_m", unit: "m" },
      formula: "2 h",
      sources: SOURCES,
      compute: () => 1,
    }),

  () =>
    defineQuantity({
      id: "text",
      title: "A compute that gives text",
      inputs: [HEIGHT],
      output: { name: "twice_m", unit: "m" },
      formula: "2 h",
      sources: SOURCES,
      // @ts-expect-error: a quantity is a number
      compute: ({ height_m }) => String(height_m),
    }),

  // A list goes to compute as a list, and its callers give one.
  () =>
    defineQuantity({
      id: "many",
      title: "Many",
      inputs: [{ ...HEIGHT, many: true }],
      output: { name: "first_m", unit: "m" },
      formula: "the first",
      sources: SOURCES,
      compute: ({ height_m }) => height_m[0] ?? 0,
    }).compute({ height_m: [1] }),

  () =>
    defineQuantity({
      id: "many-as-one",
      title: "A list that compute takes for a number",
      inputs: [{ ...HEIGHT, many: true }],
      output: { name: "twice_m", unit: "m" },
      formula: "2 h",
      sources: SOURCES,
      // @ts-expect-error: height_m is a list
      compute: ({ height_m }) => 2 * height_m,
    }),

  () =>
    defineQuantity({
      id: "one-as-many",
      title: "A number that compute takes for a list",
      inputs: [HEIGHT],
      output: { name: "first_m", unit: "m" },
      formula: "the first",
      sources: SOURCES,
      // @ts-expect-error: height_m is one number
      compute: ({ height_m }) => height_m[0],
    }),

  () =>
    defineQuantity({
      id: "not-many",
      title: "A many that is not true",
      // @ts-expect-error: many is true or left out
      inputs: [{ ...HEIGHT, many: false }],
      output: { name: "twice_m", unit: "m" },
      formula: "2 h",
      sources: SOURCES,
      compute: () => 1,
    }),

  () =>
    defineQuantity({
      id: "many-called-with-one",
      title: "A list that is called with one number",
      inputs: [{ ...HEIGHT, many: true }],
      output: { name: "first_m", unit: "m" },
      formula: "the first",
      sources: SOURCES,
      compute: ({ height_m }) => height_m[0] ?? 0,
      // @ts-expect-error: a list is asked for
    }).compute({ height_m: 1 }),

  // Callers: a missing input, another unit, an input of another quantity, a text.
  // @ts-expect-error: altimeterSetting_Pa is missing
  () => pressureAltitude.compute({ elevation_m: 1 }),
  // @ts-expect-error: elevation_ft is no input
  () => pressureAltitude.compute({ elevation_ft: 1, altimeterSetting_Pa: 101_325 }),
  // @ts-expect-error: oat_K belongs to another quantity
  () => pressureAltitude.compute({ elevation_m: 1, altimeterSetting_Pa: 101_325, oat_K: 288 }),
  // @ts-expect-error: one number is asked for, not a list
  () => pressureAltitude.compute({ elevation_m: [1], altimeterSetting_Pa: 101_325 }),
  // @ts-expect-error: a number is asked for
  () => pressureAltitude.compute({ elevation_m: "1", altimeterSetting_Pa: 101_325 }),
];
