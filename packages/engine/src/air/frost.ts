import { InputError } from "../input-error.ts";
import { defineQuantity } from "../registry/define-quantity.ts";
import { valueText } from "../registry/range-text.ts";
import { toSI } from "../units/convert.ts";
import { DEW_POINT_K, frostPoint } from "./humidity.ts";

const FREEZING_K = 273.15;

const FROST = {
  title: "Public pilot texts on hoar frost and active frost",
  locator: "conditions for frost: surface at or below 0 °C and at or below the frost point",
  status: "common practice",
} as const;

export const frostMargin = defineQuantity({
  id: "frost-margin",
  title: "How far the skin of the aircraft is above the temperature at which frost forms on it",
  inputs: [
    {
      name: "skinTemperature_K",
      unit: "K",
      range: [203.15, 333.15],
      meaning: "temperature of the skin: colder than the air under a clear sky or over cold fuel",
    },
    DEW_POINT_K,
  ],
  output: { name: "margin_K", unit: "K" },
  formula: "skin − frost point; skin − 0 °C where the dew point is above freezing",
  sources: [FROST],
  notes: ["Zero and below: frost is to be expected. A look and a touch decide."],
  compute: ({ skinTemperature_K, dewPoint_K }) =>
    skinTemperature_K -
    (dewPoint_K < FREEZING_K ? Math.min(FREEZING_K, frostPoint.compute({ dewPoint_K })) : FREEZING_K),
});

export const skinTemperatureRule = defineQuantity({
  id: "skin-temperature-rule",
  title: "Temperature of the skin under a clear, calm night sky",
  inputs: [
    { name: "oat_K", unit: "K", range: [223.15, 323.15], meaning: "temperature of the air" },
    {
      name: "depression_K",
      unit: "K",
      range: [0, 15],
      meaning: "how much colder the skin is taken to be; 3 to 5 °C under a clear, calm sky",
    },
  ],
  output: { name: "skinTemperature_K", unit: "K" },
  formula: "air − depression",
  sources: [{ title: "Rule of thumb for radiation to a clear sky", status: "from memory" }],
  crossCheckOnly: true,
  compute: ({ oat_K, depression_K }) => oat_K - depression_K,
});

/** What is known of a night, for the question of frost on an aircraft that stands outside. */
export interface FrostNight {
  readonly oat_K: number;
  readonly dewPoint_K: number;
  /** Measured, where it is; else it is reckoned from the sky and the wind. */
  readonly skin_K?: number;
  readonly sky: "clear" | "overcast" | "not known";
  readonly wind_mPerS?: number;
}

export interface FrostOutlook {
  readonly frost: "expected" | "not expected";
  readonly skin_K: number;
  readonly frostPoint_K: number;
  /** Of the skin over the temperature at which frost forms; zero and below: expected. */
  readonly margin_K: number;
}

/** The most of the 3 to 5 °C that the rule of thumb has. */
const CLEAR_SKY_DEPRESSION_K = 5;
const CALM_UP_TO_mPerS = toSI(10, "kt");

/** An overcast sky, or a wind that stirs the air, leaves the skin at the temperature of the air; else it may be colder. */
const depressionOf_K = ({ sky, wind_mPerS }: FrostNight): number =>
  sky === "overcast" || (wind_mPerS !== undefined && wind_mPerS > CALM_UP_TO_mPerS)
    ? 0
    : CLEAR_SKY_DEPRESSION_K;

/**
 * Whether frost is to be expected on an aircraft that stands outside. Where the sky is not known it is taken as clear.
 * A look and a touch decide; this only says when not to be surprised.
 *
 * @throws {InputError} `out-of-range`, `not-a-number`; a dew point above the temperature of the air
 * @source common practice; depression of the skin from memory
 */
export function frostOutlook(night: FrostNight): FrostOutlook {
  const { oat_K, dewPoint_K } = night;
  if (dewPoint_K > oat_K + 1) {
    throw new InputError("out-of-range", "dewPoint_K", {
      expected: `at most the temperature, ${valueText(oat_K, "K")} (a degree of rounding allowed)`,
      received: valueText(dewPoint_K, "K"),
      remedy: "check that the two were not taken for each other",
    });
  }
  const skin_K = night.skin_K ?? skinTemperatureRule.compute({ oat_K, depression_K: depressionOf_K(night) });
  const margin_K = frostMargin.compute({ skinTemperature_K: skin_K, dewPoint_K });
  return {
    frost: margin_K <= 0 ? "expected" : "not expected",
    skin_K,
    frostPoint_K: skin_K - margin_K,
    margin_K,
  };
}
