import type { AlternateNeededInput } from "../../rules/rule-pack.ts";
import { rulePacks } from "../../rules/rule-packs.ts";
import type { CannotTell, Ruling } from "../../rules/ruling.ts";
import { asSource } from "../words.ts";
import type { FieldGround } from "./field-figures.ts";
import { isSettled } from "./figure.ts";
import {
  type Draft,
  type FieldContext,
  type FieldPlan,
  NOT_KNOWN,
  openSays,
  type Told,
  told,
} from "./told.ts";

type Weather = Pick<AlternateNeededInput, "ceiling_m" | "visibility_m">;

/** The worst that is known of the weather, or only what is settled. */
const weatherOf = ({ weather }: FieldGround, settledOnly: boolean): Weather => ({
  ...(weather.ceiling_m.value === undefined || (settledOnly && !isSettled(weather.ceiling_m))
    ? {}
    : { ceiling_m: weather.ceiling_m.value }),
  ...(weather.visibility_m.value === undefined || (settledOnly && !isSettled(weather.visibility_m))
    ? {}
    : { visibility_m: weather.visibility_m.value }),
});

/**
 * A ruling by what is known: weather of which something is missing may make a rule's answer worse, never better.
 *
 * @param isWorse whether an answer is the one that bad weather brings
 */
function ruled<Answer>(
  figures: FieldGround,
  ask: (weather: Weather) => Ruling<Answer>,
  isWorse: (answer: Answer) => boolean,
): Ruling<Answer> {
  const atWorst = ask(weatherOf(figures, false));
  return atWorst.known && isWorse(atWorst) ? atWorst : ask(weatherOf(figures, true));
}

export type AlternateNeed = Ruling<{ readonly needed: boolean }>;

const given = <K extends string>(name: K, value: number | undefined): { readonly [N in K]?: number } =>
  // the key is the name that was asked for
  (value === undefined ? {} : { [name]: value }) as { [N in K]?: number };

const dayOf = (at_ms: number | undefined): { readonly on?: string } =>
  at_ms === undefined ? {} : { on: new Date(at_ms).toISOString().slice(0, 10) };

/** Whether the rules ask for an alternate; undefined without rules or a destination. */
export function alternateNeed(
  plan: FieldPlan,
  destination: FieldGround | undefined,
): AlternateNeed | undefined {
  const pack = rulePacks.get(plan.rulePack);
  if (pack === undefined || destination === undefined) return undefined;
  const { field, time } = destination;
  return ruled(
    destination,
    (weather) =>
      pack.alternateNeeded({
        flightRules: plan.flightRules,
        ...dayOf(time.value?.planned_ms),
        ...(field === undefined ? {} : { approach: field.approach }),
        ...given("approachMinimum_m", destination.approach?.ceiling.value),
        ...weather,
      }),
    ({ needed }) => needed,
  );
}

const missingOf = ({ missing }: CannotTell): readonly { readonly what: string }[] =>
  missing.map(({ what }) => ({ what }));

/** For a flight by instrument rules: whether it needs an alternate, and has one. */
export function alternateNeededVerdict(
  destination: FieldContext,
  need: AlternateNeed | undefined,
): readonly Told[] {
  const { plan, figures } = destination;
  if (plan.flightRules !== "IFR" || need === undefined) return [];
  const base = {
    id: "weather:alternate:needed",
    topic: "weather" as const,
    title: `Alternate for ${figures.planned.code}`,
    lines: need.steps.map((step) => ({ label: "Rule", value: step })),
    sources: need.citations.map(asSource),
  };
  if (!need.known) {
    const missing = missingOf(need);
    return [told(destination, { ...base, says: openSays(missing), margin: NOT_KNOWN }, "open", missing)];
  }
  const lacks = need.needed && plan.alternate === undefined;
  const named = plan.alternate === undefined ? "" : ` ${plan.alternate.code} is named.`;
  const draft: Draft = {
    ...base,
    says: `${need.text}${lacks ? " None is named." : named}`,
    because: [need.text],
    wayOut: ["Name an alternate", "Wait for better weather at the destination"],
  };
  return [told(destination, draft, lacks ? "stop" : "clear")];
}

/** Whether an alternate that is needed may be named: its weather against the rule's. */
export function alternateUsableVerdict(alternate: FieldContext): readonly Told[] {
  const { plan, figures } = alternate;
  const pack = rulePacks.get(plan.rulePack);
  if (plan.flightRules !== "IFR" || pack === undefined) return [];
  const { field, time, weather } = figures;
  const ruling = ruled(
    figures,
    (seen) =>
      pack.alternateUsable({
        ...dayOf(time.value?.planned_ms),
        // with no approach planned it is not known which kind: the one that asks for more
        ...(field === undefined
          ? {}
          : { approach: field.approach ? (figures.approach?.kind ?? "non-precision") : "none" }),
        ...given("approachMinimum_m", figures.approach?.ceiling.value),
        ...given("approachVisibility_m", figures.approach?.visibility.value),
        ...seen,
      }),
    ({ usable }) => !usable,
  );
  const base = {
    id: "weather:alternate:usable",
    topic: "weather" as const,
    title: `Alternate ${figures.planned.code} by the rules`,
    lines: ruling.steps.map((step) => ({ label: "Rule", value: step })),
    sources: ruling.citations.map(asSource),
  };
  if (!ruling.known) {
    const byWeather = [...weather.ceiling_m.missing, ...weather.visibility_m.missing];
    const ofRule = ruling.missing.filter(({ input }) => input !== "ceiling_m" && input !== "visibility_m");
    const missing = [...byWeather, ...ofRule.map(({ what }) => ({ what }))];
    const said = missing.length === 0 ? missingOf(ruling) : missing;
    return [told(alternate, { ...base, says: openSays(said), margin: NOT_KNOWN }, "open", said)];
  }
  const draft: Draft = {
    ...base,
    says: ruling.text,
    because: [ruling.text],
    wayOut: ["Name another alternate"],
  };
  return [told(alternate, draft, ruling.usable ? "clear" : "stop")];
}
