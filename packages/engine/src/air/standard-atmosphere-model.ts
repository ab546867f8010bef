/**
 * The standard atmosphere as plain functions. Callers check ranges: every quantity does before it computes.
 *
 * Heights are geopotential metres. One model to 20 km: a troposphere with a steady lapse to 11 km, then an isothermal
 * layer. The exponents follow from the constants and are never typed in.
 *
 * @source ISO 2533:1975 and ICAO Doc 7488/3 (1993), defining constants
 */
export const SEA_LEVEL_K = 288.15;
export const SEA_LEVEL_PA = 101_325;
export const GRAVITY_MPerS2 = 9.80665;
/** Specific gas constant of dry air, J/(kg K): 8314.32 / 28.964420. */
export const GAS_CONSTANT_JPerKgK = 287.05287;
export const LAPSE_KPerM = 0.0065;
export const RATIO_OF_SPECIFIC_HEATS_1 = 1.4;
export const NOMINAL_EARTH_RADIUS_M = 6_356_766;
export const TROPOPAUSE_M = 11_000;
export const LOWEST_M = -5000;
export const HIGHEST_M = 20_000;

export const SEA_LEVEL_KGPERM3 = SEA_LEVEL_PA / (GAS_CONSTANT_JPerKgK * SEA_LEVEL_K);
export const TROPOPAUSE_K = SEA_LEVEL_K - LAPSE_KPerM * TROPOPAUSE_M;

/** 5.25588: pressure goes as this power of the temperature below the tropopause, density as one less. */
export const PRESSURE_EXPONENT_1 = GRAVITY_MPerS2 / (GAS_CONSTANT_JPerKgK * LAPSE_KPerM);
const SCALE_HEIGHT_M = (GAS_CONSTANT_JPerKgK * TROPOPAUSE_K) / GRAVITY_MPerS2;

export const temperatureAt_K = (height_m: number): number =>
  height_m < TROPOPAUSE_M ? SEA_LEVEL_K - LAPSE_KPerM * height_m : TROPOPAUSE_K;

const troposphericRatio_1 = (height_m: number): number =>
  (1 - (LAPSE_KPerM * height_m) / SEA_LEVEL_K) ** PRESSURE_EXPONENT_1;

export const TROPOPAUSE_PA = SEA_LEVEL_PA * troposphericRatio_1(TROPOPAUSE_M);

export const pressureAt_Pa = (height_m: number): number =>
  height_m < TROPOPAUSE_M
    ? SEA_LEVEL_PA * troposphericRatio_1(height_m)
    : TROPOPAUSE_PA * Math.exp((TROPOPAUSE_M - height_m) / SCALE_HEIGHT_M);

export const densityAt_kgPerM3 = (height_m: number): number =>
  pressureAt_Pa(height_m) / (GAS_CONSTANT_JPerKgK * temperatureAt_K(height_m));

export const TROPOPAUSE_KGPERM3 = TROPOPAUSE_PA / (GAS_CONSTANT_JPerKgK * TROPOPAUSE_K);

/** Inverse of `pressureAt_Pa`. */
export const heightOfPressure_m = (pressure_Pa: number): number =>
  pressure_Pa > TROPOPAUSE_PA
    ? (SEA_LEVEL_K / LAPSE_KPerM) * (1 - (pressure_Pa / SEA_LEVEL_PA) ** (1 / PRESSURE_EXPONENT_1))
    : TROPOPAUSE_M - SCALE_HEIGHT_M * Math.log(pressure_Pa / TROPOPAUSE_PA);

/** Inverse of `densityAt_kgPerM3`. */
export const heightOfDensity_m = (density_kgPerM3: number): number =>
  density_kgPerM3 > TROPOPAUSE_KGPERM3
    ? (SEA_LEVEL_K / LAPSE_KPerM) *
      (1 - (density_kgPerM3 / SEA_LEVEL_KGPERM3) ** (1 / (PRESSURE_EXPONENT_1 - 1)))
    : TROPOPAUSE_M - SCALE_HEIGHT_M * Math.log(density_kgPerM3 / TROPOPAUSE_KGPERM3);

/** The pressures and densities at the two ends of the model, as ranges for inputs. */
export const PRESSURE_RANGE_Pa = [pressureAt_Pa(HIGHEST_M), pressureAt_Pa(LOWEST_M)] as const;
export const DENSITY_RANGE_kgPerM3 = [densityAt_kgPerM3(HIGHEST_M), densityAt_kgPerM3(LOWEST_M)] as const;
export const HEIGHT_RANGE_m = [LOWEST_M, HIGHEST_M] as const;
