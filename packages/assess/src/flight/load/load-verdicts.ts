import type { Loading } from "@witnessmark/book";
import {
  centreOfGravity,
  floorLoading,
  fuelImbalance,
  lateralMoment,
  MASS_SPREADS,
  totalMass,
} from "@witnessmark/engine";
import type { FlightPlan } from "@witnessmark/ledger";
import type { Source, Verdict, Working, WorkingLine } from "../../assessment.ts";
import { bookSource } from "../../book-index.ts";
import type { Finding } from "../../finding.ts";
import type { Limited } from "../figures.ts";
import { findingLater, some } from "../finding-of.ts";
import { chanceText, kg, litres, marginKg, metres3, ofKg, SURE_PERCENT, words } from "../words.ts";
import { allowed, EDGES, FINE_m, towards, WHERE, worstMargin, worstPlace, worstWhere } from "./edge-words.ts";
import type { EnvelopeFigures, LoadFigures, LoadMoment, LoadState, StationFigures } from "./figures.ts";
import type { WorkedLoad } from "./load-figures.ts";
import { type OfBook, unknownVerdicts } from "./unknown-verdicts.ts";
import { waysIntoEnvelope, waysToLighten } from "./ways-out.ts";

const TITLES: Readonly<Record<LoadMoment, string>> = {
  "zero-fuel": "Zero-fuel mass",
  ramp: "Ramp mass",
  "take-off": "Take-off mass",
  landing: "Landing mass",
  alternate: "Landing mass at the alternate",
};

/** What a verdict says, whatever it is worth, and what it says of a value past its limit. */
interface Said {
  readonly title: string;
  readonly says: string;
  readonly margin: NonNullable<Verdict["margin"]>;
  readonly working: Working;
  readonly sources: readonly Source[];
  readonly because: string;
  readonly wayOut: () => readonly string[];
  readonly missing: readonly string[];
}

const formulaOf = (quantity: {
  readonly id: string;
  readonly formula: string;
}): NonNullable<Working["formula"]> => ({
  quantity: quantity.id,
  text: quantity.formula,
});

const NOT_SURE = "Within the limit, but the weights are not known well enough";

const unsure = (chance_1: number): string =>
  `${NOT_SURE}: the chance is ${chanceText(chance_1)}, ${SURE_PERCENT} are needed`;

/** A verdict of a value against its limit. @param say what it says, when somebody reads it */
function ofLimit(
  id: string,
  { status, chance_1 }: Pick<Limited, "status" | "chance_1">,
  say: () => Said,
  warns: () => readonly [string, ...string[]] = () => [unsure(chance_1 ?? 0)],
): Finding {
  return findingLater({ id, status }, (): Verdict => {
    const { because, wayOut, missing, ...said } = say();
    const base = { id, topic: "load" as const, ...said, evidence: [] };
    switch (status) {
      case "clear":
        return { ...base, status };
      case "caution":
        return { ...base, status, because: warns() };
      case "stop":
        return {
          ...base,
          status,
          because: [because],
          wayOut: some(wayOut(), "Load it otherwise, and look again"),
        };
      case "open":
        return { ...base, status, missing: some(missing, "everything that is aboard") };
      default:
        return status satisfies never;
    }
  });
}

const chanceLine = (chance_1: number | undefined): readonly WorkingLine[] =>
  chance_1 === undefined
    ? []
    : [{ label: "Chance it is kept", value: `${chanceText(chance_1)}, needs ${SURE_PERCENT}` }];

/** Where the spread of what is aboard comes from, each source once. */
function spreadSources({ knowledge }: LoadFigures): readonly Source[] {
  const used = MASS_SPREADS.filter((spread) =>
    knowledge.some(
      (one) => one.known === spread.known && one.standardUncertainty_kg === spread.standardUncertainty_kg,
    ),
  );
  const titles = [...new Set(used.map(({ source }) => source.title))];
  return titles.map((title) => ({ title }));
}

