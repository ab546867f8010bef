import {
  CREW_EQUIPMENT_SOURCE,
  crewOxygenEquipment,
  formatMeasure,
  fromSI,
  oxygenUsable,
  roundToSafeSide,
  USEFUL_CONSCIOUSNESS_SOURCE,
  withSymbol,
} from "@witnessmark/engine";
import type { FlightPlan, RecordedReading } from "@witnessmark/ledger";
import type { Source, WorkingLine } from "../../assessment.ts";
import { bookSource, pointName } from "../../book-index.ts";
import type { Context } from "../../context.ts";
import type { Cause, Finding } from "../../finding.ts";
import { feet } from "../../rules/edges.ts";
import { recorded_ms } from "../../walk/moments.ts";
import { counted, inside, inWords, listed, sentence } from "../../words/count-words.ts";
import { durationText } from "../../words/duration-text.ts";
import { momentText, whenText } from "../../words/local-time.ts";
import { finding, some } from "../finding-of.ts";
import { goodReading } from "../fuel/fuel-verdicts.ts";
import type { LoadFigures } from "../load/figures.ts";
import { remembered } from "../remembered.ts";
import { asSource, chanceText, litres, marginBar, SURE_PERCENT, words } from "../words.ts";
import { type OxygenFigures, oxygenFigures } from "./oxygen-figures.ts";

const bar = (pressure_Pa: number, way: "up" | "down"): string =>
  withSymbol(String(roundToSafeSide(fromSI(pressure_Pa, "bar"), 1, way)), "bar");

const people = (count: number): string => `${sentence(inWords(count))} aboard`;

function goodOxygen(context: Context): RecordedReading | undefined {
  const id = context.book.oxygen?.cylinder.check;
  const check = id === undefined ? undefined : context.index.checks.get(id);
  return check === undefined ? undefined : goodReading(check, context);
}

function linesOf(
  figures: OxygenFigures,
  reading: RecordedReading | undefined,
  context: Context,
): readonly WorkingLine[] {
  const { level_m, cabin_m, seats, byRule_m3, descent_m3, needPressure_Pa, cylinder, chance_1 } = figures;
  return [
    ...(level_m === undefined ? [] : [{ label: "Level", value: feet(level_m) }]),
    ...(cabin_m === undefined ? [] : [{ label: "Cabin", value: feet(cabin_m) }]),
    { label: "Seats in use", value: String(seats.length) },
    ...(byRule_m3 === undefined ? [] : [{ label: "Asked by the rule", value: litres(byRule_m3, "up") }]),
    ...(descent_m3 === undefined
      ? []
      : [{ label: "Breathed in the emergency descent", value: litres(descent_m3, "up") }]),
    ...(needPressure_Pa === undefined
      ? []
      : [{ label: "That is, in the cylinder", value: bar(needPressure_Pa, "up") }]),
    ...(cylinder === undefined || reading === undefined
      ? []
      : [
          {
            label: "Read",
            value: `${bar(cylinder.pressure_Pa, "down")} at ${formatMeasure(cylinder.temperature_K, "degC", 1)}, ${momentText(recorded_ms(reading), context.clock)}`,
          },
          { label: "Usable of it", value: litres(cylinder.usable_m3, "down") },
        ]),
    ...(chance_1 === undefined
      ? []
      : [{ label: "Chance that it is enough", value: `${chanceText(chance_1)}, needs ${SURE_PERCENT}` }]),
  ];
}

function saysOf({ need_m3, needPressure_Pa, cylinder, seats, cabin_m, text }: OxygenFigures): string {
  if (need_m3 === undefined) return "Not known what is needed";
  if (need_m3 === 0) return cabin_m === undefined ? text : `None needed, cabin at ${feet(cabin_m)}`;
  if (needPressure_Pa === undefined) return `${people(seats.length)} need ${litres(need_m3, "up")}`;
  const need = `${people(seats.length)} need ${bar(needPressure_Pa, "up")}`;
  return cylinder === undefined ? need : `${bar(cylinder.pressure_Pa, "down")} read; ${inside(need)}`;
}

