import type { Field, FieldSource, Runway } from "../schema/field.ts";
import { given } from "./given.ts";

export const fieldInSI = (source: FieldSource): Field => ({
  code: source.code,
  name: source.name,
  latitude_deg: source.latitude,
  longitude_deg: source.longitude,
  elevation_m: source.elevation.valueSI,
  magneticVariation_deg: source.magneticVariation,
  lights: source.lights,
  approach: source.approach,
  ...given("airspace", source.airspace),
  approaches: source.approaches.map(({ name, kind, minimum, visibility }) => ({
    name,
    kind,
    minimum_m: minimum.valueSI,
    visibility_m: visibility.valueSI,
  })),
  zone: source.zone,
  runways: source.runways.map(runwayInSI),
});

const runwayInSI = (source: FieldSource["runways"][number]): Runway => ({
  name: source.name,
  trueHeading_deg: source.trueHeading,
  tora_m: source.tora.valueSI,
  toda_m: source.toda.valueSI,
  asda_m: source.asda.valueSI,
  lda_m: source.lda.valueSI,
  slope_1: source.slope.valueSI,
  surface: source.surface,
});
