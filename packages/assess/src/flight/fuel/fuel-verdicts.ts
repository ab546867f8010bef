import type { Check } from "@witnessmark/book";
import {
  endurance,
  formatMeasure,
  reconciledFuel,
  roundToSafeSide,
  standardTemperature,
} from "@witnessmark/engine";
import type { FlightPlan, PlannedFlight, RecordedReading } from "@witnessmark/ledger";
import type { Source, Verdict, WorkingLine } from "../../assessment.ts";
import { bookSource } from "../../book-index.ts";
import type { Context } from "../../context.ts";
import type { Cause, Finding } from "../../finding.ts";
import type { FuelPartId } from "../../rules/fuel.ts";
import { recorded_ms } from "../../walk/moments.ts";
import { staleness } from "../../walk/staleness.ts";
import { durationText } from "../../words/duration-text.ts";
import { momentText, whenText } from "../../words/local-time.ts";
import { finding, findingLater, some } from "../finding-of.ts";
import type { LoadFigures } from "../load/figures.ts";
import { remembered } from "../remembered.ts";
import { asSource, kg, litres, marginKg, words } from "../words.ts";
import { addingUp_kg } from "./adding-up.ts";
import { COLDER_THAN_STANDARD_K, coldFuel } from "./cold-fuel.ts";
import { fuelSinceLastFlight } from "./from-last-flight.ts";
import { type FuelFigures, fuelFigures } from "./fuel-figures.ts";
import { type TankReconciled, tankReconciled } from "./tank-readings.ts";
import { wholeFuelVerdict } from "./whole-fuel-verdict.ts";

const OWN_RULE: Source = { title: "Witnessmark's own rule" };

const PARTS: Readonly<Record<FuelPartId, string>> = {
  taxi: "Taxi",
  trip: "Trip",
  contingency: "Contingency",
  alternate: "To the alternate",
  "final-reserve": "Final reserve",
  extra: "Extra",
};

const degC = (temperature_K: number): string => formatMeasure(temperature_K, "degC", 1);

/** A reading that still counts for the check that asked for it, of whatever walk. */
export function goodReading(check: Check, context: Context): RecordedReading | undefined {
  const reading = context.looks.get(check.id)?.reading;
  if (reading === undefined) return undefined;
  return staleness(check, reading, context.happenings, context.clock, "reading") === undefined
    ? reading
    : undefined;
}

const readTanks = (context: Context, load: LoadFigures): readonly TankReconciled[] => {
  const density = load.fuel.density_kgPerM3;
  return load.tanks.flatMap(({ id, volume_m3 }) => {
    const tank = context.book.loading?.tanks.find((one) => one.id === id);
    if (tank === undefined || volume_m3 === undefined || density === undefined) return [];
    return (
      tankReconciled(context.book, tank, volume_m3, density, (check) => goodReading(check, context)) ?? []
    );
  });
};

/** Phases of which the book says nothing are said, not passed over. */
function takenLines(context: Context): readonly WorkingLine[] {
  const taken = context.book.fuel?.burn.takenAsCruise ?? [];
  if (taken.length === 0) return [];
  return [{ label: `Burn in ${taken.join(" and ")}`, value: "not in the book, taken as the cruise" }];
}

/** `77.5 kg`: a working is added up by hand. */
const tenths = (fuel_kg: number): string => formatMeasure(fuel_kg, "kg", 0.1);
const tenthsLeft = (fuel_kg: number): string => tenths(roundToSafeSide(fuel_kg, 0.1, "down"));