function causeOf(reading: RecordedReading | undefined, context: Context): Cause | undefined {
  if (reading === undefined) return undefined;
  const at_ms = recorded_ms(reading);
  return {
    key: `reading:${reading.event}`,
    at_ms,
    words: `The oxygen was read ${whenText(at_ms, context.clock)}`,
    reopens: false,
  };
}

function needVerdict(
  context: Context,
  figures: OxygenFigures,
  reading: RecordedReading | undefined,
): Finding {
  const { status, left_Pa, need_m3, cylinder, missing, faults, chance_1, seats } = figures;
  const check = context.index.checks.get(context.book.oxygen?.cylinder.check ?? "");
  const told = {
    id: "oxygen:need",
    topic: "oxygen" as const,
    title: "Oxygen for everyone",
    says: saysOf(figures),
    evidence: reading === undefined ? [] : [reading.event],
    working: {
      lines: linesOf(figures, reading, context),
      formula: { quantity: oxygenUsable.id, text: oxygenUsable.formula },
    },
    sources: [
      bookSource(context.book, "oxygen, cabin"),
      ...figures.citations.map(asSource),
      { title: "AMC1 CAT.IDE.A.235(e)", locator: "17 s until the descent begins" },
    ],
  };
  const cause = causeOf(reading, context);
  const margin =
    need_m3 === 0 ? words("none needed") : left_Pa === undefined ? words("not known") : marginBar(left_Pa);
  switch (status) {
    case "clear":
      return finding({ ...told, margin, status });
    case "caution":
      return finding(
        {
          ...told,
          margin,
          status,
          because: [
            `Too close to call with this gauge: the chance that it is enough is ${chanceText(chance_1 ?? 0)}, ${SURE_PERCENT} are needed`,
          ],
        },
        cause,
      );
    case "stop":
      return finding(
        {
          ...told,
          margin,
          status,
          because: [
            `${litres((need_m3 ?? 0) - (cylinder?.usable_m3 ?? 0), "up")} short for ${counted(seats.length, "person", "people")}`,
          ],
          wayOut: ["Have the cylinder filled", "Fly lower, or with fewer people"],
        },
        cause,
      );
    case "open": {
      const lacks = [...missing.map(({ what }) => what), ...faults.map(({ says }) => says)];
      const notRead = lacks.length === 0 && context.book.oxygen !== undefined;
      const inBook = lacks.length === 0 && !notRead ? ["oxygen, in the book"] : [];
      const toRead = notRead
        ? [
            check === undefined
              ? "a check that reads it, in the book"
              : `${inside(pointName(context.book, check.point) ?? check.title)}: pressure and temperature`,
          ]
        : [];
      return finding({
        ...told,
        margin: words(notRead ? "not read" : "not known"),
        status,
        missing: some([...lacks, ...inBook, ...toRead], "what is in the cylinder"),
        ...(notRead && check !== undefined ? { subject: { kind: "check" as const, id: check.id } } : {}),
      });
    }
    default:
      return status satisfies never;
  }
}

function thinVerdict(context: Context, { thin, level_m }: OxygenFigures): readonly Finding[] {
  if (thin.length === 0 || level_m === undefined) return [];
  return [
    finding({
      id: "oxygen:mask-flow",
      topic: "oxygen",
      title: "Flow of the masks",
      says: `At ${feet(level_m)} the masks of ${listed(thin.map(({ station }) => inside(station.name)))} give less than is asked for`,
      margin: words("too little"),
      status: "caution",
      because: [
        "The flow in the book is under the least that holds the oxygen which the airworthiness rule wants",
      ],
      evidence: [],
      working: {
        lines: thin.map(({ station, outlet }) => ({ label: station.name, value: outlet?.mask ?? "no mask" })),
      },
      sources: [
        bookSource(context.book, "oxygen, outlets"),
        { title: "14 CFR 23.1443 (before 2017) and 25.1443: minimum mass flow of supplemental oxygen" },
      ],
    }),
  ];
}

