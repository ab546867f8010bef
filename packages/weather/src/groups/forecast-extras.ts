import { type Measure, measure, toSI } from "@witnessmark/engine";
import { impossible } from "../aspect.ts";
import { type DayTime, dayTimeOf } from "../day-time.ts";
import { faulty, type Reader, tokenAt, used } from "./read.ts";
import { degrees } from "./temperature.ts";

/** Wind shear near the ground, not from convection: the wind at the top of the layer, not the amount of shear. */
export interface ShearLayer {
  readonly layerTop_ft: number;
  readonly layerTop_m: number;
  readonly from_degTrue: number;
  readonly speed_mPerS: number;
  readonly coded: { readonly speed: Measure };
}

interface Layer {
  /** The figure of the code table. */
  readonly code: string;
  readonly base_ft: number;
  readonly base_m: number;
  /** 0: up to the top of the cloud. */
  readonly thickness_ft: number;
  readonly thickness_m: number;
}
export type IcingLayer = Layer;
export type TurbulenceLayer = Layer;

/** The highest or the lowest temperature that a forecast expects. */
export interface TemperatureExtreme {
  readonly kind: "highest" | "lowest";
  readonly coded_degC: number;
  readonly temperature_K: number;
  readonly at: DayTime;
}

const layer = (code: string, hundreds: string, thousands: string): Layer => ({
  code,
  base_ft: Number(hundreds) * 100,
  base_m: toSI(Number(hundreds) * 100, "ft"),
  thickness_ft: Number(thousands) * 1000,
  thickness_m: toSI(Number(thousands) * 1000, "ft"),
});

const readShear: Reader = (place) => {
  const found = /^WS(\d{3})\/(\d{3})(\d{2,3})(KT|MPS)$/u.exec(tokenAt(place));
  if (found === null) return undefined;
  const [, top = "", direction = "", digits = "", unit] = found;
  const from_degTrue = Number(direction);
  if (from_degTrue < 10 || from_degTrue > 360 || from_degTrue % 10 !== 0 || Number(top) === 0)
    return faulty(
      impossible("wind shear with a direction or a height that cannot be; shear is possible", "wind", "gust"),
    );
  const speed = measure(Number(digits), unit === "KT" ? "kt" : "mPerS");
  const layerTop_ft = Number(top) * 100;
  return used({
    is: "shear layer",
    shear: {
      layerTop_ft,
      layerTop_m: toSI(layerTop_ft, "ft"),
      from_degTrue,
      speed_mPerS: speed.valueSI,
      coded: { speed },
    },
  });
};

const readExtreme: Reader = (place) => {
  const found = /^T([XN])(M?\d{2})\/(\d{4})Z$/u.exec(tokenAt(place));
  if (found === null) return undefined;
  const at = dayTimeOf(`${found[3] ?? ""}00`);
  const value = degrees(found[2] ?? "");
  if (at === undefined || value === null)
    return faulty(impossible("extreme temperature at a time that cannot be; not used", "temperature"));
  return used({
    is: "temperature extreme",
    extreme: {
      kind: found[1] === "X" ? "highest" : "lowest",
      coded_degC: value.coded_degC,
      temperature_K: value.temperature_K,
      at,
    },
  });
};

/** WS010/31022KT, TX32/1619Z, and the military 620304 (icing) and 540006 (turbulence). */
export const readForecastExtras: Reader = (place) => {
  if (place.section !== "forecast") return undefined;
  const layered = /^([56])([\dX])(\d{3})(\d)$/u.exec(tokenAt(place));
  if (layered !== null) {
    const [, kind, code = "", hundreds = "", thousands = ""] = layered;
    return used({ is: kind === "6" ? "icing" : "turbulence", layer: layer(code, hundreds, thousands) });
  }
  return readShear(place) ?? readExtreme(place);
};