function requiredLines(figures: FuelFigures): readonly WorkingLine[] {
  const { parts, burn, reserve, night, landing_kg, landing_s, endurance_s, usable_kg } = figures;
  const how = (id: FuelPartId): string => {
    if (id === "contingency")
      return `, ${formatMeasure(burn.contingency_1, "percent", 0.1).replace(".0", "")} of the trip fuel`;
    if (id === "trip" && !burn.tripGiven) return ", at cruise burn";
    if (id === "taxi" && !burn.taxiGiven) return ", of the book";
    if (id === "final-reserve" && reserve !== undefined) return `, ${durationText(reserve.time_s)}`;
    return "";
  };
  const shown_kg = addingUp_kg(parts.map(({ fuel_kg }) => fuel_kg));
  const needed_kg = shown_kg.reduce((sum, one_kg) => sum + one_kg, 0);
  return [
    ...parts.map((part, index) => ({
      label: `${PARTS[part.id]}${how(part.id)}`,
      value: `${tenths(shown_kg[index] ?? part.fuel_kg)}, ${part.askedBy === "rule" ? "by the rule" : "as planned"}`,
    })),
    ...(figures.required_kg === undefined ? [] : [{ label: "Needed at start-up", value: tenths(needed_kg) }]),
    ...(usable_kg === undefined ? [] : [{ label: "Usable fuel aboard", value: tenthsLeft(usable_kg) }]),
    ...(landing_kg === undefined || landing_s === undefined
      ? []
      : [{ label: "Left at the landing", value: `${tenthsLeft(landing_kg)}, ${durationText(landing_s)}` }]),
    ...(endurance_s === undefined
      ? []
      : [{ label: "Endurance at cruise burn", value: durationText(endurance_s) }]),
    {
      label: "By night",
      value: night === undefined ? "not known, taken as night" : night ? "some of it" : "none of it",
    },
  ];
}

/** What the take-off mass leaves to its limit. */
const roomToLimit_kg = ({ states }: LoadFigures): number =>
  states.find(({ at }) => at === "take-off")?.mass?.left ?? 0;

/** More fuel where the tanks take it and the masses allow it, else a way with less. */
function waysToReach(short_kg: number, load: LoadFigures): readonly string[] {
  const density = load.fuel.density_kgPerM3;
  const room_m3 = load.tanks.reduce((sum, tank) => sum + tank.capacity_m3 - (tank.volume_m3 ?? 0), 0);
  const heaviest = roomToLimit_kg(load);
  if (density === undefined || room_m3 * density < short_kg) return ["Land on the way and take fuel"];
  const take = `Take ${litres(short_kg / density, "up")} more`;
  return [
    heaviest < short_kg ? `${take}, and leave ${kg(short_kg - heaviest, "up")} behind` : take,
    "Land on the way and take fuel",
  ];
}

function causeOf(read: readonly TankReconciled[], context: Context): Cause | undefined {
  const last = read
    .filter(({ fits }) => !fits)
    .flatMap(({ readings }) => readings.map(({ reading }) => reading))
    .toSorted((a, b) => recorded_ms(b) - recorded_ms(a))[0];
  if (last === undefined) return undefined;
  const at_ms = recorded_ms(last);
  return {
    key: `reading:${last.event}`,
    at_ms,
    words: `The fuel was read ${whenText(at_ms, context.clock)}`,
    reopens: false,
  };
}

function requiredVerdict(
  context: Context,
  figures: FuelFigures,
  load: LoadFigures,
  read: readonly TankReconciled[],
): Finding {
  const worth = { id: "fuel:required", status: figures.status };
  return findingLater(worth, () => requiredTold(context, figures, load, read), causeOf(read, context));
}

function requiredTold(
  context: Context,
  figures: FuelFigures,
  load: LoadFigures,
  read: readonly TankReconciled[],
): Verdict {
  const { status, usable_kg = 0, required_kg, left_kg, atMost_kg, missing, faults } = figures;
  const isShort = left_kg !== undefined && left_kg < 0;
  const told = {
    id: "fuel:required",
    topic: "fuel" as const,
    title: "Fuel",
    evidence: read
      .filter(({ fits }) => !fits)
      .flatMap(({ readings }) => readings.map(({ reading }) => reading.event)),
    working: {
      lines: [...requiredLines(figures), ...takenLines(context)],
      formula: { quantity: endurance.id, text: endurance.formula },
    },
    sources: [bookSource(context.book, "fuel, burn"), ...figures.citations.map(asSource)],
  };
  const says =
    required_kg === undefined || figures.usable_kg === undefined
      ? "Not known what is needed or what is there"
      : `${kg(usable_kg, "down")} usable, ${kg(required_kg, "up")} needed`;
  const margin = left_kg === undefined || status === "open" ? words("not known") : marginKg(left_kg, "short");
  switch (status) {
    case "clear":
      return { ...told, says, margin, status };
    case "caution":
      return {
        ...told,
        says,
        margin,
        status,
        because: [
          `The climb burns more than the cruise, and how long it takes is not said: it may need ${kg(atMost_kg ?? 0, "up")}`,
        ],
      };
    case "stop":
      return {
        ...told,
        says,
        margin,
        status,
        because: [`${marginKg(left_kg ?? 0, "short").text} of what must be aboard`],
        wayOut: some(waysToReach(-(left_kg ?? 0), load), "Take more fuel"),
      };
    case "open":
      return {
        ...told,
        says,
        margin,
        status,
        missing: some(
          [
            ...missing.map(({ what }) => what),
            ...faults.map((fault) => fault.says),
            ...(figures.usable_kg === undefined ? ["what is in the tanks"] : []),
            ...(isShort ? ["whether any of the flight is by night; by night there is too little"] : []),
          ],
          "what is needed and what is there",
        ),
      };
    default:
      return status satisfies never;
  }
}

