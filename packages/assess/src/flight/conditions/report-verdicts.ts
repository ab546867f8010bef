import type { WorkingLine } from "../../assessment.ts";
import { durationText } from "../../words/duration-text.ts";
import { momentText } from "../../words/local-time.ts";
import type { Missing, Root } from "./figure.ts";
import type { ReportFigures } from "./report-figures.ts";
import { METAR_COUNTS_MS, TYPED_COUNTS_MS } from "./report-figures.ts";
import { type Draft, type FieldContext, NOT_KNOWN, type Told, told, type Warned } from "./told.ts";

const OWN_RULE = {
  title: "Witnessmark's own rule",
  locator: `a report counts for ${METAR_COUNTS_MS / 60_000} min, what was typed for ${TYPED_COUNTS_MS / 60_000} min, a forecast to its end`,
};

const age = (age_ms: number | undefined): string =>
  age_ms === undefined ? "" : `, ${durationText(Math.max(0, age_ms) / 1000)} ago`;

type AnyReport = ReportFigures<unknown>;

const problemLines = (report: AnyReport | undefined): readonly WorkingLine[] =>
  (report?.problems ?? []).map(({ group, says }) => ({
    label: group === "" ? "Not there" : group,
    value: says,
  }));

const firstProblem = ({ problems }: AnyReport): string => {
  const worst = problems.find(({ affects }) => affects.length > 0) ?? problems[0];
  if (worst === undefined) return "it says nothing of use";
  return worst.group === "" ? worst.says : `${worst.group}: ${worst.says}`;
};

const doubts = ({ open }: AnyReport): readonly string[] =>
  open.filter((aspect) => aspect !== "remarks" && aspect !== "runway");

const title = ({ figures }: FieldContext, kind: "Report" | "Forecast"): string =>
  figures.role === "alternate" && kind === "Report"
    ? `Alternate ${figures.planned.code}`
    : `${kind} of ${figures.planned.code}`;

const NEWER = "A newer one is needed before you go";

/** The report of a field: how old, until when it counts, and what of it was not understood. */
function reportVerdict(field: FieldContext, waits: readonly Missing[]): readonly Told<Warned>[] {
  const { context, figures } = field;
  const { role, planned, observation, typed } = figures;
  const moment = (at_ms: number): string => momentText(at_ms, context.clock);
  const id = `weather:${role}:report`;
  const base = () => ({
    topic: "weather" as const,
    title: title(field, "Report"),
    lines: [
      ...(observation === undefined ? [] : [{ label: "Report", value: observation.text }]),
      ...problemLines(observation),
    ],
    sources: [OWN_RULE],
  });
  const open = (says: string, text: string, what: string): readonly Told<Warned>[] => [
    told(field, { ...base(), id, says, margin: { ...NOT_KNOWN, text } }, "open", [{ what }]),
  ];
  if (observation === undefined) {
    if (waits.length === 0) return [];
    if (typed?.tooOld)
      return open(
        `Typed ${moment(typed.origin.at_ms)}. ${NEWER}`,
        "too old",
        `a newer report of ${planned.code}`,
      );
    return open(`No report of ${planned.code}`, "no report", waits.map(({ what }) => what).join("; "));
  }
  const { at_ms, age_ms, countsUntil_ms, tooOld } = observation;
  if (at_ms === undefined || countsUntil_ms === undefined)
    return open(
      `Cannot be used. ${firstProblem(observation)}`,
      "not usable",
      `a report of ${planned.code} that can be used`,
    );
  // too old, and nothing waits for it: everything is typed or forecast
  if (tooOld && waits.length === 0) return [];
  if (tooOld)
    return open(`Report of ${moment(at_ms)}. ${NEWER}`, "too old", `a newer report of ${planned.code}`);
  if (waits.length > 0)
    return open(
      waits.map(({ what }) => `Not known: ${what}`).join(". "),
      "too early",
      `a newer report of ${planned.code}`,
    );
  const unclear = doubts(observation);
  const write = () => {
    const says = `Observed ${moment(at_ms)}${age(age_ms)}. Counts until ${moment(countsUntil_ms)}`;
    return {
      ...base(),
      says: unclear.length === 0 ? says : `${says}. Not understood: ${firstProblem(observation)}`,
      because: [`Of this report ${unclear.join(", ")} cannot be relied on. ${firstProblem(observation)}`],
      until: { at_ms: countsUntil_ms, because: `the report of ${planned.code} is then too old` },
    };
  };
  return [told(field, { id, write }, unclear.length === 0 ? "clear" : "caution")];
}

