import type {
  Area,
  BookSource,
  Equipment,
  GroundGearItem,
  Identity,
  Point,
  Stance,
} from "./schema/book-source.ts";
import type { Cabin } from "./schema/cabin.ts";
import type { CheckSource } from "./schema/check.ts";
import type { Field } from "./schema/field.ts";
import type { Fuel } from "./schema/fuel.ts";
import type { Gauge } from "./schema/gauge.ts";
import type { Geometry } from "./schema/geometry.ts";
import type { IceProtection } from "./schema/ice-protection.ts";
import type { Loading } from "./schema/loading.ts";
import type { Oxygen } from "./schema/oxygen.ts";
import type { Performance } from "./schema/performance.ts";
import type { Reading } from "./schema/reading.ts";
import type { Relief } from "./schema/relief.ts";
import type { Counter, TimedItem } from "./schema/timed-item.ts";
import type { Hazard, OrderSource } from "./schema/walk-order.ts";

/** One thing to establish at one point, from one stance. */
export interface Check extends Omit<CheckSource, "at" | "from" | "reading" | "after"> {
  readonly point: string;
  readonly stance: string;
  readonly reading?: Reading;
  /** Ids of checks (after expansion) that come first. */
  readonly after: readonly string[];
}

/** One entry of the manual's order: all that is done at a stance and not named by itself, one check, one piece of gear. */
export type OrderStep =
  | { readonly kind: "stance"; readonly id: string }
  | { readonly kind: "check"; readonly id: string }
  | { readonly kind: "ground-gear"; readonly id: string };

/** The order of the approved manual, which the walk follows. */
export interface ManualOrder extends Pick<OrderSource, "source" | "walks"> {
  readonly steps: readonly OrderStep[];
}

/**
 * The description of one aircraft as the program uses it: references hold, every check stands at one point and is
 * made from one stance, and every value is a measure. Made only by `readBook`.
 */
export interface Book {
  readonly revision: number;
  readonly issued: BookSource["issued"];
  readonly notice: string;
  /** SHA-256 of the text it was read from (UTF-8, without a byte order mark), hexadecimal. */
  readonly sha256: string;
  readonly aircraft: Identity;
  readonly geometry: Geometry;
  readonly gauges: ReadonlyMap<string, Gauge>;
  readonly areas: ReadonlyMap<string, Area>;
  /** In an order in which the walk can be walked. */
  readonly stances: readonly Stance[];
  readonly stancesById: ReadonlyMap<string, Stance>;
  readonly points: ReadonlyMap<string, Point>;
  /** By stance, and within a stance as the book lists them. */
  readonly checks: readonly Check[];
  readonly checksById: ReadonlyMap<string, Check>;
  readonly groundGear: readonly GroundGearItem[];
  readonly equipment: readonly Equipment[];
  readonly counters: readonly Counter[];
  /** What runs out. */
  readonly timedItems: readonly TimedItem[];
  /** The manual's order of the walk; without one it is walked as it is planned. */
  readonly order?: ManualOrder;
  /** Stances at which one looks last. */
  readonly last?: readonly string[];
  /** What one walks round, or keeps away from, besides the aircraft's own shape. */
  readonly hazards?: readonly Hazard[];
  // What is absent here is not known: it gives open, never clear.
  readonly relief?: Relief;
  readonly loading?: Loading;
  readonly fuel?: Fuel;
  readonly oxygen?: Oxygen;
  readonly cabin?: Cabin;
  readonly performance?: Performance;
  readonly iceProtection?: IceProtection;
  readonly fields?: readonly Field[];
}

/** One fault of a book's text. */
export interface BookFault {
  readonly file: string;
  /** 1-based; 0 when the fault is of the file as a whole. */
  readonly line: number;
  readonly column: number;
  /** `checks[12].reading.gauge` */
  readonly path: string;
  readonly expected: string;
  readonly found: string;
  /** What to do about it. */
  readonly remedy?: string;
}

export type BookResult =
  | { readonly ok: true; readonly book: Book }
  | {
      readonly ok: false;
      readonly faults: readonly [BookFault, ...BookFault[]];
      /** The shape, where that can be drawn for all that. */
      readonly geometry?: Geometry;
    };
