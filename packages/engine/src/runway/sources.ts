import type { QuantitySource } from "../registry/quantity.ts";

const PHAK = {
  title: "Pilot's Handbook of Aeronautical Knowledge, FAA-H-8083-25",
  edition: "C (2023)",
  url: "https://www.faa.gov/regulations_policies/handbooks_manuals/aviation/faa-h-8083-25c.pdf",
  status: "published",
} as const;

export const PHAK_LOAD_FACTORS: QuantitySource = {
  ...PHAK,
  locator: "chapter 5, load factors and stalling speeds, load factors in steep turns",
};

export const PHAK_PERFORMANCE: QuantitySource = {
  ...PHAK,
  locator: "chapter 11, take-off and landing performance",
};

export const PHAK_RUNWAY: QuantitySource = { ...PHAK, locator: "chapter 11, runway surface and gradient" };

export const AIM_CLIMB: QuantitySource = {
  title: "FAA Aeronautical Information Manual; US Terminal Procedures, rate-of-climb table",
  locator: "5-2-9",
  status: "published",
};

export const AIM_HALFWAY: QuantitySource = {
  title: "FAA Aeronautical Information Manual, use of runway half-way signs",
  locator: "7-5-7 (renumbered in later editions)",
  status: "published",
  note: "Quoted at second hand.",
};

export const SQUARE_ROOT_LAW: QuantitySource = {
  title: "Square-root law of speed with mass",
  status: "common practice",
};

export const STEADY_ACCELERATION: QuantitySource = {
  title: "Motion under a steady acceleration, v² = 2 a s",
  status: "common practice",
};