/** The forecast of a field: until when it counts, and what of it was not understood. */
function forecastVerdict(field: FieldContext, waits: readonly Missing[]): readonly Told<Warned>[] {
  const { context, figures } = field;
  const { role, planned, forecast } = figures;
  const moment = (at_ms: number): string => momentText(at_ms, context.clock);
  const id = `weather:${role}:forecast`;
  const base = () => ({
    topic: "weather" as const,
    title: title(field, "Forecast"),
    lines: [
      ...(forecast === undefined ? [] : [{ label: "Forecast", value: forecast.text }]),
      ...problemLines(forecast),
    ],
    sources: [OWN_RULE],
  });
  const open = (says: string, text: string): readonly Told<Warned>[] => [
    told(field, { ...base(), id, says, margin: { ...NOT_KNOWN, text } }, "open", [
      { what: `a forecast for ${planned.code} that covers the time` },
    ]),
  ];
  if (forecast === undefined)
    return waits.length === 0 ? [] : open("No forecast, and no report that reaches so far", "no forecast");
  const { placed, at_ms, countsUntil_ms, tooOld } = forecast;
  if (placed === undefined || at_ms === undefined || countsUntil_ms === undefined)
    return open(`Cannot be used. ${firstProblem(forecast)}`, "not usable");
  if (tooOld) return open(`It ended ${moment(countsUntil_ms)}. ${NEWER}`, "ended");
  if (waits.length > 0)
    return open(`It ends ${moment(countsUntil_ms)} and does not cover the time`, "does not reach");
  const unclear = doubts(forecast);
  const status: Warned = unclear.length === 0 ? "clear" : "caution";
  const write = () => {
    const says = `Issued ${moment(at_ms)}${age(forecast.age_ms)}. Counts until ${moment(countsUntil_ms)}`;
    return {
      ...base(),
      says: unclear.length === 0 ? says : `${says}. Not understood: ${firstProblem(forecast)}`,
      because: [`Of this forecast ${unclear.join(", ")} cannot be relied on. ${firstProblem(forecast)}`],
      until: { at_ms: countsUntil_ms, because: `the forecast of ${planned.code} has then ended` },
    };
  };
  return [told(field, { id, write }, status)];
}

const OTHERS: readonly {
  readonly root: Root;
  readonly id: string;
  readonly title: string;
  readonly text: string;
}[] = [
  { root: "time", id: "time", title: "Time at", text: "no time" },
  { root: "field", id: "field", title: "Field", text: "not in the book" },
  { root: "runway", id: "runway", title: "Runway at", text: "no such runway" },
  { root: "surface", id: "surface", title: "Surface at", text: "not said" },
  { root: "rules", id: "rules", title: "Rules at", text: "not known" },
  { root: "performance", id: "performance", title: "Performance at", text: "not in the book" },
];

/**
 * One verdict for each part of the plan or the book that others wait for, and one for each report. That there is no
 * route is told with the fuel.
 *
 * @param waiting what the verdicts of this field wait for
 */
export function partVerdicts(field: FieldContext, waiting: readonly Missing[]): readonly Told<Warned>[] {
  const { figures } = field;
  const { role, planned } = figures;
  const of = (root: Root): readonly Missing[] => waiting.filter((missing) => missing.root === root);
  const others = OTHERS.flatMap(({ root, id, title: name, text }) => {
    const missing = of(root);
    const [first] = missing;
    if (first === undefined) return [];
    const where = figures.faults.find(({ where: { kind } }) => kind === root);
    const isOfWeather = root === "time" || root === "rules";
    const isChosen = root !== "runway" || planned.runway !== undefined;
    const draft: Draft = {
      id: `${isOfWeather ? "weather" : "runway"}:${role}:${id}`,
      topic: isOfWeather ? "weather" : "runway",
      title: `${name} ${planned.code}`,
      says: where?.says ?? `Not known: ${first.what}`,
      margin: { ...NOT_KNOWN, text: isChosen ? text : "not chosen" },
      sources: [],
    };
    // told by itself: it waits for nothing
    return [
      told(
        field,
        draft,
        "open",
        missing.map(({ what }) => ({ what })),
      ),
    ];
  });
  return [
    ...others,
    ...reportVerdict(field, of("report")),
    ...forecastVerdict(field, of("forecast")),
    ...typedFaults(field),
  ];
}

/** What was typed at a time that cannot be is not used, and is told. */
function typedFaults(field: FieldContext): readonly Told<Warned>[] {
  const { role, planned, faults } = field.figures;
  const mine = faults.filter(({ where: { kind } }) => kind === "typed");
  const [first] = mine;
  if (first === undefined) return [];
  const draft: Draft = {
    id: `weather:${role}:typed`,
    topic: "weather",
    title: `What was typed of ${planned.code}`,
    says: first.says,
    margin: { ...NOT_KNOWN, text: "not usable" },
    sources: [],
  };
  return [
    told(
      field,
      draft,
      "open",
      mine.map(({ says }) => ({ what: says })),
    ),
  ];
}
