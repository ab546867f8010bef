import { measure, toSI } from "@witnessmark/engine";
import fc from "fast-check";
import { layerOf } from "../groups/clouds.ts";
import type { Part } from "../groups/part.ts";
import type { WholeDegrees } from "../groups/temperature.ts";
import { visibilityOf } from "../groups/visibility.ts";
import { weatherCodeOf } from "../groups/weather-code.ts";
import { encodePart } from "./encode.ts";

// Generated reports: values first, then the text that says them.

type Of<Is extends Part["is"]> = Extract<Part, { readonly is: Is }>;

const tens = fc.integer({ min: 1, max: 36 }).map((value) => value * 10);

const windPart = fc
  .record({
    kind: fc.constantFrom("from" as const, "from" as const, "variable" as const),
    from: tens,
    unit: fc.constantFrom("kt" as const, "mPerS" as const),
    speed: fc.integer({ min: 1, max: 60 }),
    more: fc.option(fc.integer({ min: 1, max: 40 }), { nil: undefined }),
    calm: fc.boolean(),
  })
  .map(({ kind, from, unit, speed, more, calm }): Of<"wind"> => {
    if (calm) {
      const still = measure(0, unit);
      return { is: "wind", wind: { kind: "calm", speed_mPerS: 0, coded: { speed: still } } };
    }
    const [coded, gust] = [
      measure(speed, unit),
      more === undefined ? undefined : measure(speed + more, unit),
    ];
    return {
      is: "wind",
      wind: {
        kind,
        ...(kind === "from" ? { from_degTrue: from } : {}),
        speed_mPerS: coded.valueSI,
        ...(gust === undefined ? {} : { gust_mPerS: gust.valueSI }),
        coded: { speed: coded, ...(gust === undefined ? {} : { gust }) },
      },
    };
  });

const visibilityPart: fc.Arbitrary<Of<"visibility">> = fc
  .oneof(
    fc
      .constantFrom(0.25, 0.5, 0.625, 0.75, 1, 1.25, 1.5, 2, 2.5, 3, 5, 7, 10)
      .map((value) => visibilityOf(measure(value, "mi"))),
    fc.constant(visibilityOf(measure(6, "mi"), "more than")),
    fc.integer({ min: 1, max: 50 }).map((value) => visibilityOf(measure(value * 100, "m"))),
    fc.constant(visibilityOf(measure(10_000, "m"), "at least")),
  )
  .map((visibility) => ({ is: "visibility", visibility }));

const CODES = [
  "-RA",
  "RA",
  "+SHRA",
  "TSRA",
  "VCTS",
  "-SN",
  "HZ",
  "VCSH",
  "+TSRAGR",
  "-DZ",
  "BLSN",
  "SQ",
  "SHSNRA",
];
const weatherParts: fc.Arbitrary<readonly Of<"weather">[]> = fc
  .uniqueArray(fc.constantFrom(...CODES), { maxLength: 2 })
  .map((codes) =>
    codes.flatMap((code) => {
      const weather = weatherCodeOf(code);
      return weather === undefined ? [] : [{ is: "weather" as const, weather }];
    }),
  );

const layers = fc
  .uniqueArray(fc.integer({ min: 1, max: 250 }), { minLength: 1, maxLength: 3 })
  .chain((heights) =>
    fc.tuple(
      ...heights
        .toSorted((one, other) => one - other)
        .map((height) =>
          fc
            .tuple(
              fc.constantFrom("FEW" as const, "SCT" as const, "BKN" as const, "OVC" as const),
              fc.constantFrom(undefined, undefined, "CB" as const, "TCU" as const),
            )
            .map(([amount, type]): Part => ({ is: "cloud", layer: layerOf(amount, height * 100, type) })),
        ),
    ),
  );
const skyParts: fc.Arbitrary<readonly Part[]> = fc.oneof(
  layers,
  fc
    .constantFrom("SKC" as const, "CLR" as const, "NSC" as const)
    .map((statement): Part[] => [{ is: "sky", statement }]),
  fc
    .integer({ min: 1, max: 20 })
    .map((height): Part[] => [{ is: "vertical visibility", height_ft: height * 100 }]),
);

