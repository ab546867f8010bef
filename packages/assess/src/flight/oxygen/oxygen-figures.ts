import type { Book } from "@witnessmark/book";
import {
  conformanceAbove,
  crewOxygenEquipment,
  differenceToSI,
  standardUncertainty,
  toSI,
  type UsefulConsciousness,
  usefulConsciousness,
} from "@witnessmark/engine";
import type { FlightPlan, RecordedReading, Status } from "@witnessmark/ledger";
import type { OxygenInput, OxygenNeed } from "../../rules/rule-pack.ts";
import { rulePacks } from "../../rules/rule-packs.ts";
import type { Citation, Ruling } from "../../rules/ruling.ts";
import { type InputFault, type MissingPart, SURE_FROM_1 } from "../figures.ts";
import { given } from "../given.ts";
import { afterLoss, asPlanned, cabinAltitude_m, isDownIn4Min } from "./cabin-of-flight.ts";
import { type CylinderNow, cylinderNow, pressureFor_Pa } from "./cylinder.ts";
import { type Amount, needByRule, needOfDescent, tooThin } from "./oxygen-need.ts";
import { type SeatInUse, seatsInUse } from "./persons.ts";

/** What the flight needs of oxygen and what there is. */
export interface OxygenFigures {
  readonly status: Status;
  readonly level_m: number | undefined;
  readonly cabin_m: number | undefined;
  readonly seats: readonly SeatInUse[];
  /** Free gas, NTPD: what the rule asks to be carried, and what the descent takes after the cabin has let go. */
  readonly byRule_m3: number | undefined;
  readonly descent_m3: number | undefined;
  /** The greater of the two. */
  readonly need_m3: number | undefined;
  /** The cylinder's pressure at which it holds that, at the temperature read, or at that of the full cylinder. */
  readonly needPressure_Pa: number | undefined;
  readonly cylinder: CylinderNow | undefined;
  readonly left_Pa: number | undefined;
  /** The probability that there is enough, with the doubt of the gauge. */
  readonly chance_1: number | undefined;
  /** Seats whose mask gives less than the airworthiness rule wants held in the windpipe. */
  readonly thin: readonly SeatInUse[];
  /** Seats of the crew whose mask is not of the kind that is wanted so high. */
  readonly unfit: readonly SeatInUse[];
  readonly consciousness?: UsefulConsciousness;
  readonly text: string;
  readonly steps: readonly string[];
  readonly citations: readonly Citation[];
  readonly faults: readonly InputFault[];
  readonly missing: readonly MissingPart[];
}

/** At and below this level the cabin is never so high that a rule or a body asks for oxygen. */
const LOW_M = toSI(10_000, "ft");

interface Route {
  readonly level_m: number | undefined;
  readonly time_s: number | undefined;
  readonly faults: readonly InputFault[];
}

function routeOf(plan: FlightPlan): Route {
  const { route } = plan;
  if (route === undefined) return { level_m: undefined, time_s: undefined, faults: [] };
  const level = given(route.level, ["length"], "Level");
  const time = given(route.time, ["time"], "Time of the flight");
  return {
    level_m: level.ok ? level.valueSI : undefined,
    time_s: time.ok ? time.valueSI : undefined,
    faults: [
      ...(level.ok ? [] : [{ where: { kind: "route" as const, id: "level" }, says: level.says }]),
      ...(time.ok ? [] : [{ where: { kind: "route" as const, id: "time" }, says: time.says }]),
    ],
  };
}

type OxygenBook = Pick<Book, "loading" | "oxygen" | "cabin" | "gauges">;

/** What a rule is asked with; a part that the book does not have is left out, and the rule says so. */
function inputOf(book: OxygenBook, { level_m, time_s }: Route, seats: readonly SeatInUse[]): OxygenInput {
  const { cabin } = book;
  const crew_count = seats.filter(({ station }) => station.crew).length;
  const isLow = level_m !== undefined && level_m <= LOW_M;
  const cabin_m =
    level_m === undefined
      ? undefined
      : cabin === undefined
        ? isLow
          ? level_m
          : undefined
        : cabinAltitude_m(cabin, level_m);
  const descent = cabin?.pressurised === true ? cabin.emergencyDescent : undefined;
  return {
    pressurised: cabin?.pressurised ?? (isLow ? false : undefined),
    highestLevel_m: level_m,
    crew_count,
    pilotsAtControls_count: crew_count,
    passengers_count: seats.length - crew_count,
    cabin: cabin_m === undefined || time_s === undefined ? undefined : asPlanned(cabin_m, time_s),
    ...(descent === undefined || level_m === undefined || time_s === undefined
      ? {}
      : { afterLoss: afterLoss(level_m, descent, time_s), downIn4Min: isDownIn4Min(level_m, descent) }),
  };
}

const needOf = (amounts: readonly Amount[]): number | undefined =>
  amounts.reduce<number | undefined>(
    (most, one) => (most === undefined || !one.known ? undefined : Math.max(most, one.volume_m3)),
    0,
  );

