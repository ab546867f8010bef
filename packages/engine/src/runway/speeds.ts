import { OAT_K, PRESSURE_ALTITUDE_m } from "../air/inputs.ts";
import { STANDARD_ATMOSPHERE } from "../air/sources.ts";
import { GAS_CONSTANT_JPerKgK, pressureAt_Pa, SEA_LEVEL_KGPERM3 } from "../air/standard-atmosphere-model.ts";
import { defineQuantity } from "../registry/define-quantity.ts";
import { toSI } from "../units/convert.ts";
import { PHAK_LOAD_FACTORS, SQUARE_ROOT_LAW } from "./sources.ts";

const SPEED_RANGE_mPerS = [5, 150] as const;
const MASS_RANGE_kg = [100, 20_000] as const;

const CALIBRATED =
  "Holds for calibrated airspeed; take that where the manual gives it beside the indicated one.";

const BANK_rad = {
  name: "bank_rad",
  unit: "rad",
  range: [0, toSI(85, "deg")],
  meaning: "bank of a level, coordinated turn",
} as const;

const loadFactor_1 = (bank_rad: number): number => 1 / Math.cos(bank_rad);

export const loadFactorInTurn = defineQuantity({
  id: "load-factor-in-turn",
  title: "Load factor in a level, coordinated turn",
  inputs: [BANK_rad],
  output: { name: "loadFactor_1", unit: "1" },
  formula: "n = 1 / cos(bank)",
  sources: [PHAK_LOAD_FACTORS],
  compute: ({ bank_rad }) => loadFactor_1(bank_rad),
});

export const stallSpeedAtLoadFactor = defineQuantity({
  id: "stall-speed-at-load-factor",
  title: "Stalling speed at a load factor",
  inputs: [
    {
      name: "stallSpeed1g_mPerS",
      unit: "mPerS",
      range: SPEED_RANGE_mPerS,
      meaning: "stalling speed in level flight",
    },
    { name: "loadFactor_1", unit: "1", range: [0, 15], meaning: "load factor" },
  ],
  output: { name: "stallSpeed_mPerS", unit: "mPerS" },
  formula: "Vs = Vs1g sqrt(n)",
  sources: [PHAK_LOAD_FACTORS],
  notes: [CALIBRATED],
  compute: ({ stallSpeed1g_mPerS, loadFactor_1: load }) => stallSpeed1g_mPerS * Math.sqrt(load),
});

export const stallSpeedAtMass = defineQuantity({
  id: "stall-speed-at-mass",
  title: "Stalling speed at a mass and a bank",
  inputs: [
    {
      name: "stallSpeedReference_mPerS",
      unit: "mPerS",
      range: SPEED_RANGE_mPerS,
      meaning: "stalling speed in level flight at the reference mass",
    },
    {
      name: "referenceMass_kg",
      unit: "kg",
      range: MASS_RANGE_kg,
      meaning: "mass for which that speed is given",
    },
    { name: "mass_kg", unit: "kg", range: MASS_RANGE_kg, meaning: "mass of the aircraft" },
    BANK_rad,
  ],
  output: { name: "stallSpeed_mPerS", unit: "mPerS" },
  formula: "Vs = Vs,ref sqrt(m / m,ref) sqrt(1 / cos(bank))",
  sources: [PHAK_LOAD_FACTORS],
  notes: [CALIBRATED, "The manual's own figure for the mass comes first."],
  compute: ({ stallSpeedReference_mPerS, referenceMass_kg, mass_kg, bank_rad }) =>
    stallSpeedReference_mPerS * Math.sqrt((mass_kg / referenceMass_kg) * loadFactor_1(bank_rad)),
});