const whole = (value: number): WholeDegrees => ({
  coded_degC: value,
  temperature_K: toSI(value, "degC"),
  ...(value < 0 ? { belowZero: true } : {}),
});
const airPart = fc.tuple(fc.integer({ min: 1, max: 45 }), fc.integer({ min: 0, max: 30 })).map(
  ([value, spread]): Of<"temperature"> => ({
    is: "temperature",
    air: { temperature: whole(value), dewPoint: whole(Math.max(value - spread, -40)) },
  }),
);
const pressurePart = fc.oneof(
  fc
    .integer({ min: 2850, max: 3090 })
    .map((value): Of<"pressure"> => ({ is: "pressure", setting: measure(value / 100, "inHg") })),
  fc
    .integer({ min: 960, max: 1045 })
    .map((value): Of<"pressure"> => ({ is: "pressure", setting: measure(value, "hPa") })),
);

const two = (value: number): string => String(value).padStart(2, "0");
const time = fc
  .tuple(fc.integer({ min: 1, max: 28 }), fc.integer({ min: 0, max: 23 }), fc.integer({ min: 0, max: 59 }))
  .map(([day, hour, minute]) => `${two(day)}${two(hour)}${two(minute)}Z`);

export interface Generated {
  readonly tokens: readonly string[];
  readonly text: string;
  readonly parts: readonly Part[];
}

const textOf = (parts: readonly Part[]): readonly string[] => parts.map((part) => encodePart(part) ?? "");
const generated = (
  header: readonly string[],
  parts: readonly Part[],
  tail: readonly string[] = [],
): Generated => {
  const text = [...header, ...textOf(parts), ...tail].join(" ");
  return { text, tokens: text.split(" "), parts };
};

/** Valid observations in which nothing contradicts anything. */
export const observations: fc.Arbitrary<Generated> = fc
  .record({
    time,
    auto: fc.boolean(),
    wind: windPart,
    seen: visibilityPart,
    weather: weatherParts,
    sky: skyParts,
    air: airPart,
    setting: pressurePart,
  })
  .map(({ time: at, auto, wind, seen, weather, sky, air, setting }) =>
    generated(
      ["METAR", "ZZTW", at, ...(auto ? ["AUTO"] : [])],
      [wind, seen, ...weather, ...sky, air, setting],
    ),
  );

const groupParts = fc
  .record({ wind: windPart, seen: visibilityPart, weather: weatherParts, sky: skyParts })
  .map(({ wind, seen, weather, sky }): readonly Part[] => [wind, seen, ...weather, ...sky]);
const changeHeads = [
  "TEMPO 0512/0514",
  "PROB30 0514/0518",
  "PROB40 TEMPO 0515/0517",
  "BECMG 0516/0518",
  "FM051930",
];

/** Valid forecasts of one day, each with some changes. */
export const forecasts: fc.Arbitrary<Generated> = fc
  .tuple(groupParts, fc.subarray(changeHeads), fc.array(groupParts, { minLength: 5, maxLength: 5 }))
  .map(([first, heads, changes]) => {
    const all: Part[] = [...first];
    const texts = ["TAF", "ZZTW", "051105Z", "0512/0612", ...textOf(first)];
    for (const [index, head] of heads.entries()) {
      const parts = changes[index] ?? [];
      texts.push(head, ...textOf(parts));
      all.push(...parts);
    }
    const text = texts.join(" ");
    return { text, tokens: text.split(" "), parts: all };
  });

const LETTERS = "ABCDEFGHIKLMNOPQRSTUVWXYZ0123456789/+-$".split("");

/** One token of a report changed by one character: another one, one more, or one less. */
export const slips = (
  report: Generated,
): fc.Arbitrary<{ readonly tokens: readonly string[]; readonly at: number }> =>
  fc
    .record({
      at: fc.nat({ max: report.tokens.length - 1 }),
      place: fc.nat({ max: 12 }),
      how: fc.constantFrom("change", "add", "drop"),
      letter: fc.constantFrom(...LETTERS),
    })
    .map(({ at, place, how, letter }) => {
      const token = report.tokens[at] ?? "";
      const where = place % token.length;
      const rest = how === "add" ? token.slice(where) : token.slice(where + 1);
      const changed = `${token.slice(0, where)}${how === "drop" ? "" : letter}${rest}`;
      const tokens = report.tokens
        .map((one, index) => (index === at ? changed : one))
        .filter((one) => one !== "");
      return { tokens, at };
    });
