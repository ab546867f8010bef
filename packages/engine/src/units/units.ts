/**
 * Every unit of the gauges and pages of this job.
 *
 * `toSI` multiplies; a temperature is shifted first: SI = (value + offset) × factor. An id is the last part of a
 * name (`pressure_bar`), `symbol` is what a person reads, `also` is what a person may type.
 *
 * @source NIST Special Publication 811 (2008), Appendix B; factors are exact where SP 811 prints them in bold
 */
export interface UnitSpec {
  readonly dimension: string;
  readonly symbol: string;
  readonly factor: number;
  readonly offset?: number;
  readonly also?: readonly string[];
}

const LB_KG = 0.45359237;
const FT_M = 0.3048;
const IN_M = 0.0254;
const G_MPerS2 = 9.80665;
const USGAL_M3 = 231 * IN_M ** 3;
const PSI_PA = (LB_KG * G_MPerS2) / IN_M ** 2;
const IMPGAL_M3 = 4.54609e-3;

export const UNITS = {
  // pressure
  Pa: { dimension: "pressure", symbol: "Pa", factor: 1 },
  hPa: { dimension: "pressure", symbol: "hPa", factor: 100, also: ["mb", "mbar"] },
  kPa: { dimension: "pressure", symbol: "kPa", factor: 1e3 },
  MPa: { dimension: "pressure", symbol: "MPa", factor: 1e6 },
  bar: { dimension: "pressure", symbol: "bar", factor: 1e5 },
  psi: { dimension: "pressure", symbol: "psi", factor: PSI_PA, also: ["psig", "lb/in2"] },
  inHg: { dimension: "pressure", symbol: "inHg", factor: 3386.389 }, // conventional inch of mercury, SP 811
  mmHg: { dimension: "pressure", symbol: "mmHg", factor: 133.3224 }, // conventional, SP 811
  atm: { dimension: "pressure", symbol: "atm", factor: 101_325 },
  kgfPerCm2: {
    dimension: "pressure",
    symbol: "kgf/cm²",
    factor: G_MPerS2 * 1e4,
    also: ["kg/cm2", "kg/cm²", "kgf/cm2"],
  },
  // temperature
  K: { dimension: "temperature", symbol: "K", factor: 1 },
  degC: { dimension: "temperature", symbol: "°C", factor: 1, offset: 273.15, also: ["C", "deg C"] },
  degF: { dimension: "temperature", symbol: "°F", factor: 5 / 9, offset: 459.67, also: ["F", "deg F"] },
  degR: { dimension: "temperature", symbol: "°R", factor: 5 / 9 },
  // length
  m: { dimension: "length", symbol: "m", factor: 1 },
  mm: { dimension: "length", symbol: "mm", factor: 1e-3 },
  cm: { dimension: "length", symbol: "cm", factor: 1e-2 },
  km: { dimension: "length", symbol: "km", factor: 1e3 },
  in: { dimension: "length", symbol: "in", factor: IN_M },
  ft: { dimension: "length", symbol: "ft", factor: FT_M },
  NM: { dimension: "length", symbol: "NM", factor: 1852, also: ["nmi"] },
  mi: { dimension: "length", symbol: "mi", factor: 1609.344, also: ["SM"] },
  // area
  m2: { dimension: "area", symbol: "m²", factor: 1 },
  cm2: { dimension: "area", symbol: "cm²", factor: 1e-4 },
  in2: { dimension: "area", symbol: "in²", factor: IN_M ** 2 },
  ft2: { dimension: "area", symbol: "ft²", factor: FT_M ** 2 },
  // mass
  kg: { dimension: "mass", symbol: "kg", factor: 1 },
  g: { dimension: "mass", symbol: "g", factor: 1e-3 },
  lb: { dimension: "mass", symbol: "lb", factor: LB_KG, also: ["lbs"] },
  t: { dimension: "mass", symbol: "t", factor: 1e3 },
  oz: { dimension: "mass", symbol: "oz", factor: LB_KG / 16 },
  // volume
  m3: { dimension: "volume", symbol: "m³", factor: 1 },
  L: { dimension: "volume", symbol: "L", factor: 1e-3, also: ["l", "litre"] },
  mL: { dimension: "volume", symbol: "mL", factor: 1e-6, also: ["ml"] },
  USgal: { dimension: "volume", symbol: "US gal", factor: USGAL_M3, also: ["gal"] },
  impgal: { dimension: "volume", symbol: "imp gal", factor: IMPGAL_M3 },
  USqt: { dimension: "volume", symbol: "US qt", factor: USGAL_M3 / 4, also: ["qt"] },
  USpt: { dimension: "volume", symbol: "US pt", factor: USGAL_M3 / 8 },
  impqt: { dimension: "volume", symbol: "imp qt", factor: IMPGAL_M3 / 4 },
  cm3: { dimension: "volume", symbol: "cm³", factor: 1e-6, also: ["cc"] },
  in3: { dimension: "volume", symbol: "in³", factor: IN_M ** 3 },
  ft3: { dimension: "volume", symbol: "ft³", factor: FT_M ** 3, also: ["cu ft"] },
  // speed
  mPerS: { dimension: "speed", symbol: "m/s", factor: 1 },
  kt: { dimension: "speed", symbol: "kt", factor: 1852 / 3600 },
  kmPerH: { dimension: "speed", symbol: "km/h", factor: 1 / 3.6 },
  mph: { dimension: "speed", symbol: "mph", factor: 1609.344 / 3600 },
  ftPerMin: { dimension: "speed", symbol: "ft/min", factor: FT_M / 60, also: ["fpm"] },
  ftPerS: { dimension: "speed", symbol: "ft/s", factor: FT_M },
  // time
  s: { dimension: "time", symbol: "s", factor: 1 },
  min: { dimension: "time", symbol: "min", factor: 60 },
  h: { dimension: "time", symbol: "h", factor: 3600 },
  d: { dimension: "time", symbol: "d", factor: 86_400 },
  // angle
  rad: { dimension: "angle", symbol: "rad", factor: 1 },
  deg: { dimension: "angle", symbol: "°", factor: Math.PI / 180 },
  // frequency and speed of rotation
  Hz: { dimension: "frequency", symbol: "Hz", factor: 1 },
  rpm: { dimension: "frequency", symbol: "rpm", factor: 1 / 60, also: ["RPM", "r/min"] },
  // electricity
  V: { dimension: "voltage", symbol: "V", factor: 1 },
  mV: { dimension: "voltage", symbol: "mV", factor: 1e-3 },
  A: { dimension: "current", symbol: "A", factor: 1 },
  As: { dimension: "charge", symbol: "A·s", factor: 1 },
  Ah: { dimension: "charge", symbol: "A·h", factor: 3600 },
  // density
  kgPerM3: { dimension: "density", symbol: "kg/m³", factor: 1 },
  kgPerL: { dimension: "density", symbol: "kg/L", factor: 1e3 },
  gPerCm3: { dimension: "density", symbol: "g/cm³", factor: 1e3, also: ["g/cm3", "g/mL"] },
  lbPerUSgal: { dimension: "density", symbol: "lb/US gal", factor: LB_KG / USGAL_M3, also: ["lb/gal"] },
  // flow of volume and of mass
  m3PerS: { dimension: "volume-flow", symbol: "m³/s", factor: 1 },
  LPerH: { dimension: "volume-flow", symbol: "L/h", factor: 1e-3 / 3600, also: ["l/h"] },
  LPerMin: { dimension: "volume-flow", symbol: "L/min", factor: 1e-3 / 60, also: ["l/min"] },
  mLPerMin: { dimension: "volume-flow", symbol: "mL/min", factor: 1e-6 / 60, also: ["ml/min"] },
  USgalPerH: {
    dimension: "volume-flow",
    symbol: "US gal/h",
    factor: USGAL_M3 / 3600,
    also: ["gal/h", "gph"],
  },
  impgalPerH: { dimension: "volume-flow", symbol: "imp gal/h", factor: IMPGAL_M3 / 3600 },
  USqtPerH: { dimension: "volume-flow", symbol: "US qt/h", factor: USGAL_M3 / 4 / 3600, also: ["qt/h"] },
  kgPerS: { dimension: "mass-flow", symbol: "kg/s", factor: 1 },
  kgPerH: { dimension: "mass-flow", symbol: "kg/h", factor: 1 / 3600 },
  lbPerH: { dimension: "mass-flow", symbol: "lb/h", factor: LB_KG / 3600, also: ["pph"] },
  // force and torque
  N: { dimension: "force", symbol: "N", factor: 1 },
  daN: { dimension: "force", symbol: "daN", factor: 10 },
  kN: { dimension: "force", symbol: "kN", factor: 1e3 },
  kgf: { dimension: "force", symbol: "kgf", factor: G_MPerS2 },
  lbf: { dimension: "force", symbol: "lbf", factor: LB_KG * G_MPerS2 },
  Nm: { dimension: "torque", symbol: "N·m", factor: 1 },
  ftlbf: { dimension: "torque", symbol: "ft·lbf", factor: LB_KG * G_MPerS2 * FT_M },
  inlbf: { dimension: "torque", symbol: "in·lbf", factor: LB_KG * G_MPerS2 * IN_M, also: ["in-lbf"] },
  // mass times arm, as loading sheets have it
  kgm: { dimension: "mass-moment", symbol: "kg·m", factor: 1, also: ["kg m"] },
  kgmm: { dimension: "mass-moment", symbol: "kg·mm", factor: 1e-3, also: ["kg mm"] },
  lbin: { dimension: "mass-moment", symbol: "lb·in", factor: LB_KG * IN_M, also: ["lb-in", "lb in"] },
  lbft: { dimension: "mass-moment", symbol: "lb·ft", factor: LB_KG * FT_M, also: ["lb-ft", "lb ft"] },
  // mass on each square of floor, as loading limits have it
  kgPerM2: { dimension: "floor-load", symbol: "kg/m²", factor: 1, also: ["kg/m2"] },
  lbPerFt2: { dimension: "floor-load", symbol: "lb/ft²", factor: LB_KG / FT_M ** 2, also: ["lb/ft2"] },
  // power
  W: { dimension: "power", symbol: "W", factor: 1 },
  kW: { dimension: "power", symbol: "kW", factor: 1e3 },
  hp: { dimension: "power", symbol: "hp", factor: LB_KG * G_MPerS2 * FT_M * 550 },
  PS: { dimension: "power", symbol: "PS", factor: 75 * G_MPerS2 },
  // plain numbers
  "1": { dimension: "ratio", symbol: "", factor: 1 },
  percent: { dimension: "ratio", symbol: "%", factor: 1e-2, also: ["%"] },
  ftPerNM: { dimension: "ratio", symbol: "ft/NM", factor: FT_M / 1852 }, // climb gradients
  count: { dimension: "count", symbol: "", factor: 1 },
} as const satisfies Record<string, UnitSpec>;

