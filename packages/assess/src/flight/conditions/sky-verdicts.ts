import type { Status } from "@witnessmark/ledger";
import type { Source } from "../../assessment.ts";
import { rulePacks } from "../../rules/rule-packs.ts";
import { ownOf } from "./field-figures.ts";
import { type Figure, type Missing, onceMissing } from "./figure.ts";
import { feet, marginIn, metres } from "./texts.ts";
import {
  type Draft,
  type FieldContext,
  NOT_KNOWN,
  openSays,
  type Told,
  told,
  untilOf,
  withMissing,
} from "./told.ts";
import { isFlownBySight, type VisualLimit, visualLimits } from "./visual-limits.ts";

const ROUNDING_M = 1e-3;

interface Asked {
  /** The rule's, where it speaks by numbers. */
  readonly rule?: VisualLimit;
  readonly own?: number;
  /** Of the approach that is planned. */
  readonly approach?: number;
  /** With an alternate a flight may set out for a field that is below its minima. */
  readonly hasAlternate?: boolean;
  readonly missing: readonly Missing[];
  readonly sources: readonly Source[];
}

/** Whether the field is used by sight: under visual rules, and where there is no approach by instruments. */
const isBySight = ({ plan, figures }: FieldContext): boolean =>
  plan.flightRules === "VFR" || figures.field?.approach === false;

function askedOf(field: FieldContext, part: "ceiling" | "visibility"): Asked {
  const { plan, figures } = field;
  const own = ownOf(plan, part);
  const mine = {
    ...(own?.value === undefined ? {} : { own: own.value }),
    missing: own?.missing ?? [],
  };
  if (!isBySight(field)) return { ...mine, ...byInstruments(field, part, mine.missing) };
  const pack = rulePacks.get(plan.rulePack);
  if (pack === undefined) {
    const what = `rules of the name ${plan.rulePack}: there are ${[...rulePacks.keys()].join(", ")}`;
    return { ...mine, missing: [...mine.missing, { what, root: "rules" }], sources: [] };
  }
  const light = figures.daylight.value?.light;
  const { airspace } = figures;
  if (airspace !== undefined && !isFlownBySight(pack, airspace)) {
    const what = `what the rules ask by sight in class ${airspace}, at ${figures.planned.code}`;
    return { ...mine, missing: [...mine.missing, { what }], sources: [] };
  }
  const limits = visualLimits(pack, light === undefined ? undefined : light === "night", airspace);
  return { ...mine, rule: limits[part], sources: limits.sources };
}

/** A flight by instruments sets out where the destination, or an alternate, is forecast at its minima. */
const MINIMA: readonly Source[] = [
  {
    title: "NCO.OP.160: meteorological conditions",
    locator: "(b): at the destination or at least one alternate, from memory",
  },
  { title: "14 CFR 91.175: takeoff and landing under IFR", locator: "(c), (d), from memory" },
];

/** What the approach that is planned asks; without one, what the pilot asks for himself. */
function byInstruments(
  { plan, figures }: FieldContext,
  part: "ceiling" | "visibility",
  missing: readonly Missing[],
): Omit<Asked, "own"> {
  const { approach, planned, role } = figures;
  if (approach !== undefined) {
    const { value, missing: lacks } = approach[part];
    return {
      ...(value === undefined ? {} : { approach: value }),
      hasAlternate: role === "destination" && plan.alternate !== undefined,
      missing: [...missing, ...lacks],
      sources: MINIMA,
    };
  }
  const what =
    role === "departure"
      ? `the minimum of ${part} at ${planned.code}, or your own`
      : `the approach that is planned at ${planned.code}, or your own minimum of ${part}`;
  return { missing: plan.own?.[part] === undefined ? [...missing, { what }] : missing, sources: [] };
}

/** A height or distance against the rule and the pilot's own; on the edge is enough. */
function statusOf(value: number, { rule, own, approach, hasAlternate }: Asked): Status {
  const below = (limit_m: number | undefined): boolean =>
    limit_m !== undefined && value < limit_m - ROUNDING_M;
  if (below(own) || below(rule?.least_m)) return "stop";
  if (!below(approach)) return "clear";
  return hasAlternate === true ? "caution" : "stop";
}

function classMissing(
  value: number,
  { rule }: Asked,
  code: string,
  text: (value: number) => string,
): readonly Missing[] {
  if (rule === undefined || value >= rule.most_m - ROUNDING_M) return [];
  return [{ what: `the class of the airspace at ${code}: in some, ${text(rule.most_m)} are asked` }];
}

/** What is said of the limit that is nearest: the pilot's own, or the rule's. */
function limitText({ rule, own, approach }: Asked, text: (value: number) => string): string {
  if (own !== undefined && own >= Math.max(rule?.most_m ?? 0, approach ?? 0))
    return `, you asked for ${text(own)}`;
  if (approach !== undefined) return `, the approach asks for ${text(approach)}`;
  if (rule === undefined || rule.most_m === 0) return "";
  return `, the rule asks for ${text(rule.most_m)}`;
}

interface Element {
  readonly part: "ceiling" | "visibility";
  readonly title: string;
  readonly figure: Figure<number>;
  readonly unit: "ft" | "m";
  readonly text: (value: number, way: "up" | "down") => string;
  readonly name: string;
}