export const levelStallSpeed = defineQuantity({
  id: "level-stall-speed",
  title: "Stalling speed in level flight from the one in a turn",
  inputs: [
    {
      name: "stallSpeedInTurn_mPerS",
      unit: "mPerS",
      range: SPEED_RANGE_mPerS,
      meaning: "stalling speed at the bank",
    },
    BANK_rad,
  ],
  output: { name: "levelStallSpeed_mPerS", unit: "mPerS" },
  formula: "Vs1g = Vs sqrt(cos(bank))",
  sources: [PHAK_LOAD_FACTORS],
  notes: [CALIBRATED],
  compute: ({ stallSpeedInTurn_mPerS, bank_rad }) =>
    stallSpeedInTurn_mPerS / Math.sqrt(loadFactor_1(bank_rad)),
});

export const manoeuvringSpeed = defineQuantity({
  id: "manoeuvring-speed",
  title: "Manoeuvring speed at a mass",
  inputs: [
    {
      name: "manoeuvringSpeedReference_mPerS",
      unit: "mPerS",
      range: SPEED_RANGE_mPerS,
      meaning: "manoeuvring speed at the reference mass",
    },
    {
      name: "referenceMass_kg",
      unit: "kg",
      range: MASS_RANGE_kg,
      meaning: "mass for which that speed is given",
    },
    { name: "mass_kg", unit: "kg", range: MASS_RANGE_kg, meaning: "mass of the aircraft" },
  ],
  output: { name: "manoeuvringSpeed_mPerS", unit: "mPerS" },
  formula: "VA = VA,ref sqrt(m / m,ref)",
  sources: [SQUARE_ROOT_LAW],
  notes: ["Only where the manual gives no figures of its own. Rounded down."],
  compute: ({ manoeuvringSpeedReference_mPerS, referenceMass_kg, mass_kg }) =>
    manoeuvringSpeedReference_mPerS * Math.sqrt(mass_kg / referenceMass_kg),
});

export const approachSpeed = defineQuantity({
  id: "approach-speed",
  title: "Approach speed from the stalling speed",
  inputs: [
    {
      name: "stallSpeed_mPerS",
      unit: "mPerS",
      range: SPEED_RANGE_mPerS,
      meaning: "stalling speed in the landing configuration at the landing mass",
    },
    { name: "approachFactor_1", unit: "1", range: [1.1, 2], meaning: "approach factor; 1.3 as a rule" },
    {
      name: "additive_mPerS",
      unit: "mPerS",
      range: [0, 20],
      meaning: "what is added for a gust; nothing in steady wind",
    },
  ],
  output: { name: "approachSpeed_mPerS", unit: "mPerS" },
  formula: "factor × Vs + additive",
  sources: [
    {
      title: "Airplane Flying Handbook, FAA-H-8083-3, approaches and landings",
      locator: "1.3 VS0, where the manufacturer gives no speed",
      status: "from memory",
    },
  ],
  notes: ["The manual's own approach speed comes first."],
  compute: ({ stallSpeed_mPerS, approachFactor_1, additive_mPerS }) =>
    approachFactor_1 * stallSpeed_mPerS + additive_mPerS,
});

export const trueAirspeed = defineQuantity({
  id: "true-airspeed",
  title: "True airspeed of a slow aircraft",
  inputs: [
    {
      name: "calibratedAirspeed_mPerS",
      unit: "mPerS",
      range: [5, 90],
      meaning: "calibrated airspeed",
    },
    PRESSURE_ALTITUDE_m,
    OAT_K,
  ],
  output: { name: "trueAirspeed_mPerS", unit: "mPerS" },
  formula: "Vt = Vc sqrt(rho0 / rho), rho = p(PA) / (R T)",
  sources: [STANDARD_ATMOSPHERE],
  notes: [
    "Takes calibrated for equivalent airspeed: at 110 kt and 14,000 ft that is right to half a knot; above 175 kt it is not given.",
  ],
  compute: ({ calibratedAirspeed_mPerS, pressureAltitude_m, oat_K }) =>
    calibratedAirspeed_mPerS *
    Math.sqrt((SEA_LEVEL_KGPERM3 * GAS_CONSTANT_JPerKgK * oat_K) / pressureAt_Pa(pressureAltitude_m)),
});
