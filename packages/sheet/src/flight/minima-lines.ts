import { FIELD_ROLES, type FieldFigures } from "@witnessmark/assess";
import { toSI } from "@witnessmark/engine";
import { safeText } from "./figure-text.ts";
import type { FlightAsk } from "./flight-ask.ts";
import { leftOf, openLine, type SheetNumber } from "./number-line.ts";

const PARTS = [
  { part: "ceiling", name: "Ceiling", unit: "ft" },
  { part: "visibility", name: "Visibility", unit: "m" },
] as const;

/** Cloud and visibility at one field against what its planned approach asks, or the pilot where he asks for more. */
function minimaAt({ plan, verdict }: FlightAsk, figures: FieldFigures): readonly SheetNumber[] {
  const { role, planned, approach, weather, faults } = figures;
  if (approach === undefined) return [];
  return PARTS.flatMap(({ part, name, unit }): readonly SheetNumber[] => {
    const judged = verdict(`weather:${role}:${part}`);
    if (judged === undefined) return [];
    const what = `${name}, ${planned.code}, ${approach.name}`;
    const asked = approach[part].value;
    const isMistyped = faults.some(({ where }) => where.kind === "own" && where.part === part);
    const own = isMistyped ? undefined : plan.own?.[part];
    const own_m = own === undefined ? 0 : toSI(own.value, own.unit);
    const needs = asked === undefined ? "" : safeText(Math.max(asked, own_m), unit, "up");
    if (judged.status === "open") return [openLine(what, judged.missing, needs)];
    const seen = part === "ceiling" ? weather.ceiling_m.value : weather.visibility_m.value;
    if (seen === undefined || asked === undefined) return [];
    const { status } = judged;
    return seen === "none"
      ? [{ what, needs, has: "", left: "no ceiling", status }]
      : [{ what, needs, has: safeText(seen, unit, "down"), left: leftOf(judged), status }];
  });
}

/**
 * The minima of the approaches that are planned. Nothing for a field that is used by sight: there the assessment asks
 * what the rules ask, whatever approach is written down.
 */
export const minimaLines = (ask: FlightAsk): readonly SheetNumber[] =>
  FIELD_ROLES.flatMap((role) => {
    const figures = ask.field(role);
    const isBySight = ask.plan.flightRules === "VFR" || figures?.field?.approach === false;
    return figures === undefined || isBySight ? [] : minimaAt(ask, figures);
  });
