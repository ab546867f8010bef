export { type Beginning, beginBook } from "./begin/begin-book.ts";
export { drawnFrom } from "./begin/drawn-from.ts";
export { ARCHETYPES, type Archetype, type Figures } from "./begin/figures.ts";
export { type FirstFigures, firstFiguresOf } from "./begin/first-figures.ts";
export { type Followed, followShape } from "./begin/follow-shape.ts";
export {
  type ByHand,
  changedByHand,
  type MovedPoint,
  type Redrawn,
  redraw,
  type ShapedPart,
} from "./begin/redraw.ts";
export type { Book, BookFault, BookResult, Check, ManualOrder, OrderStep } from "./book.ts";
export {
  distanceOutside_m,
  type Extent,
  extent,
  outlineOf,
  type PlanPart,
  type PlanPlace,
} from "./drawing/extent.ts";
export { feet } from "./drawing/feet.ts";
export { frontView } from "./drawing/front-view.ts";
export { centreLine, groundLine } from "./drawing/ground-line.ts";
export { isHighWing, type TailKind, tailKind } from "./drawing/layout.ts";
export { chordwise_m } from "./drawing/lifting-surface.ts";
export { circle, type Px, polygon, polyline, smoothPath } from "./drawing/path.ts";
export { planView } from "./drawing/plan-view.ts";
export { elevation, frontElevation, noseLeft, noseUp, type Projection } from "./drawing/projection.ts";
export { sideView } from "./drawing/side-view.ts";
export { type Detail, STROKE_WIDTHS_px, type Stroke, type StrokeWeight } from "./drawing/stroke.ts";
export { type WalkLine, type WalkLineLook, walkLine } from "./drawing/walk-line.ts";
export { pastedRows, resizedCells, withBlock } from "./edit/cells.ts";
export { changeWords, itemName, spaced, wordsOf } from "./edit/change-words.ts";
export { type Difference, differences, idOf, type KeyedPath, placeOf } from "./edit/differences.ts";
export {
  type BookDraft,
  type DraftBase,
  type DraftStep,
  editDraft,
  newDraft,
  rebaseDraft,
  redoDraft,
  rewriteDraft,
  undoDraft,
} from "./edit/draft.ts";
export { type BookEdit, type BookPath, EditError, editText, type Plain } from "./edit/edit-text.ts";
export { fieldOf } from "./edit/field-of.ts";
export { gaugeProposal } from "./edit/gauge-proposal.ts";
export {
  copyForAnother,
  draftAfterIssue,
  issuedText,
  nextRevision,
  SPARE_SECTIONS,
  sectionsIn,
} from "./edit/issue.ts";
export { editPlain, type Merged, type MergeQuestion, mergeBooks } from "./edit/merge.ts";
export { type MissingPart, missingFor } from "./edit/missing-for.ts";
export { freeId, idFrom, labelFrom, labelOf, nameEdits, otherSide } from "./edit/names.ts";
export { type PlainResult, plainOf, valueAt } from "./edit/plain-of.ts";
export { renameEdits } from "./edit/rename.ts";
export type { BookField, BookFieldKind, Section } from "./edit/sections/field.ts";
export { GROUP_NAMES, SECTIONS, sectionOf } from "./edit/sections/sections.ts";
export { type BookDoubt, consistencyOf } from "./faults/consistency.ts";
export { didYouMean, nearest } from "./faults/did-you-mean.ts";
export { faultSentence } from "./faults/fault-sentence.ts";
export { pathText } from "./faults/path.ts";
export { jascChapter, jascTitle } from "./jasc/jasc-title.ts";
export { bookJsonSchema } from "./json-schema.ts";
export { bookGauge, pointOf, stanceOf } from "./look-up.ts";
export { readBook } from "./read-book.ts";
export { rangeShown } from "./reading-range.ts";
export type { DeepReadonly } from "./readonly.ts";
export { ALLOWED_OUTSIDE_m } from "./rules/places.ts";
export { TRENDS } from "./rules/tables.ts";
export type { Area, Equipment, GroundGearItem, Identity, Point, Stance } from "./schema/book-source.ts";
export { BookSource } from "./schema/book-source.ts";
export type { Cabin } from "./schema/cabin.ts";
export type { CheckSource, Fault } from "./schema/check.ts";
export { HappeningKind, Method, Severity, WalkKind } from "./schema/check.ts";
export type { AirspaceClass, Approach, Field, Runway, Surface } from "./schema/field.ts";
export type { Fuel, FuelKind } from "./schema/fuel.ts";
export type { Gauge } from "./schema/gauge.ts";
export type { Geometry } from "./schema/geometry.ts";
export type { IceProtection } from "./schema/ice-protection.ts";
export {
  AIRCRAFT_CLASSES,
  type AircraftClass,
  COUNTER_OWNERS,
  FUEL_KINDS,
  HAPPENING_KINDS,
  KINDS_OF_OPERATION,
  type KindOfOperation,
  MASK_KINDS,
  METHODS,
  PERFORMANCE_QUANTITIES,
  RUNWAY_CONDITIONS,
  SURFACES,
  TIMED_SUBJECTS,
  WALK_KINDS,
} from "./schema/kinds.ts";
export type {
  EmptyMass,
  LoadEnvelope,
  Loading,
  LoadLimits,
  Station,
  StationGroup,
  Tank,
} from "./schema/loading.ts";
export type { MaskKind, Oxygen, OxygenOutlet } from "./schema/oxygen.ts";
export type {
  Performance,
  PerformanceFactor,
  PerformanceQuantity,
  PerformanceTable,
  RunwayCondition,
  TableAxisName,
} from "./schema/performance.ts";
export type { Limit, Reading } from "./schema/reading.ts";
export type { Certification, MelItem, Relief } from "./schema/relief.ts";
export { NONE_GIVEN, type Side } from "./schema/text.ts";
export type { Counter, TimedItem, TimedLimit } from "./schema/timed-item.ts";
export { HAZARD_KINDS, type Hazard } from "./schema/walk-order.ts";
export { flightBookText } from "./testing/flight-book.ts";
export { smallBookText } from "./testing/small-book.ts";