function chanceOf(
  book: OxygenBook,
  now: CylinderNow | undefined,
  needPressure_Pa: number | undefined,
): number | undefined {
  const gauge = book.gauges.get(book.oxygen?.cylinder.gauge ?? "");
  if (now === undefined || needPressure_Pa === undefined || gauge?.dimension !== "pressure") return undefined;
  return conformanceAbove.compute({
    estimate_1: now.pressure_Pa,
    lowerLimit_1: needPressure_Pa,
    standardUncertainty_1: standardUncertainty({
      accuracy: differenceToSI(gauge.accuracy.value, gauge.accuracy.unit),
      resolution: differenceToSI(gauge.resolution.value, gauge.resolution.unit),
      coverage: gauge.coverage,
    }),
  });
}

const volumeOf = (amount: Amount | undefined): number | undefined =>
  amount?.known === true ? amount.volume_m3 : undefined;

/**
 * The oxygen of a flight: by the rule, and by the body along the emergency descent; the greater counts.
 *
 * @param reading what was read on the cylinder and still counts
 */
export function oxygenFigures(book: OxygenBook, plan: FlightPlan, reading?: RecordedReading): OxygenFigures {
  const route = routeOf(plan);
  const { level_m } = route;
  const seats = seatsInUse(book, plan);
  const input = inputOf(book, route, seats);
  const ruling = rulePacks.get(plan.rulePack)?.oxygen(input);
  const descent = book.cabin?.pressurised === true ? book.cabin.emergencyDescent : undefined;
  const byRule =
    ruling?.known === true && level_m !== undefined ? needByRule(ruling, seats, level_m) : undefined;
  const ofDescent: Amount | undefined =
    level_m === undefined
      ? undefined
      : descent === undefined
        ? { known: true, volume_m3: 0 }
        : needOfDescent(seats, level_m, descent);
  const need_m3 = byRule === undefined || ofDescent === undefined ? undefined : needOf([byRule, ofDescent]);
  const cylinder = book.oxygen?.cylinder;
  const now = cylinder === undefined || reading === undefined ? undefined : cylinderNow(cylinder, reading);
  const needPressure_Pa =
    cylinder === undefined || need_m3 === undefined
      ? undefined
      : pressureFor_Pa(cylinder, need_m3, now?.temperature_K ?? cylinder.fullTemperature_K);
  const chance_1 = need_m3 === undefined || need_m3 === 0 ? undefined : chanceOf(book, now, needPressure_Pa);
  const missing = missingOf(plan, ruling, [byRule, ofDescent]);
  const found = level_m === undefined ? undefined : usefulConsciousness(level_m);
  return {
    status: statusOf(book, need_m3, now, chance_1, route.faults.length + missing.length > 0),
    level_m,
    cabin_m: input.cabin?.[0]?.cabinAltitude_m,
    seats,
    byRule_m3: volumeOf(byRule),
    descent_m3: volumeOf(ofDescent),
    need_m3,
    needPressure_Pa,
    cylinder: now,
    left_Pa:
      now === undefined || needPressure_Pa === undefined ? undefined : now.pressure_Pa - needPressure_Pa,
    chance_1,
    thin: level_m === undefined || descent === undefined ? [] : tooThin(seats, level_m, descent.to_m),
    unfit: level_m === undefined ? [] : notFit(seats, level_m),
    ...(found?.ok === true ? { consciousness: found.row } : {}),
    text: ruling?.text ?? "",
    steps: ruling?.steps ?? [],
    citations: ruling?.citations ?? [],
    faults: route.faults,
    missing,
  };
}

/** The crew whose mask only flows, where the airworthiness rule wants one that gives what is breathed in. */
function notFit(seats: readonly SeatInUse[], level_m: number): readonly SeatInUse[] {
  const wanted = crewOxygenEquipment(level_m);
  if (wanted === undefined || wanted === "any approved") return [];
  return seats.filter(
    ({ outlet, station }) =>
      station.crew &&
      outlet !== undefined &&
      (wanted === "pressure demand" || outlet.mask !== "diluter-demand"),
  );
}

function missingOf(
  plan: FlightPlan,
  ruling: Ruling<OxygenNeed> | undefined,
  amounts: readonly (Amount | undefined)[],
): readonly MissingPart[] {
  const ofRule =
    ruling === undefined
      ? [{ part: "rules", what: `rules called "${plan.rulePack}"` }]
      : ruling.known
        ? []
        : ruling.missing.map(({ input: part, what }) => ({ part, what }));
  const ofFlows = amounts.flatMap((one) => (one?.known === false ? [{ part: "flows", what: one.what }] : []));
  const all = [...ofRule, ...ofFlows];
  return all.filter(({ what }, at) => all.findIndex((other) => other.what === what) === at);
}

function statusOf(
  book: OxygenBook,
  need_m3: number | undefined,
  now: CylinderNow | undefined,
  chance_1: number | undefined,
  isLacking: boolean,
): Status {
  if (isLacking || need_m3 === undefined) return "open";
  if (need_m3 === 0) return "clear";
  if (book.oxygen === undefined || now === undefined) return "open";
  if (now.usable_m3 < need_m3) return "stop";
  return chance_1 !== undefined && chance_1 < SURE_FROM_1 ? "caution" : "clear";
}
