import { FIELD_ROLES, type FieldFigures, placeText } from "@witnessmark/assess";
import { safeText } from "./figure-text.ts";
import type { FlightAsk } from "./flight-ask.ts";
import { leftOf, openLine, type SheetNumber } from "./number-line.ts";

function climbLine(
  { field, verdict }: FlightAsk,
  role: FieldFigures["role"],
  what: "Climb" | "Go-around",
): readonly SheetNumber[] {
  const figures = field(role);
  const judged = verdict(`runway:${role}:${what.toLowerCase()}`);
  if (figures === undefined || judged === undefined) return [];
  const { planned } = figures;
  if (judged.status === "open") return [openLine(`${what}, ${planned.code}`, judged.missing)];
  const { value } = (what === "Climb" ? figures.climb : figures.goAround) ?? {};
  if (value === undefined) return [];
  const { asked, gradient_1, rate_mPerS } = value;
  const where = what === "Climb" ? what : `${what}, ${planned.code}`;
  return [
    {
      what: `${where}, ${safeText(rate_mPerS, "ftPerMin", "down")}`,
      // asked for nothing, all of it is left
      needs: asked === undefined ? "" : safeText(asked.gradient_1, "ftPerNM", "up"),
      has: asked === undefined ? "" : safeText(gradient_1, "ftPerNM", "down"),
      left: leftOf(judged),
      status: judged.status,
    },
  ];
}

/**
 * The climb after the take-off and after a go-around, over the ground. Nothing where the assessment tells nothing of
 * it: the book has no such table, or what it waits for is told with the distance.
 */
export const climbLines = (ask: FlightAsk): readonly SheetNumber[] => [
  ...climbLine(ask, "departure", "Climb"),
  ...climbLine(ask, "destination", "Go-around"),
  ...climbLine(ask, "alternate", "Go-around"),
];

/** Where on the runway to stop if the speed is not there, and after how much of it the aircraft stands. */
export function stopLines({ field, verdict }: FlightAsk): readonly SheetNumber[] {
  const figures = field("departure");
  const judged = verdict("runway:departure:abort");
  if (figures === undefined || judged === undefined) return [];
  if (judged.status === "open") return [openLine(`Point to stop, ${figures.planned.code}`, judged.missing)];
  const { value } = figures.abort ?? {};
  if (value === undefined) return [];
  const speed = safeText(value.speed_mPerS, "kt", "up");
  return [
    {
      what: `Below ${speed} at ${safeText(value.at_m, "m", "down")}: stop`,
      needs: safeText(value.stop_m, "m", "up"),
      has: safeText(value.available_m, "m", "down"),
      left: leftOf(judged),
      status: judged.status,
    },
  ];
}

function speedsAt({ verdict }: FlightAsk, { role, planned, speeds }: FieldFigures): readonly SheetNumber[] {
  const judged = verdict(`runway:${role}:speeds`);
  if (judged === undefined) return [];
  const what = `Speeds ${role === "departure" ? "off" : "to"} ${placeText(planned)}`;
  if (judged.status === "open") return [openLine(what, judged.missing)];
  const { value } = speeds ?? {};
  if (value === undefined) return [];
  const { status } = judged;
  const { flaps, stall_mPerS, approach } = value;
  const stall = `stall ${safeText(stall_mPerS, "kt", "up")}`;
  const named = flaps === undefined ? what : `${what}, flaps ${flaps}`;
  // a speed is neither needed nor left: it stands with its name
  const told = (speeds: string): SheetNumber => ({
    what: `${named}: ${speeds}`,
    needs: "",
    has: "",
    left: "",
    status,
  });
  if (approach === undefined) return [told(stall)];
  const { steady_mPerS, forGust_mPerS, needed_m, available_m } = approach;
  const flown = told(`${stall}, approach ${safeText(steady_mPerS, "kt", "up")}`);
  if (forGust_mPerS <= 0) return [flown];
  const fast = safeText(steady_mPerS + forGust_mPerS, "kt", "up");
  const gust = `${placeText(planned)} at ${fast}, for the gust`;
  const landing =
    needed_m === undefined || available_m === undefined
      ? // more speed than the rule for the landing reaches
        { needs: "", has: "", left: "no distance" }
      : {
          needs: safeText(needed_m, "m", "up"),
          has: safeText(available_m, "m", "down"),
          left:
            needed_m > available_m
              ? `${safeText(needed_m - available_m, "m", "up")} short`
              : safeText(available_m - needed_m, "m", "down"),
        };
  return [flown, { what: gust, ...landing, status }];
}

/** Stall and approach at each field, and what the landing needs with the speed that the gust asks for. */
export const speedLines = (ask: FlightAsk): readonly SheetNumber[] =>
  FIELD_ROLES.flatMap((role) => {
    const figures = ask.field(role);
    return figures === undefined ? [] : speedsAt(ask, figures);
  });
