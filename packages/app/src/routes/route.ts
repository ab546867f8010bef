/** Every place in the app, as an address after the hash: it works from a file server, offline, and with Back. */
export type Route =
  | { readonly at: "apron" }
  | { readonly at: "archived" }
  | { readonly at: "add" }
  | { readonly at: "begin" }
  | { readonly at: "chart" }
  | { readonly at: "settings" }
  | { readonly at: "calculators"; readonly quantity?: string }
  | { readonly at: "rules"; readonly question?: string }
  | { readonly at: "walk"; readonly registration: string; readonly step?: StepAddress }
  | { readonly at: "start"; readonly registration: string }
  | { readonly at: "left"; readonly registration: string }
  | { readonly at: "order"; readonly registration: string }
  | { readonly at: "gear"; readonly registration: string }
  | { readonly at: "happened"; readonly registration: string }
  | { readonly at: "after"; readonly registration: string }
  | { readonly at: "load"; readonly registration: string }
  | { readonly at: "conditions"; readonly registration: string }
  | { readonly at: "decide"; readonly registration: string }
  | { readonly at: "record"; readonly registration: string; readonly part?: RecordPart }
  | { readonly at: "paper"; readonly registration: string }
  | { readonly at: "typed-in"; readonly registration: string }
  | { readonly at: "learn"; readonly registration: string }
  | { readonly at: "study"; readonly registration: string }
  | { readonly at: "import"; readonly registration: string }
  | { readonly at: "discrepancy"; readonly registration: string; readonly discrepancy: string }
  | { readonly at: "timed"; readonly registration: string; readonly item: string }
  | { readonly at: "trend"; readonly registration: string; readonly trend: string }
  | { readonly at: "point"; readonly registration: string; readonly point: string }
  | { readonly at: "decision"; readonly registration: string; readonly decision: string }
  | { readonly at: "aircraft"; readonly registration: string; readonly check?: string }
  | { readonly at: "book"; readonly registration: string; readonly page?: string; readonly item?: string }
  | { readonly at: "unknown"; readonly address: string };

export const RECORD_PARTS = ["timed", "trends", "past"] as const;
/** What of the record is come to; its discrepancies when none is named. */
export type RecordPart = (typeof RECORD_PARTS)[number];

export interface StepAddress {
  readonly kind: "check" | "ground-gear";
  readonly id: string;
}

const SINGLE = ["archived", "add", "begin", "chart", "settings"] as const;
const OF_AIRCRAFT = [
  "start",
  "left",
  "order",
  "gear",
  "happened",
  "after",
  "load",
  "conditions",
  "decide",
  "paper",
  "typed-in",
  "learn",
  "study",
  "import",
] as const;

/** `#/ZZ-SKR/walk/check/oil-level` as a route; what does not read is `unknown`, never a wrong screen. */
export function readRoute(hash: string): Route {
  const parts = hash
    .replace(/^#?\/?/, "")
    .split("/")
    .filter(Boolean)
    .map(decode);
  const [first, second, third, fourth] = parts;
  if (first === undefined) return { at: "apron" };
  const single = SINGLE.find((name) => name === first);
  if (single !== undefined && second === undefined) return { at: single };
  if (first === "calculators") {
    return { at: "calculators", ...(second === undefined ? {} : { quantity: second }) };
  }
  if (first === "rules") return { at: "rules", ...(second === undefined ? {} : { question: second }) };
  return readOfAircraft(first, second, third, fourth) ?? { at: "unknown", address: parts.join("/") };
}

/** What stands under the registration of an aircraft. */
function readOfAircraft(
  registration: string,
  second: string | undefined,
  third: string | undefined,
  fourth: string | undefined,
): Route | undefined {
  if (second === undefined || second === "walk") {
    if ((third === "check" || third === "ground-gear") && fourth !== undefined) {
      return { at: "walk", registration, step: { kind: third, id: fourth } };
    }
    return { at: "walk", registration };
  }
  const sheet = OF_AIRCRAFT.find((name) => name === second);
  if (sheet !== undefined) return { at: sheet, registration };
  if (second === "aircraft") {
    return { at: "aircraft", registration, ...(third === undefined ? {} : { check: third }) };
  }
  if (second === "book") return readBookPage(registration, third, fourth);
  if (second === "record") {
    const part = RECORD_PARTS.find((name) => name === third);
    if (third === undefined) return { at: "record", registration };
    if (part !== undefined) return { at: "record", registration, part };
  }
  return third === undefined ? undefined : readOneOf(registration, second, third);
}

/** What stands under a registration and the name of one thing. */
function readOneOf(registration: string, second: string, third: string): Route | undefined {
  switch (second) {
    case "discrepancy":
      return { at: "discrepancy", registration, discrepancy: third };
    case "timed":
      return { at: "timed", registration, item: third };
    case "trend":
      return { at: "trend", registration, trend: third };
    case "point":
      return { at: "point", registration, point: third };
    case "decision":
      return { at: "decision", registration, decision: third };
    default:
      return undefined;
  }
}

const readBookPage = (
  registration: string,
  page: string | undefined,
  item: string | undefined,
): Extract<Route, { readonly at: "book" }> => ({
  at: "book",
  registration,
  ...(page === undefined ? {} : { page }),
  ...(item === undefined ? {} : { item }),
});

/** The address of a route, for the `href` of a real link. */
export function href(route: Exclude<Route, { at: "unknown" }>): string {
  switch (route.at) {
    case "apron":
      return "#/";
    case "archived":
    case "add":
    case "begin":
    case "chart":
    case "settings":
      return `#/${route.at}`;
    case "calculators":
      return route.quantity === undefined ? "#/calculators" : address("calculators", route.quantity);
    case "rules":
      return route.question === undefined ? "#/rules" : address("rules", route.question);
    case "walk":
      return route.step === undefined
        ? address(route.registration, "walk")
        : address(route.registration, "walk", route.step.kind, route.step.id);
    case "start":
    case "left":
    case "order":
    case "gear":
    case "happened":
    case "after":
    case "load":
    case "conditions":
    case "decide":
    case "paper":
    case "typed-in":
    case "learn":
    case "study":
    case "import":
      return address(route.registration, route.at);
    case "record":
      return route.part === undefined
        ? address(route.registration, "record")
        : address(route.registration, "record", route.part);
    case "discrepancy":
      return address(route.registration, "discrepancy", route.discrepancy);
    case "timed":
      return address(route.registration, "timed", route.item);
    case "trend":
      return address(route.registration, "trend", route.trend);
    case "point":
      return address(route.registration, "point", route.point);
    case "decision":
      return address(route.registration, "decision", route.decision);
    case "book":
      return address(
        route.registration,
        "book",
        ...(route.page === undefined ? [] : [route.page, ...(route.item === undefined ? [] : [route.item])]),
      );
    case "aircraft":
      return route.check === undefined
        ? address(route.registration, "aircraft")
        : address(route.registration, "aircraft", route.check);
    default:
      return route satisfies never;
  }
}

const address = (...parts: readonly string[]) => `#/${parts.map(encodeURIComponent).join("/")}`;

/** A part that was typed by hand may not decode; it is then taken as it stands. */
function decode(part: string): string {
  try {
    return decodeURIComponent(part);
  } catch (error) {
    if (error instanceof URIError) return part;
    throw error;
  }
}