/** Of ways that do not agree, the one that can be read most closely is looked at again first. */
function finerFirst(readings: TankReconciled["readings"]): readonly string[] {
  const [finest, next] = readings.toSorted((a, b) => a.standardUncertainty_m3 - b.standardUncertainty_m3);
  if (finest === undefined || next === undefined) return [];
  if (finest.standardUncertainty_m3 >= next.standardUncertainty_m3) return [];
  return [`${finest.gauge} can be read more closely: take it again first`];
}

function tankVerdict(read: TankReconciled, context: Context): Finding {
  const { planned_m3, together, readings, fits, beyond_m3 } = read;
  const last = readings.map(({ reading }) => reading).toSorted((a, b) => recorded_ms(b) - recorded_ms(a))[0];
  const at_ms = last === undefined ? context.clock.now_ms : recorded_ms(last);
  const more = beyond_m3 > 0;
  const size = litres(Math.abs(beyond_m3), "up");
  const told = {
    id: `fuel:tank:${read.tank}`,
    topic: "fuel" as const,
    title: read.name,
    says: `${readings.map(({ volume_m3 }) => litres(volume_m3, "down")).join(" and ")} read, ${litres(planned_m3, "up")} planned`,
    margin: words(fits ? "as planned" : more ? `${size} short` : `${size} more`),
    evidence: readings.map(({ reading }) => reading.event),
    working: {
      lines: [
        ...readings.map(({ gauge, volume_m3, reading }) => ({
          label: gauge,
          value: `${litres(volume_m3, "down")}, ${momentText(recorded_ms(reading), context.clock)}`,
        })),
        { label: "Planned", value: litres(planned_m3, "up") },
        ...(readings.length < 2
          ? []
          : [
              {
                label: "Chance that they differ so much by themselves",
                value: `${Math.floor(together.probability_1 * 100)}\u00A0%, needs 5`,
              },
            ]),
      ],
      formula: { quantity: reconciledFuel.id, text: reconciledFuel.formula },
    },
    sources: [
      bookSource(context.book, `loading, ${read.tank}`),
      ...reconciledFuel.sources.map(({ title }) => ({ title })),
    ],
  };
  const because = [
    ...(together.consistent
      ? []
      : ["The ways in which it was read do not agree: the least of them counts", ...finerFirst(readings)]),
    ...(fits
      ? []
      : [more ? `${size} less than planned was read` : `${size} more than planned was read: it is heavier`]),
  ];
  const cause: Cause = {
    key: `reading:${last?.event ?? read.tank}`,
    at_ms,
    words: `${read.name} was read ${whenText(at_ms, context.clock)}`,
    reopens: false,
  };
  return read.status === "clear"
    ? finding({ ...told, status: "clear" })
    : finding(
        { ...told, status: "caution", because: some(because, "It was read otherwise than planned") },
        cause,
      );
}

