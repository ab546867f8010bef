export type { Book, BookFault, BookResult, Check } from "./book.ts";
export type {
  Area,
  BookSource,
  Equipment,
  GroundGearItem,
  Identity,
  Point,
  Stance,
} from "./schema/book-source.ts";
export type { Fault } from "./schema/check.ts";
export { HappeningKind, Method, WalkKind } from "./schema/check.ts";
export type { Gauge } from "./schema/gauge.ts";
export type { Geometry } from "./schema/geometry.ts";
export type { Limit, Reading } from "./schema/reading.ts";
export type { Side } from "./schema/text.ts";
