import type { LoadMoment } from "@witnessmark/assess";

export const MASS_OF: Readonly<Record<LoadMoment, string>> = {
  "zero-fuel": "Zero fuel mass",
  ramp: "Ramp mass",
  "take-off": "Take-off mass",
  landing: "Landing mass",
  alternate: "Landing mass at the alternate",
};

export const WHEN: Readonly<Record<LoadMoment, string>> = {
  "zero-fuel": "with the fuel gone",
  ramp: "on the ramp",
  "take-off": "at take-off",
  landing: "at landing",
  alternate: "at the alternate",
};