function coldVerdict(context: Context, plan: FlightPlan): readonly Finding[] {
  const cold = coldFuel(context.book, plan);
  if (cold === undefined) return [];
  const { limit_K, fuel_K, air_K, status, isFreezingPoint } = cold;
  const limit = `${degC(limit_K)}${isFreezingPoint ? ", its freezing point" : ""}`;
  const told: Omit<Extract<Verdict, { status: "clear" }>, "status"> = {
    id: "fuel:cold",
    topic: "fuel",
    title: "Cold of the fuel",
    says:
      fuel_K === undefined
        ? `Not said how cold it is; not below ${limit}`
        : `${degC(fuel_K)}, not below ${limit}`,
    evidence: [],
    working: {
      lines: [
        ...(fuel_K === undefined ? [] : [{ label: "In the tanks", value: degC(fuel_K) }]),
        ...(air_K === undefined
          ? []
          : [
              {
                label: `Air at the level, standard less ${COLDER_THAN_STANDARD_K}\u00A0K`,
                value: degC(air_K),
              },
            ]),
        { label: "Not below", value: limit },
      ],
      formula: { quantity: standardTemperature.id, text: standardTemperature.formula },
    },
    sources: [
      bookSource(context.book, "fuel"),
      { ...OWN_RULE, locator: "fuel falls no lower than the air; what it warms by speed is not counted" },
    ],
  };
  const spare_K = fuel_K === undefined ? undefined : fuel_K - limit_K;
  const margin =
    spare_K === undefined
      ? words("not said")
      : { value: Math.floor(spare_K), unit: "K", text: `${Math.floor(spare_K + 1e-9)}\u00A0K` };
  switch (status) {
    case "clear":
      return [finding({ ...told, margin, status })];
    case "caution":
      return [
        finding({
          ...told,
          margin,
          status,
          because: [
            `The air up there may be ${degC(air_K ?? limit_K)}, and how fast the fuel cools is not in the book: watch its temperature`,
          ],
        }),
      ];
    case "stop":
      return [
        finding({
          ...told,
          margin: words(`${Math.ceil(-(spare_K ?? 0))}\u00A0K under`),
          status,
          because: ["The fuel is colder than it may be"],
          wayOut: ["Let it warm up, or take warmer fuel"],
        }),
      ];
    case "open":
      return [
        finding({
          ...told,
          margin: words("not known"),
          status,
          missing: [fuel_K === undefined ? "the temperature of the fuel" : "the level of the cruise"],
        }),
      ];
    default:
      return status satisfies never;
  }
}

const rememberedFigures = remembered<FuelFigures>();
const rememberedFindings = remembered<readonly Finding[]>();

/** The fuel of a flight: what must be aboard, what was read, how cold it gets. */
export function fuelVerdicts(
  context: Context,
  flight: PlannedFlight,
  plan: FlightPlan,
  load: LoadFigures,
): readonly Finding[] {
  if (plan.load === undefined || load.tanks.length === 0) return [];
  if (plan.route === undefined) return readTanks(context, load).map((one) => tankVerdict(one, context));
  // who and what is aboard moves none of it: only what is in the tanks, the route, the time, the place and the rules
  const { from, to, offBlocks } = flight;
  const { route, rulePack, flightRules, departure, destination, alternate } = plan;
  const { fuelTemperature, totaliser } = plan.load;
  const { usable_kg, density_kgPerM3 } = load.fuel;
  const volumes_m3 = load.tanks.map(({ volume_m3 }) => volume_m3);
  const fields = [departure?.code, destination?.code, alternate?.code, plan.places];
  const read = readTanks(context, load);
  const last = fuelSinceLastFlight(context.book, context.state, density_kgPerM3);
  const figures = rememberedFigures(
    context.book,
    [
      // what was read is told with its time, as it looks from now; without it nothing but the book is asked
      read.length === 0 ? undefined : context,
      last,
      ...[route, rulePack, flightRules, fuelTemperature, totaliser, from, to, offBlocks, ...fields],
      ...[usable_kg, density_kgPerM3, ...volumes_m3],
    ],
    () => fuelFigures(context.book, flight, plan, load, read, last),
  );
  // only a way out of too little fuel asks how heavy the aircraft is
  const room_kg = figures.status === "stop" ? roomToLimit_kg(load) : undefined;
  return rememberedFindings(figures, [room_kg], () => [
    requiredVerdict(context, figures, load, read),
    ...read.map((one) => tankVerdict(one, context)),
    ...(figures.whole === undefined
      ? []
      : [
          wholeFuelVerdict(
            figures.whole,
            context,
            read.flatMap(({ readings }) => readings.map(({ reading }) => reading.event)),
          ),
        ]),
    ...coldVerdict(context, plan),
  ]);
}
