export { InputError, type InputErrorCode, type InputErrorDetail } from "./input-error.ts";
export { differenceFromSI, differenceToSI, fromSI, toSI } from "./units/convert.ts";
export { type Measure, measure, parseMeasure } from "./units/measure.ts";
export { type Dimension, UNITS, type UnitId, type UnitSpec, unitFromText, unitsOf } from "./units/units.ts";