export type UnitId = keyof typeof UNITS;
export type Dimension = (typeof UNITS)[UnitId]["dimension"];

/** The units that values inside are kept in: factor one and no offset. */
export type SiUnit = {
  [Unit in UnitId]: (typeof UNITS)[Unit] extends { readonly offset: number }
    ? never
    : (typeof UNITS)[Unit] extends { readonly factor: 1 }
      ? Unit
      : never;
}[UnitId];

/** Whether a text is the id of a unit, letter for letter (`degC`); `unitFromText` reads what people write. */
export const isUnitId = (text: string): text is UnitId => Object.hasOwn(UNITS, text);

const UNIT_OF_SI: Readonly<Record<Dimension, SiUnit>> = {
  pressure: "Pa",
  temperature: "K",
  length: "m",
  area: "m2",
  mass: "kg",
  volume: "m3",
  speed: "mPerS",
  time: "s",
  angle: "rad",
  frequency: "Hz",
  voltage: "V",
  current: "A",
  charge: "As",
  density: "kgPerM3",
  "volume-flow": "m3PerS",
  "mass-flow": "kgPerS",
  force: "N",
  torque: "Nm",
  "mass-moment": "kgm",
  "floor-load": "kgPerM2",
  power: "W",
  ratio: "1",
  count: "count",
};

/** The unit in which values of a dimension are kept inside. */
export const siUnitOf = (dimension: Dimension): SiUnit => UNIT_OF_SI[dimension];

/** The units of one dimension, in the order in which a person is offered them. */
export const unitsOf = (dimension: Dimension): readonly UnitId[] =>
  (Object.keys(UNITS) as UnitId[]).filter((id) => UNITS[id].dimension === dimension); // keys of a const object

const bySpelling = new Map<string, UnitId>();
for (const [id, spec] of Object.entries<UnitSpec>(UNITS)) {
  if (!isUnitId(id)) continue;
  for (const spelling of [id, spec.symbol, ...(spec.also ?? [])]) {
    if (spelling !== "" && !bySpelling.has(spelling)) bySpelling.set(spelling, id);
  }
}

/** The unit a person meant by a spelling (`psi`, `°C`, `US gal`), or `undefined`. */
export const unitFromText = (text: string): UnitId | undefined =>
  bySpelling.get(text.trim().replace(/\s+/g, " "));