const CREW_EQUIPMENT: Source = {
  title: CREW_EQUIPMENT_SOURCE.title,
  ...(CREW_EQUIPMENT_SOURCE.locator === undefined ? {} : { locator: CREW_EQUIPMENT_SOURCE.locator }),
};

function unfitVerdict(context: Context, { unfit, level_m }: OxygenFigures): readonly Finding[] {
  if (unfit.length === 0 || level_m === undefined) return [];
  const wanted = crewOxygenEquipment(level_m);
  return [
    finding({
      id: "oxygen:crew-masks",
      topic: "oxygen",
      title: "Masks of the crew",
      says: `At ${feet(level_m)} the crew should have ${wanted} masks; not so at ${listed(unfit.map(({ station }) => inside(station.name)))}`,
      margin: words("another kind"),
      status: "caution",
      because: [
        "A mask that only flows does not hold enough oxygen in the lungs so high. The airworthiness rule asks it of a type by the level that it is approved for: the approved manual says which",
      ],
      evidence: [],
      working: {
        lines: unfit.map(({ station, outlet }) => ({
          label: station.name,
          value: outlet === undefined ? "no mask" : outlet.mask,
        })),
      },
      sources: [bookSource(context.book, "oxygen, outlets"), CREW_EQUIPMENT],
    }),
  ];
}

function consciousnessVerdict({ consciousness, level_m, cabin_m }: OxygenFigures): readonly Finding[] {
  if (consciousness === undefined || level_m === undefined) return [];
  const { rapid, altitude_m } = consciousness;
  const least = durationText(rapid.shortest_s);
  const pressurised = cabin_m !== undefined && cabin_m < level_m;
  return [
    finding({
      id: "oxygen:consciousness",
      topic: "oxygen",
      title: "Useful time without oxygen",
      says: `${least} at ${feet(level_m)}${pressurised ? ", should the cabin let go" : ""}`,
      margin: words(least),
      status: "caution",
      because: [
        `From ${least} to ${durationText(rapid.longest_s)} until one can no longer help oneself: mask first`,
      ],
      evidence: [],
      working: {
        lines: [
          { label: "Row of the table", value: feet(altitude_m) },
          { label: "Cabin lets go at once", value: `${least} to ${durationText(rapid.longest_s)}` },
          {
            label: "It climbs slowly",
            value: `${durationText(consciousness.gradual.shortest_s)} to ${durationText(consciousness.gradual.longest_s)}`,
          },
        ],
      },
      sources: [
        {
          title: USEFUL_CONSCIOUSNESS_SOURCE.title,
          ...(USEFUL_CONSCIOUSNESS_SOURCE.locator === undefined
            ? {}
            : { locator: USEFUL_CONSCIOUSNESS_SOURCE.locator }),
        },
      ],
    }),
  ];
}

const rememberedFindings = remembered<readonly Finding[]>();

/** The oxygen of a flight. None until somebody is aboard and the route is said: those are asked for elsewhere. */
export function oxygenVerdicts(context: Context, plan: FlightPlan, load: LoadFigures): readonly Finding[] {
  const { route, rulePack } = plan;
  const taken = load.stations.filter(({ kind, mass_kg }) => kind === "seat" && mass_kg > 0);
  if (route === undefined || taken.length === 0) return [];
  const seats = JSON.stringify(taken.map(({ id }) => id));
  const { level, time } = route;
  const reading = goodOxygen(context);
  // what was read is told with its time, as it looks from now; without it nothing but the book is asked
  const from = reading === undefined ? undefined : context;
  return rememberedFindings(
    context.book,
    [from, rulePack, level.value, level.unit, time.value, time.unit, seats],
    (): readonly Finding[] => {
      const figures = oxygenFigures(context.book, plan, reading);
      return [
        needVerdict(context, figures, reading),
        ...thinVerdict(context, figures),
        ...unfitVerdict(context, figures),
        ...consciousnessVerdict(figures),
      ];
    },
  );
}