interface Task {
  readonly context: OfBook;
  readonly loading: Loading;
  readonly worked: WorkedLoad;
  readonly missing: readonly string[];
  /** Of the spread of what is aboard. */
  readonly spreads: () => readonly Source[];
}

const openMargin = (status: Limited["status"], margin: NonNullable<Verdict["margin"]>) =>
  status === "open" ? words("not known") : margin;

function massVerdict(state: LoadState, { context, worked, missing, spreads }: Task): readonly Finding[] {
  const { mass } = state;
  if (mass === undefined) return [];
  const say = (): Said => {
    const { figures } = worked;
    const { empty } = figures;
    const loaded_kg = figures.stations.reduce((sum, station) => sum + station.mass_kg, 0);
    return {
      title: TITLES[state.at],
      says: ofKg(mass.value, mass.limit),
      margin: openMargin(mass.status, marginKg(mass.left)),
      working: {
        lines: [
          { label: `Empty, ${empty?.on ?? "not dated"}`, value: kg(empty?.mass_kg ?? 0, "up") },
          { label: "People and bags", value: kg(loaded_kg, "up") },
          ...withoutLimit(figures.stations),
          { label: `Usable fuel ${WHERE[state.at]}`, value: kg(state.fuel_kg, "up") },
          { label: "Together, rounded up", value: kg(mass.value, "up") },
          { label: "Limit, rounded down", value: kg(mass.limit, "down") },
          ...chanceLine(mass.chance_1),
        ],
        formula: formulaOf(totalMass),
      },
      sources: [bookSource(context.book, "loading, limits"), ...spreads()],
      because: `${marginKg(mass.left).text} the limit`,
      wayOut: () => waysToLighten(-mass.left, figures, state.at !== "zero-fuel"),
      missing,
    };
  };
  return [ofLimit(`load:${state.at}`, mass, say)];
}

/** Why an envelope that is kept to the landing warns all the same. */
function envelopeWarns({ insideUntilDry, chance_1 }: EnvelopeFigures): readonly [string, ...string[]] {
  const reserve =
    "Inside to the landing, outside before the tanks are dry: the reserve cannot all be flown on";
  const doubt = unsure(chance_1 ?? 1);
  if (insideUntilDry === true) return [doubt];
  return chance_1 !== undefined && chance_1 * 100 < SURE_PERCENT ? [reserve, doubt] : [reserve];
}

function envelopeLines(envelope: EnvelopeFigures, { states }: LoadFigures): readonly WorkingLine[] {
  const { worst } = envelope;
  return [
    { label: "Envelope", value: envelope.name },
    ...states
      .filter(({ at }) => at !== "ramp")
      .map(({ at, arm_m, mass_kg, armRange_m, nearest }) => ({
        label: TITLES[at].replace(" mass", ""),
        value: `${nearest === undefined ? metres3(arm_m) : towards(arm_m, nearest.edge, FINE_m)} at ${kg(mass_kg, "up")}${
          armRange_m === undefined ? "" : `, ${allowed(armRange_m)}`
        }`,
      })),
    ...(worst === undefined ? [] : [{ label: "Nearest to an edge", value: worstPlace(worst, FINE_m) }]),
    ...chanceLine(envelope.chance_1),
  ];
}

