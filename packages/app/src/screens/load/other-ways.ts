import { fromSI, roundToSafeSide, withSymbol } from "@witnessmark/engine";
import type { Move, OtherWays } from "@witnessmark/fit";
import { newId, type PlannedLoad } from "@witnessmark/ledger";
import { tidy, volumeIn, withItem, withTank } from "../../flight/plan-load.ts";
import { lower } from "../../words/capital.ts";
import { type LoadUnits, safe } from "./load-units.ts";

/** What things and places are called. */
export interface NamesOf {
  readonly thing: (item: string) => string;
  readonly place: (station: string) => string;
}

/** One way out in words, and the load with it. */
export interface OtherWay {
  readonly says: string;
  /** On its button. */
  readonly act: string;
  /** What is planned by it: the load, and what is to be moved in it. */
  readonly planned: { readonly load: PlannedLoad; readonly moves: readonly Move[] };
}

/** The ways that are no moving about, in words; those that need moves besides say which. */
export function othersWords(
  others: OtherWays,
  load: PlannedLoad,
  units: LoadUnits,
  names: NamesOf,
): readonly OtherWay[] {
  const mass = (value_kg: number) => withSymbol(safe(value_kg, units.mass, "up"), units.mass);
  const besides = (moves: readonly Move[]): string =>
    moves
      .map(
        ({ item, from, to }) =>
          `, and move ${names.thing(item)} from ${names.place(from)} to ${names.place(to)}`,
      )
      .join("");
  const { leaveBehind, lessFuel, ballast } = others;
  return [
    ...(leaveBehind === undefined
      ? []
      : [
          {
            says: `Leave behind ${leaveBehind.items.map((id) => thingAndPlace(id, load, names)).join(" and ")}: ${mass(leaveBehind.mass_kg)}${besides(leaveBehind.moves)}`,
            act: leaveBehind.items.length === 1 ? "Leave it behind" : "Leave them behind",
            planned: {
              load: { ...load, items: load.items.filter(({ id }) => !leaveBehind.items.includes(id)) },
              moves: leaveBehind.moves,
            },
          },
        ]),
    ...(lessFuel === undefined
      ? []
      : [
          {
            says: `Take ${mass(lessFuel.less_kg)} of fuel less; what the flight needs by the rules stays aboard${besides(lessFuel.moves)}`,
            act: "Take less fuel",
            planned: { load: withVolumes(load, lessFuel.volumes_m3, units), moves: lessFuel.moves },
          },
        ]),
    ...(ballast === undefined ? [] : [ballastWay(ballast, load, units, names)]),
  ];
}

/** "Clinic kit, in aft bay"; what has no name is what lies at its place. */
function thingAndPlace(id: string, { items }: PlannedLoad, names: NamesOf): string {
  const station = items.find((item) => item.id === id)?.station ?? "";
  return `${lowerThe(names.thing(id))}, in ${lower(names.place(station))}`;
}

const lowerThe = (name: string): string => (name.startsWith("The ") ? lower(name) : name);

const withVolumes = (
  load: PlannedLoad,
  volumes_m3: Readonly<Record<string, number>>,
  units: LoadUnits,
): PlannedLoad =>
  Object.entries(volumes_m3).reduce((next, [tank, volume_m3]) => {
    const unit = volumeIn(load, tank)?.unit ?? units.volume;
    return withTank(next, tank, { value: tidy(fromSI(volume_m3, unit)), unit });
  }, load);

/** In whole kilograms or pounds where those are not too much already. */
function ballastWay(
  { station, needed_kg, most_kg }: NonNullable<OtherWays["ballast"]>,
  load: PlannedLoad,
  units: LoadUnits,
  names: NamesOf,
): OtherWay {
  const whole = roundToSafeSide(fromSI(needed_kg, units.mass), 1, "up");
  const value = whole <= fromSI(most_kg, units.mass) ? whole : fromSI(needed_kg, units.mass);
  const mass = { value: tidy(value), unit: units.mass };
  return {
    says: `Take ballast, ${withSymbol(String(mass.value), mass.unit)}, tied down in ${lower(names.place(station))}`,
    act: "Take ballast",
    planned: {
      load: withItem(load, { id: newId(), station, what: "Ballast", mass, known: "weighed" }),
      moves: [],
    },
  };
}
