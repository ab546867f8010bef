import type { Measure } from "@witnessmark/engine";
import type { Fault } from "../aspect.ts";
import type { CloudAmount, CloudLayer } from "../groups/clouds.ts";
import type { Visibility } from "../groups/visibility.ts";

/** A remark is a supplement. `says` is the whole of it in words; the figures are for programs. */
export type Remark = { readonly says: string } & (
  | { readonly is: "station type" }
  | {
      readonly is: "peak wind";
      readonly from_degTrue: number;
      readonly speed_mPerS: number;
      readonly coded: Measure;
      readonly at_UTC: string;
    }
  | { readonly is: "wind shift"; readonly at_UTC: string; readonly frontal?: true }
  | {
      readonly is: "visibility";
      readonly kind: "tower" | "surface" | "variable" | "sector" | "location";
      /** NE, RWY11. */
      readonly where?: string;
      readonly lowest: Visibility;
      readonly highest?: Visibility;
    }
  | {
      readonly is: "ceiling";
      readonly lowest_ft: number;
      readonly lowest_m: number;
      readonly highest_ft?: number;
      readonly where?: string;
    }
  | {
      readonly is: "variable sky";
      /** `null`: the remark gives no height. */
      readonly base_ft: number | null;
      readonly amounts: readonly [CloudAmount, CloudAmount];
    }
  | { readonly is: "obscuration"; readonly code: string; readonly layer: CloudLayer }
  | { readonly is: "lightning" }
  | { readonly is: "thunderstorm place" }
  | { readonly is: "convective cloud" }
  | { readonly is: "begun and ended"; readonly code: string; readonly events: readonly RemarkEvent[] }
  | { readonly is: "pressure change"; readonly rapidly: "rising" | "falling" }
  | { readonly is: "sea-level pressure"; readonly digits: string | null }
  | { readonly is: "altimeter setting"; readonly setting: Measure }
  | {
      readonly is: "precipitation";
      readonly over_h: 1 | 3 | 6 | 24;
      /** 0 is a trace: too little to measure. */
      readonly amount_in: number;
      readonly amount_m: number;
    }
  | {
      readonly is: "tenths";
      readonly temperature_degC: number;
      readonly temperature_K: number;
      readonly dewPoint_degC?: number;
      readonly dewPoint_K?: number;
    }
  | {
      readonly is: "extreme";
      readonly kind: "highest" | "lowest";
      readonly over_h: 6 | 24;
      readonly temperature_degC: number;
      readonly temperature_K: number;
    }
  | { readonly is: "pressure tendency"; readonly code: number; readonly change_hPa: number }
  | { readonly is: "snow increasing"; readonly lastHour_in: number; readonly onGround_in: number }
  | { readonly is: "sensor"; readonly code: string }
  | { readonly is: "maintenance needed" }
  | { readonly is: "other" }
);

export interface RemarkEvent {
  readonly event: "began" | "ended";
  /** Minute of its hour, as coded. */
  readonly minute: number;
  /** hhmm; minutes alone belong to the last hour before the report. */
  readonly at_UTC: string;
}

export interface RemarkRead {
  readonly count: number;
  readonly remark?: Remark;
  readonly fault?: Fault;
}

/** Where a remark reader stands, and the time of the report, which minutes alone refer to. */
export interface RemarkPlace {
  readonly tokens: readonly string[];
  readonly at: number;
  readonly hour: number;
  readonly minute: number;
}
export type RemarkReader = (place: RemarkPlace) => RemarkRead | undefined;

export const remarkToken = ({ tokens, at }: RemarkPlace, ahead = 0): string => tokens[at + ahead] ?? "";