function envelopeVerdict({ context, loading, worked, missing, spreads }: Task): readonly Finding[] {
  const { figures, aboard, burn } = worked;
  const { envelope } = figures;
  if (envelope === undefined) return [];
  const { worst, status } = envelope;
  const say = (): Said => ({
    title: "Centre of gravity",
    says:
      worst === undefined
        ? "Not known"
        : worst.left < 0
          ? `${worstPlace(worst)}, ${EDGES[worst.edge]}`
          : `${worstPlace(worst)}, nearest to the ${worst.edge} edge`,
    margin: worst === undefined ? words("not known") : openMargin(status, worstMargin(worst)),
    working: { lines: envelopeLines(envelope, figures), formula: formulaOf(centreOfGravity) },
    sources: [bookSource(context.book, `loading, envelope ${envelope.id}`), ...spreads()],
    because: worst === undefined ? "Outside the envelope" : `${worstMargin(worst).text} ${worstWhere(worst)}`,
    wayOut: () => (burn === undefined ? [] : waysIntoEnvelope(loading, envelope, figures, aboard, burn)),
    missing: [...missing, ...(envelope.inside === undefined ? ["the burn to the landing"] : [])],
  });
  return [ofLimit("load:envelope", { status }, say, () => envelopeWarns(envelope))];
}

/** The tighter of a station's own limit and its floor's; none where it has neither, and nothing is judged. */
function tighter({
  limit,
  floor,
}: StationFigures): { readonly limit: Limited; readonly onFloor: boolean } | undefined {
  if (floor !== undefined && (limit === undefined || floor.left < limit.left))
    return { limit: floor, onFloor: true };
  return limit === undefined ? undefined : { limit, onFloor: false };
}

/** What is aboard where the manual gives no limit: said, not judged. */
const withoutLimit = (stations: readonly StationFigures[]): readonly WorkingLine[] =>
  stations
    .filter(({ mass_kg, limit }) => mass_kg > 0 && limit === undefined)
    .map(({ name, mass_kg }) => ({ label: name, value: `${kg(mass_kg, "up")}, the manual gives no limit` }));

function stationVerdict(station: StationFigures, { context, spreads }: Task): readonly Finding[] {
  const held = tighter(station);
  if (held === undefined) return [];
  const { limit, onFloor } = held;
  const say = (): Said => ({
    title: station.name,
    says: `${ofKg(limit.value, limit.limit)}${onFloor ? ", its floor" : ""}`,
    margin: openMargin(limit.status, marginKg(limit.left)),
    working: {
      lines: [
        { label: "In it", value: kg(station.mass_kg, "up") },
        {
          label: "Limit",
          value: station.limit === undefined ? "none given by the manual" : kg(station.limit.limit, "down"),
        },
        ...(station.floor === undefined
          ? []
          : [{ label: "What its floor bears", value: kg(station.floor.limit, "down") }]),
        ...chanceLine(limit.chance_1),
      ],
      formula: formulaOf(onFloor ? floorLoading : totalMass),
    },
    sources: [bookSource(context.book, `loading, ${station.id}`), ...spreads()],
    because: `${marginKg(limit.left).text} ${onFloor ? "what its floor bears" : "its limit"}`,
    wayOut: () => [`Take ${kg(-limit.left, "up")} out of it`],
    missing: ["what is in it"],
  });
  return [ofLimit(`load:station:${station.id}`, { ...limit, status: station.status }, say)];
}

const groupVerdicts = ({ context, worked: { figures }, spreads }: Task): readonly Finding[] =>
  figures.groups
    .filter(({ limit }) => limit.value > 0 || limit.status !== "clear")
    .map(({ id, name, limit }) =>
      ofLimit(`load:group:${id}`, limit, () => ({
        title: name,
        says: `${ofKg(limit.value, limit.limit)}, together`,
        margin: openMargin(limit.status, marginKg(limit.left)),
        working: {
          lines: [
            { label: "In them together", value: kg(limit.value, "up") },
            { label: "Limit", value: kg(limit.limit, "down") },
            ...chanceLine(limit.chance_1),
          ],
          formula: formulaOf(totalMass),
        },
        sources: [bookSource(context.book, `loading, group ${id}`), ...spreads()],
        because: `${marginKg(limit.left).text} their limit together`,
        wayOut: () => [`Take ${kg(-limit.left, "up")} out of them`],
        missing: ["what is in them"],
      })),
    );

