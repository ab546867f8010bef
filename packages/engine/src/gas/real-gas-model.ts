/**
 * Oxygen and nitrogen as real gases: a short virial form fitted to the reference equations of state.
 *
 * p = 1000 d R T Z with d in mol/L, tau = 300 K / T and
 * Z = 1 + d (a0 + a1 tau + a2 tau²) + d² (b0 + b1 tau) + c d³.
 *
 * Valid for 228 to 340 K and 0 to 21 MPa absolute; there Z is within 0.0007 (oxygen) and 0.0012 (nitrogen) of the
 * reference equations. Callers check the range.
 *
 * @source a fit of this project to the Schmidt and Wagner (1985) equation for oxygen and the reference equation for
 *   nitrogen, evaluated with CoolProp 8.0.0
 */
export type Gas = "oxygen" | "nitrogen";

interface Fit {
  readonly molarMass_kgPerMol: number;
  readonly a: readonly [number, number, number];
  readonly b: readonly [number, number];
  readonly c: number;
}

const FITS: Readonly<Record<Gas, Fit>> = {
  oxygen: {
    molarMass_kgPerMol: 0.0319988,
    a: [0.039129, -0.047225, -0.0075469],
    b: [2.8251e-4, 7.3351e-4],
    c: 1.4217e-5,
  },
  nitrogen: {
    molarMass_kgPerMol: 0.0280134,
    a: [0.04595, -0.043338, -0.0069491],
    b: [7.5282e-4, 4.9157e-4],
    c: 4.1282e-5,
  },
};

export const GAS_TEMPERATURE_RANGE_K = [228, 340] as const;
export const GAS_PRESSURE_LIMIT_PA = 21e6;

const MOLAR_GAS_CONSTANT_JPerMolK = 8.314463;
const REFERENCE_K = 300;
const MOST_STEPS = 50;

/** First, second and third virial-like coefficients at a temperature, for d in mol/L. */
const coefficients = ({ a, b, c }: Fit, temperature_K: number): readonly [number, number, number] => {
  const tau = REFERENCE_K / temperature_K;
  return [a[0] + a[1] * tau + a[2] * tau * tau, b[0] + b[1] * tau, c];
};

/** Absolute pressure at a molar density (mol/L) and temperature. */
function pressureOfMolar_Pa(fit: Fit, molar_molPerL: number, temperature_K: number): number {
  const [first, second, third] = coefficients(fit, temperature_K);
  const d = molar_molPerL;
  const z = 1 + d * (first + d * (second + d * third));
  return 1000 * d * MOLAR_GAS_CONSTANT_JPerMolK * temperature_K * z;
}

/** Molar density (mol/L) at an absolute pressure: Newton's method from the ideal gas. */
function molarOfPressure_molPerL(fit: Fit, pressure_Pa: number, temperature_K: number): number {
  const [first, second, third] = coefficients(fit, temperature_K);
  const unit_Pa = 1000 * MOLAR_GAS_CONSTANT_JPerMolK * temperature_K;
  let d = pressure_Pa / unit_Pa;
  for (let step = 0; step < MOST_STEPS; step += 1) {
    const excess = d * (1 + d * (first + d * (second + d * third))) - pressure_Pa / unit_Pa;
    const slope = 1 + d * (2 * first + d * (3 * second + d * 4 * third));
    const next = d - excess / slope;
    if (Math.abs(next - d) <= 1e-14 * Math.max(1, Math.abs(next))) return next;
    d = next;
  }
  return Number.NaN; // the quantity that asked refuses it; not reached inside the range
}

/** Absolute pressure of a gas at a density. */
export const realPressure_Pa = (gas: Gas, density_kgPerM3: number, temperature_K: number): number =>
  pressureOfMolar_Pa(FITS[gas], density_kgPerM3 / (1000 * FITS[gas].molarMass_kgPerMol), temperature_K);

/** Density of a gas at an absolute pressure. */
export const realDensity_kgPerM3 = (gas: Gas, pressure_Pa: number, temperature_K: number): number =>
  molarOfPressure_molPerL(FITS[gas], pressure_Pa, temperature_K) * 1000 * FITS[gas].molarMass_kgPerMol;

/** Compressibility factor Z = p / (rho R T) at an absolute pressure above zero. */
export function compressibility_1(gas: Gas, pressure_Pa: number, temperature_K: number): number {
  const molar_molPerL = molarOfPressure_molPerL(FITS[gas], pressure_Pa, temperature_K);
  return pressure_Pa / (1000 * molar_molPerL * MOLAR_GAS_CONSTANT_JPerMolK * temperature_K);
}
