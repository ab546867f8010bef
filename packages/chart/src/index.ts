export {
  CHECK_POINTS,
  CHECK_TOLERANCE_1,
  type CheckedPoint,
  type CheckVerdict,
  checkPoints,
  type EyeReading,
} from "./curve/check-points.ts";
export { type Family, familyOf, guideLines, readChain, readFamily } from "./curve/family.ts";
export { curveOnPicture, type FitError, fitError } from "./curve/fit-error.ts";
export {
  type CurveResult,
  type EnterBy,
  type ReadCurve,
  readCurve,
  type Tracing,
} from "./curve/traced-curve.ts";
export {
  type AxisMark,
  type ChartAxis,
  type ChartFrame,
  type ChartPoint,
  chartFrame,
  type FrameResult,
  type KnownPoint,
  type Marks,
  type Scale,
} from "./frame/chart-frame.ts";
export {
  type PastedAxisName,
  type PasteFault,
  type PasteResult,
  type PasteSaid,
  readPasted,
} from "./paste/read-pasted.ts";
export { snapToCrossing } from "./picture/crossing.ts";
export { FOLLOWED_FROM_1, type Followed, followLine } from "./picture/follow.ts";
export { type GreyImage, greyOf, type Ink, inkOf } from "./picture/ink.ts";
export type { PicturePoint } from "./picture/point.ts";
export { type Snapped, snapToLine } from "./picture/snap.ts";
export {
  type BookEnvelope,
  type BookTable,
  bookTable,
  envelopeYaml,
  tableYaml,
} from "./table/book-form.ts";
export {
  type Asked,
  type Cells,
  flatCells,
  type NamedAxis,
  type PaperTable,
  tableOfCurves,
} from "./table/chart-table.ts";
export { type EnvelopeAxis, type EnvelopeCorner, type EnvelopeResult, envelopeOf } from "./table/envelope.ts";
export { type OddCell, oddCells } from "./table/odd-cells.ts";
export { type Rounding, roundCell, roundValues, stepFor } from "./table/round-cell.ts";
