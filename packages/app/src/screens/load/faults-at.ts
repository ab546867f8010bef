import { faultsAt, type LoadFigures } from "@witnessmark/assess";
import type { Amount } from "./amount.ts";
import type { InHand } from "./in-hand.ts";
import { type LoadUnits, marginWords } from "./load-units.ts";

/** What is wrong with what is in hand, in words. */
export function faultsInHand(
  hand: InHand,
  { item }: Pick<Amount, "item">,
  figures: LoadFigures,
  units: LoadUnits,
): readonly string[] {
  if (hand.kind === "tank") return faultsAt(figures, "tank", hand.id).map(({ says }) => says);
  if (hand.kind === "tanks") {
    return figures.faults.filter(({ where }) => where.kind === "tank").map(({ says }) => says);
  }
  return [
    ...(item === undefined ? [] : faultsAt(figures, "item", item.id).map(({ says }) => says)),
    ...stationFaults(hand.id, figures, units),
  ];
}

/** What is wrong at a seat or a bay: its limit, its floor, what it shares with others. */
export function stationFaults(id: string, figures: LoadFigures, units: LoadUnits): readonly string[] {
  const station = figures.stations.find((one) => one.id === id);
  const over = (what: string, left: number) => `${what}: ${marginWords(left, units.mass)}`;
  return [
    ...faultsAt(figures, "station", id).map(({ says }) => says),
    ...(station?.limit?.status === "stop" ? [over("Its limit", station.limit.left)] : []),
    ...(station?.floor?.status === "stop" ? [over("Its floor", station.floor.left)] : []),
    ...figures.groups.flatMap(({ name, stations, limit }) =>
      stations.includes(id) && limit.status === "stop" ? [over(`${name} together`, limit.left)] : [],
    ),
  ];
}
