import type { LoadFigures } from "@witnessmark/assess";
import type { Book } from "@witnessmark/book";
import type { FitInput, FitItem } from "@witnessmark/fit";
import type { LoadedItem, PlannedLoad } from "@witnessmark/ledger";
import { siOf } from "../flight/plan-load.ts";

/**
 * What the solver of loadings is asked with; `null` while anything of the load is not known, as nothing is guessed.
 * Whoever sits at the controls stays there; people go to other seats, bags to other bays.
 *
 * @param required_kg usable fuel that the flight needs at start-up, where that is known
 */
export function fitInputOf(
  book: Pick<Book, "loading" | "fuel">,
  load: PlannedLoad,
  figures: LoadFigures,
  required_kg: number | undefined,
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
        name: thingName(item, inBay),
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
    burn: { taxi_kg, trip_kg, ...reserveOf(figures, required_kg) },
    limits: loading.limits,
    envelopes: [{ id: envelope.id, name: envelope.name, points: envelope.points }],
    ...(loading.gearMoment_kgm === undefined ? {} : { gearMoment_kgm: loading.gearMoment_kgm }),
    items,
  };
}

/** What it is called: what was written, or what it is. */
export const thingName = ({ what }: Pick<LoadedItem, "what">, inBay: boolean): string =>
  what.trim() === "" ? (inBay ? "The bag" : "Whoever sits there") : what;

/** What must be left at the landing; none where it is not there as it is, which is not for a loading to put right. */
function reserveOf(
  { fuel }: LoadFigures,
  required_kg: number | undefined,
): Pick<FitInput["burn"], "reserve_kg"> {
  const { usable_kg, taxi_kg = 0, trip_kg = 0 } = fuel;
  if (usable_kg === undefined || required_kg === undefined || usable_kg < required_kg) return {};
  // what sums leave over must not make it short
  return { reserve_kg: Math.max(0, Math.min(required_kg, usable_kg - HAIR_kg) - taxi_kg - trip_kg) };
}

const HAIR_kg = 1e-6;