function verdict(field: FieldContext, element: Element): Told {
  const { figures } = field;
  const { part, figure, unit, text, name } = element;
  const { code } = figures.planned;
  const asked = askedOf(field, part);
  const up = (value: number): string => text(value, "up");
  const { value } = figure;
  const missing = onceMissing([
    ...figure.missing,
    ...asked.missing,
    ...(value === undefined ? [] : classMissing(value, asked, code, up)),
  ]);
  const status = withMissing(value === undefined ? undefined : statusOf(value, asked), missing);
  const id = `weather:${figures.role}:${part}`;
  const base = { topic: "weather" as const, title: `${element.title} at ${code}`, sources: asked.sources };
  if (value === undefined || status === "open") {
    const write = () => {
      const seen =
        value !== undefined && figure.missing.length === 0 ? `${name} ${text(value, "down")}. ` : "";
      return { ...base, says: `${seen}${openSays(missing)}`, margin: NOT_KNOWN };
    };
    return told(field, { id, write }, "open", missing);
  }
  const write = () => {
    const limit_m = Math.max(asked.own ?? 0, asked.rule?.most_m ?? 0, asked.approach ?? 0);
    const says = `${name} ${text(value, "down")}${limitText(asked, up)}`;
    return {
      ...base,
      says,
      margin: marginIn(value - limit_m, unit, "short"),
      lines: [
        { label: name, value: text(value, "down") },
        ...(asked.rule === undefined
          ? []
          : [
              {
                label: `Asked by the rule, ${figures.airspace === undefined ? "in any airspace" : `in class ${figures.airspace}`}`,
                value: up(asked.rule.most_m),
              },
            ]),
        ...(asked.approach === undefined
          ? []
          : [
              {
                label: `Asked by the approach, ${figures.approach?.name ?? ""}`,
                value: up(asked.approach),
              },
            ]),
        ...(asked.own === undefined ? [] : [{ label: "Asked by you", value: up(asked.own) }]),
      ],
      because: [
        status === "caution"
          ? `${says}. It may end at the alternate, ${field.plan.alternate?.code ?? ""}`
          : says,
      ],
      wayOut: ["Wait for better weather", "Another field"],
      until: untilOf(figure, code),
    };
  };
  return told(field, { id, write }, status);
}

function noCeiling(field: FieldContext): Told {
  const { figures } = field;
  const { planned, role, weather } = figures;
  const asked = askedOf(field, "ceiling");
  // without any ceiling, a minimum that is not known does not matter; one that was mistyped is told
  const missing = [...weather.ceiling_m.missing, ...(ownOf(field.plan, "ceiling")?.missing ?? [])];
  const draft: Draft = {
    id: `weather:${role}:ceiling`,
    topic: "weather",
    title: `Cloud at ${planned.code}`,
    says: missing.length > 0 ? openSays(missing) : "No ceiling is reported or forecast",
    ...(missing.length > 0 ? { margin: NOT_KNOWN } : {}),
    sources: asked.sources,
    until: untilOf(weather.ceiling_m, planned.code),
  };
  return told(field, draft, withMissing("clear", missing), missing);
}

export function skyVerdicts(field: FieldContext): readonly Told[] {
  const { weather } = field.figures;
  const { value } = weather.ceiling_m;
  const ceiling =
    value === "none"
      ? noCeiling(field)
      : verdict(field, {
          part: "ceiling",
          title: "Cloud",
          figure: { ...weather.ceiling_m, ...(value === undefined ? {} : { value }) } as Figure<number>, // not "none" here
          unit: "ft",
          text: feet,
          name: "Ceiling",
        });
  const visibility = verdict(field, {
    part: "visibility",
    title: "Visibility",
    figure: weather.visibility_m,
    unit: "m",
    text: metres,
    name: "Visibility",
  });
  return [ceiling, visibility];
}

const HANDLED_AS_ICE: readonly string[] = [
  "freezing precipitation",
  "possible freezing precipitation",
  "icing forecast",
];
/** What no aircraft of these is flown through. Common practice. */
const NEVER: readonly string[] = ["tornado or funnel cloud", "volcanic ash"];

/** What a report names that no ceiling or visibility shows. Freezing rain is with the ice. */
export function hazardVerdicts(field: FieldContext): readonly Told[] {
  const { figures } = field;
  const { role, planned, weather, observation, forecast } = figures;
  // whoever typed what he saw has seen a thunderstorm
  if (observation === undefined && forecast === undefined && figures.typed !== undefined) return [];
  const { hazards, blindTo } = weather;
  const named = (hazards.value ?? []).filter((hazard) => !HANDLED_AS_ICE.includes(hazard));
  const blind: readonly Missing[] = blindTo
    .filter((what) => what === "thunderstorm")
    .map((what) => ({ what: `${what}: the station at ${planned.code} cannot tell` }));
  const missing = [...hazards.missing, ...blind];
  const worst: Status = named.some((hazard) => NEVER.includes(hazard))
    ? "stop"
    : named.length > 0
      ? "caution"
      : "clear";
  const status = withMissing(hazards.value === undefined ? undefined : worst, missing);
  const list = `Reported or forecast: ${named.join(", ")}`;
  const unknown = status === "open" ? openSays(missing) : "";
  const says =
    named.length > 0
      ? [list, unknown].filter((part) => part !== "").join(". ")
      : unknown || "No thunderstorm, hail, squall or wind shear is named";
  const draft: Draft = {
    id: `weather:${role}:hazards`,
    topic: "weather",
    title: `Hazards at ${planned.code}`,
    says,
    ...(status === "open" ? { margin: NOT_KNOWN } : {}),
    sources: [{ title: "The reports of the field", locator: "weather and cloud groups, remarks" }],
    because: [says],
    wayOut: ["Wait until it is past", "Another field"],
    until: untilOf(hazards, planned.code),
  };
  return [told(field, draft, status, missing)];
}
