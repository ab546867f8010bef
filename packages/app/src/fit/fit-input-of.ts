import type { LoadFigures } from "@witnessmark/assess";
import type { Book } from "@witnessmark/book";
import type { FitInput, FitItem } from "@witnessmark/fit";
import type { PlannedLoad } from "@witnessmark/ledger";
import { siOf } from "../flight/plan-load.ts";

/**
 * What the solver of loadings is asked with; `null` while anything of the load is not known, as nothing is guessed.
 * Whoever sits at the controls stays there; people go to other seats, bags to other bays.
 */
export function fitInputOf(
  book: Pick<Book, "loading" | "fuel">,
  load: PlannedLoad,
  figures: LoadFigures,
): FitInput | null {
  const { loading, fuel } = book;
  const { empty, envelope } = figures;
  const { density_kgPerM3, taxi_kg, trip_kg } = figures.fuel;
  if (loading === undefined || fuel === undefined || empty === undefined || envelope === undefined)
    return null;
  if (!figures.complete || density_kgPerM3 === undefined) return null;
  if (taxi_kg === undefined || trip_kg === undefined) return null;
  const seats = loading.stations.filter(({ kind }) => kind === "seat");
  const bays = loading.stations.filter(({ kind }) => kind === "bay");
  const controls = seats.find(({ crew }) => crew)?.id;
  const items = load.items.flatMap((item): readonly FitItem[] => {
    const mass_kg = siOf(item.mass, "mass");
    if (mass_kg === null) return [];
    const inBay = bays.some(({ id }) => id === item.station);
    const mayGo = (inBay ? bays : seats).map(({ id }) => id).filter((id) => id !== controls);
    return [
      {
        id: item.id,
        name: item.what === "" ? "What lies there" : item.what,
        mass_kg,
        at: item.station,
        ...(item.station === controls ? {} : { mayGo }),
        ...(inBay ? { mayStay: true } : {}),
      },
    ];
  });
  const volumes = new Map(figures.tanks.map(({ id, volume_m3 }) => [id, volume_m3]));
  return {
    empty: { mass_kg: empty.mass_kg, arm_m: empty.arm_m },
    stations: loading.stations.map(({ id, name, kind, arm_m, lateralArm_m, max_kg, floor }) => ({
      id,
      name,
      arm_m,
      lateralArm_m,
      // where the manual gives no limit, that of the whole aircraft is one all the same
      max_kg: max_kg ?? loading.limits.ramp_kg ?? loading.limits.takeOff_kg,
      ...(floor === undefined ? {} : { floor }),
      ...(kind === "seat" ? { holds: 1 } : {}),
    })),
    groups: loading.groups,
    tanks: loading.tanks.map(({ id, name, side, arms, lateralArm_m, unusable_m3 }) => ({
      id,
      name,
      side,
      arms,
      lateralArm_m,
      unusable_m3,
      volume_m3: volumes.get(id) ?? unusable_m3,
    })),
    density_kgPerM3,
    order: fuel.order,
    burn: { taxi_kg, trip_kg },
    limits: loading.limits,
    envelopes: [{ id: envelope.id, name: envelope.name, points: envelope.points }],
    ...(loading.gearMoment_kgm === undefined ? {} : { gearMoment_kgm: loading.gearMoment_kgm }),
    items,
  };
}
