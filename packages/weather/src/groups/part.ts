import type { Measure } from "@witnessmark/engine";
import type { CloudLayer, SkyStatement } from "./clouds.ts";
import type { IcingLayer, ShearLayer, TemperatureExtreme, TurbulenceLayer } from "./forecast-extras.ts";
import type { RunwayState } from "./runway-state.ts";
import type { RunwayVisualRange } from "./runway-visual-range.ts";
import type { AirTemperature } from "./temperature.ts";
import type { SectorVisibility, Visibility } from "./visibility.ts";
import type { WeatherCode } from "./weather-code.ts";
import type { Wind } from "./wind.ts";

/** What one group says. A report is the list of its groups; `foldElements` puts their parts together. */
export type Part =
  | { readonly is: "wind"; readonly wind: Wind }
  | { readonly is: "sector"; readonly from_degTrue: number; readonly to_degTrue: number }
  | { readonly is: "visibility"; readonly visibility: Visibility }
  | { readonly is: "minimum visibility"; readonly minimum: SectorVisibility }
  | { readonly is: "cavok" }
  | { readonly is: "runway visual range"; readonly range: RunwayVisualRange }
  | { readonly is: "runway state"; readonly state: RunwayState }
  | { readonly is: "weather"; readonly weather: WeatherCode }
  | { readonly is: "recent weather"; readonly weather: WeatherCode }
  | { readonly is: "no significant weather" }
  | { readonly is: "weather not observed" }
  | { readonly is: "cloud"; readonly layer: CloudLayer }
  | { readonly is: "cloud not observed" }
  | { readonly is: "vertical visibility"; readonly height_ft: number | null }
  | { readonly is: "sky"; readonly statement: SkyStatement }
  | { readonly is: "temperature"; readonly air: AirTemperature }
  | { readonly is: "pressure"; readonly setting: Measure }
  | { readonly is: "lowest pressure"; readonly setting: Measure }
  | { readonly is: "wind shear"; readonly runway: string }
  | { readonly is: "shear layer"; readonly shear: ShearLayer }
  | { readonly is: "icing"; readonly layer: IcingLayer }
  | { readonly is: "turbulence"; readonly layer: TurbulenceLayer }
  | { readonly is: "temperature extreme"; readonly extreme: TemperatureExtreme }
  | { readonly is: "sea"; readonly temperature_degC: number | null; readonly state: string }
  | { readonly is: "colour state"; readonly code: string };
