export { standardPressure } from "./air/pressure.ts";
export {
  CLEAR_FROM_1,
  type JudgedReading,
  type Judgement,
  judgeReading,
} from "./conformity/judge-reading.ts";
export { type GaugeStatement, standardUncertainty } from "./conformity/uncertainty.ts";
export { cylinderPressureAtTemperature } from "./gas/cylinder-pressure.ts";
export { gaugePressureAtAmbient, gaugePressureAtTemperature } from "./gas/gauge-pressure.ts";
export type { Gas } from "./gas/real-gas-model.ts";
export { type TyreAction, type TyreActionKind, tyreAction } from "./gas/tyre-action.ts";
export { InputError, type InputErrorCode, type InputErrorDetail } from "./input-error.ts";
export type { AnyQuantity, InputSpec, OutputSpec, Quantity, QuantitySource } from "./registry/quantity.ts";
export { differenceFromSI, differenceToSI, fromSI, toSI } from "./units/convert.ts";
export { decimalsOf, formatMeasure, formatValue, withSymbol } from "./units/format.ts";
export { type Measure, measure, parseMeasure } from "./units/measure.ts";
export { roundToSafeSide } from "./units/round.ts";
export {
  type Dimension,
  isUnitId,
  type SiUnit,
  siUnitOf,
  UNITS,
  type UnitId,
  type UnitSpec,
  unitFromText,
  unitsOf,
} from "./units/units.ts";
