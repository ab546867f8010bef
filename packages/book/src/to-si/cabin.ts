import type { Cabin, CabinSource } from "../schema/cabin.ts";

export function cabinInSI(source: CabinSource): Cabin {
  if (!source.pressurised) return { pressurised: false };
  const { altitudes, maxDifferential, emergencyDescent } = source;
  return {
    pressurised: true,
    altitudes: altitudes.map(({ level, cabin }) => ({ level_m: level.valueSI, cabin_m: cabin.valueSI })),
    maxDifferential_Pa: maxDifferential.valueSI,
    emergencyDescent: { rate_mPerS: emergencyDescent.rate.valueSI, to_m: emergencyDescent.to.valueSI },
  };
}