function minimumVerdict({ context, worked: { figures }, missing }: Task): readonly Finding[] {
  const { minimum } = figures;
  if (minimum === undefined) return [];
  return [
    ofLimit("load:minimum", minimum, () => ({
      title: "Least mass in flight",
      says: `${kg(minimum.value, "down")}, ${kg(minimum.limit, "up")} or more`,
      margin: openMargin(minimum.status, marginKg(minimum.left, "under")),
      working: {
        lines: [
          { label: "Lightest, at the landing", value: kg(minimum.value, "down") },
          { label: "Least that it may weigh", value: kg(minimum.limit, "up") },
        ],
        formula: formulaOf(totalMass),
      },
      sources: [bookSource(context.book, "loading, limits")],
      because: `${marginKg(minimum.left, "under").text} the least`,
      wayOut: () => [`Take ${kg(-minimum.left, "up")} of ballast or fuel more`],
      missing,
    })),
  ];
}

function sideVerdicts({ context, worked: { figures }, missing }: Task): readonly Finding[] {
  const { lateral, imbalance } = figures;
  const density = figures.fuel.density_kgPerM3;
  const inKgm = (value: number): string => `${Math.ceil(value - 1e-9)}\u00A0kg·m`;
  return [
    ...(lateral === undefined
      ? []
      : [
          ofLimit("load:lateral", lateral, () => ({
            title: "Balance from side to side",
            says: `${inKgm(lateral.value)} of ${Math.floor(lateral.limit)}\u00A0kg·m`,
            margin: openMargin(lateral.status, {
              value: Math.floor(lateral.left),
              unit: "kg·m",
              text:
                lateral.left < 0
                  ? `${inKgm(-lateral.left)} over`
                  : `${Math.floor(lateral.left + 1e-9)}\u00A0kg·m`,
            }),
            working: {
              lines: [{ label: "Greatest, start-up to landing", value: inKgm(lateral.value) }],
              formula: formulaOf(lateralMoment),
            },
            sources: [bookSource(context.book, "loading, limits")],
            because: `${inKgm(-lateral.left)} over the limit`,
            wayOut: () => ["Even out the fuel, or seat people on the lighter side"],
            missing,
          })),
        ]),
    ...(imbalance === undefined
      ? []
      : [
          ofLimit("load:imbalance", imbalance, () => ({
            title: "Fuel from side to side",
            says: ofKg(imbalance.value, imbalance.limit),
            margin: openMargin(imbalance.status, marginKg(imbalance.left)),
            working: {
              lines: [{ label: "Greatest, start-up to landing", value: kg(imbalance.value, "up") }],
              formula: formulaOf(fuelImbalance),
            },
            sources: [bookSource(context.book, "loading, limits")],
            because: `${marginKg(imbalance.left).text} the limit`,
            wayOut: () =>
              density === undefined
                ? []
                : [`Put ${litres(-imbalance.left / density, "up")} more into the lighter side`],
            missing,
          })),
        ]),
  ];
}

/** What the load of a flight is worth: what is not known first, then every limit. None without a plan. */
export function loadVerdicts(context: OfBook, plan: FlightPlan, worked: WorkedLoad): readonly Finding[] {
  const { figures } = worked;
  const unknown = unknownVerdicts(context, plan, figures);
  const { loading } = context.book;
  if (loading === undefined || plan.load === undefined) return unknown;
  const task: Task = {
    context,
    loading,
    worked,
    missing: [...figures.missing.map(({ what }) => what), ...figures.faults.map(({ says }) => says)],
    spreads: () => spreadSources(figures),
  };
  return [
    ...unknown,
    ...figures.states.flatMap((state) => massVerdict(state, task)),
    ...envelopeVerdict(task),
    ...minimumVerdict(task),
    ...figures.stations
      .filter((station) => station.mass_kg > 0 || station.status !== "clear")
      .flatMap((station) => stationVerdict(station, task)),
    ...groupVerdicts(task),
    ...sideVerdicts(task),
  ];
}
