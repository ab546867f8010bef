import type { FieldFigures, Figure } from "@witnessmark/assess";
import { type AirCell, airCell } from "./air-cells.ts";
import { type ConditionsUnits, safeText } from "./conditions-units.ts";

type Climb = NonNullable<NonNullable<FieldFigures["climb"]>["value"]>;
type Speeds = NonNullable<NonNullable<FieldFigures["speeds"]>["value"]>;

/** One part of a figure of several; what is missing of the whole is missing of it. */
const part = <T, P>({ value, ...rest }: Figure<T>, of: (value: T) => P | undefined): Figure<P> => {
  const found = value === undefined ? undefined : of(value);
  return { ...rest, ...(found === undefined ? {} : { value: found }) };
};

/** Climb, speeds and the point to stop at a field, as far as the book's tables give them; a rise down, a speed up. */
export function performanceCells(figures: FieldFigures, units: ConditionsUnits): readonly AirCell[] {
  const { climb, goAround, speeds, abort } = figures;
  const speed = (value_mPerS: number): string => safeText(value_mPerS, units.airspeed, "up");
  return [
    ...(climb === undefined ? [] : climbCells("Climb, over the ground", climb, units)),
    ...(goAround === undefined ? [] : climbCells("Go-around, over the ground", goAround, units)),
    ...(speeds === undefined ? [] : speedCells(speeds, speed)),
    ...(abort === undefined
      ? []
      : [
          airCell(
            "Stop if below",
            abort,
            ({ speed_mPerS, at_m }) => `${speed(speed_mPerS)} at ${safeText(at_m, units.distance, "down")}`,
            {
              quantity: "halfway-speed-rule",
              note: "Half-way along the runway. Braking as in the landing of this day, at the mass of the take-off.",
              choice: "distance",
            },
          ),
        ]),
  ];
}

function climbCells(title: string, climb: Figure<Climb>, units: ConditionsUnits): readonly AirCell[] {
  const { value } = climb;
  const speeds =
    value === undefined
      ? ""
      : ` ${safeText(value.trueAirspeed_mPerS, units.airspeed, "up")} true airspeed, ${safeText(value.groundSpeed_mPerS, units.airspeed, "up")} over the ground.`;
  return [
    airCell(title, climb, ({ gradient_1 }) => safeText(gradient_1, units.gradient, "down"), {
      quantity: "climb-gradient-of-rate",
      note: `By the book's table, with the wind along the runway as the distances count it.${speeds}`,
      choice: "gradient",
    }),
    airCell("Rate of climb", climb, ({ rate_mPerS }) => safeText(rate_mPerS, units.climb, "down"), {
      quantity: "climb-rate-for-gradient",
      choice: "climb",
    }),
  ];
}

function speedCells(speeds: Figure<Speeds>, speed: (value_mPerS: number) => string): readonly AirCell[] {
  const { value } = speeds;
  const flaps = value?.flaps;
  const approach = value?.approach;
  const hasGust = approach !== undefined && approach.forGust_mPerS > 0;
  return [
    airCell(
      flaps === undefined ? "Stall" : `Stall, flaps ${flaps}`,
      part(speeds, ({ stall_mPerS }) => stall_mPerS),
      speed,
      {
        note: "By the book's table at the mass there: calibrated, in level flight, wings level.",
        choice: "airspeed",
      },
    ),
    ...(value?.stallClean_mPerS === undefined
      ? []
      : [
          airCell(
            "Stall, flaps up",
            part(speeds, ({ stallClean_mPerS }) => stallClean_mPerS),
            speed,
            { choice: "airspeed" },
          ),
        ]),
    ...(approach === undefined
      ? []
      : [
          airCell(
            "Approach",
            part(speeds, ({ approach: flown }) => flown?.steady_mPerS),
            speed,
            {
              quantity: "approach-speed",
              note: `${approach.factor_1} times the stall speed. The manual's own figure comes first.`,
              choice: "airspeed",
            },
          ),
        ]),
    ...(hasGust
      ? [
          airCell(
            "Approach in the gust",
            part(speeds, ({ approach: flown }) =>
              flown === undefined ? undefined : flown.steady_mPerS + flown.forGust_mPerS,
            ),
            speed,
            {
              quantity: "gust-additive",
              note: "Half of what the gust has over the wind is added. The landing is then longer.",
              choice: "airspeed",
            },
          ),
        ]
      : []),
  ];
}
