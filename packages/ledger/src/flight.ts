import type { Read } from "./event.ts";

/** The flight that a decision is for, as far as the pilot says it. Values are kept as they were given. */
export interface PlannedFlight {
  /** UUID of the flight; absent when it was only named and never planned. */
  readonly id?: string;
  readonly from: string;
  readonly to: string;
  /** Off blocks, ISO 8601 with offset. */
  readonly offBlocks: string;
  readonly plan?: FlightPlan;
}

/** Everything of a flight that its numbers are worked out from. A part that is absent leaves its answers open. */
export interface FlightPlan {
  /** Id of the rules that the flight is judged by, such as `us-part-91`. */
  readonly rulePack: string;
  readonly flightRules: "VFR" | "IFR";
  readonly load?: PlannedLoad;
  readonly route?: PlannedRoute;
  readonly departure?: PlannedField;
  readonly destination?: PlannedField;
  readonly alternate?: PlannedField;
  readonly own?: OwnMinima;
  /** Fields that the book does not have, as the pilot said them; where it has one of the same code, its own counts. */
  readonly places?: readonly PlannedPlace[];
}

/** How a field's code and a runway's name are written. */
export const FIELD_CODE = /^[A-Z][A-Z0-9]{3}$/;
export const RUNWAY_NAME = /^(0[1-9]|[12]\d|3[0-6])[LCR]?$/;

/** A field as it is said for one flight, from a chart or from its owner. */
export interface PlannedPlace {
  readonly code: string;
  readonly name: string;
  /** Degrees, north positive. */
  readonly latitude_deg: number;
  /** Degrees, east positive. */
  readonly longitude_deg: number;
  readonly elevation: Read;
  /** Whether a runway has lights for night. */
  readonly lights: boolean;
  /** Time zone of the tz database. */
  readonly zone: string;
  readonly runways: readonly PlannedRunway[];
}

/** One direction of a runway. */
export interface PlannedRunway {
  readonly name: string;
  /** Degrees clockwise from true north. */
  readonly trueHeading_deg: number;
  /** What there is to take off on, to stop on and to land on, in this direction. */
  readonly length: Read;
  /** Rise over length in this direction, up positive. */
  readonly slope_1: number;
  readonly surface: "paved" | "grass" | "gravel";
}

/** A person or a thing aboard. */
export interface LoadedItem {
  readonly id: string;
  /** Id of the seat or bay in the book. */
  readonly station: string;
  readonly what: string;
  readonly mass: Read;
  /** On scales, said by the person, or a published standard figure. */
  readonly known: "weighed" | "stated" | "standard";
}

export interface PlannedLoad {
  readonly items: readonly LoadedItem[];
  /** What is in each tank at start-up, all of it, the unusable part too. */
  readonly fuel: readonly { readonly tank: string; readonly volume: Read }[];
  readonly fuelTemperature?: Read;
  /** What the fuel totaliser shows at start-up: mass or volume, of the fuel that can be used. */
  readonly totaliser?: Read;
  /** Id of the envelope in the book; its first when absent. */
  readonly envelope?: string;
}

export interface PlannedRoute {
  readonly distance: Read;
  /** From take-off to landing. */
  readonly time: Read;
  /** Pressure altitude of the cruise. */
  readonly level: Read;
  /** From the destination to the alternate. */
  readonly alternateTime?: Read;
  /** Mass or volume; from the book's burn when absent. */
  readonly tripFuel?: Read;
  readonly taxiFuel?: Read;
  /** Share of the trip fuel, 0 to 1. */
  readonly contingency_1?: number;
  /** Beyond all that the rules ask for. */
  readonly extraFuel?: Read;
  /** Lands where it took off and stays in sight of that field all the time. */
  readonly inSightOfField?: true;
}

export type RunwayCondition = "dry" | "wet" | "snow" | "slush" | "ice";

/** A report as it came, and when; pasted, typed or fetched. */
export interface Report {
  readonly text: string;
  /** ISO 8601 with offset. */
  readonly receivedAt: string;
}

/** What the pilot read or was told, where there is no report, or in its place. */
export interface TypedConditions {
  /** ISO 8601 with offset. */
  readonly observedAt: string;
  /** From where, degrees true. */
  readonly windFrom?: Read;
  /** From no direction that can be told (VRB): it may come from anywhere. */
  readonly windVariable?: true;
  readonly windSpeed?: Read;
  readonly windGust?: Read;
  readonly oat?: Read;
  readonly dewPoint?: Read;
  readonly qnh?: Read;
  readonly visibility?: Read;
  readonly ceiling?: Read;
}

export type AirspaceClass = "A" | "B" | "C" | "D" | "E" | "F" | "G";

/** An approach as it is planned to be flown, with the minima that the pilot holds to. */
export interface PlannedApproach {
  readonly name: string;
  readonly kind: "precision" | "non-precision";
  /** Decision or minimum descent height, above the field. */
  readonly minimum: Read;
  readonly visibility: Read;
}

export interface PlannedField {
  /** Code of a field of the book, or of one of `places`. */
  readonly code: string;
  /** Name of the runway, such as "29"; absent until one is chosen. */
  readonly runway?: string;
  /** How its surface is; absent until somebody says so. */
  readonly condition?: RunwayCondition;
  readonly metar?: Report;
  readonly taf?: Report;
  readonly typed?: TypedConditions;
  /** Class of the airspace at the surface, where it is another than the book says. */
  readonly airspace?: AirspaceClass;
  /** The approach by instruments that is planned. */
  readonly approach?: PlannedApproach;
}

/** What the pilot asks for beyond the rules. */
export interface OwnMinima {
  readonly ceiling?: Read;
  readonly visibility?: Read;
  readonly crosswind?: Read;
  /** Height over distance along the ground, asked after the take-off. */
  readonly climbGradient?: Read;
  readonly takeOffFactor_1?: number;
  readonly landingFactor_1?: number;
}
