import type { FlightPlan } from "@witnessmark/ledger";
import { bookSource } from "../../book-index.ts";
import type { Context } from "../../context.ts";
import type { Finding } from "../../finding.ts";
import type { InputFault } from "../figures.ts";
import { finding, some } from "../finding-of.ts";
import { words } from "../words.ts";
import type { LoadFigures } from "./figures.ts";

/** The load asks nothing but the book: it is the same at any moment, whatever the walk has found. */
export type OfBook = Pick<Context, "book">;

interface Unknown {
  readonly id: string;
  readonly title: string;
  readonly says: string;
  readonly missing: readonly string[];
  readonly short?: string;
}

const open = (context: OfBook, { id, title, says, missing, short }: Unknown): Finding =>
  finding({
    id,
    topic: "load",
    title,
    says,
    status: "open",
    margin: words(short ?? "not said"),
    missing: some(missing, says),
    working: { lines: [] },
    evidence: [],
    sources: [bookSource(context.book, "loading")],
  });

/** The name of what a fault is about, as the book or the plan has it. */
function titleOf({ where }: InputFault, context: OfBook, plan: FlightPlan): string {
  const { loading } = context.book;
  switch (where.kind) {
    case "item": {
      const item = plan.load?.items.find(({ id }) => id === where.id);
      const station = loading?.stations.find(({ id }) => id === item?.station);
      return item?.what.trim() ? item.what : (station?.name ?? "Something aboard");
    }
    case "tank":
      return loading?.tanks.find(({ id }) => id === where.id)?.name ?? "Fuel";
    case "envelope":
      return "Envelope";
    case "fuel-temperature":
      return "Temperature of the fuel";
    case "totaliser":
      return "Fuel totaliser";
    case "route":
      return "The route";
    case "station":
    case "rules":
      return where.id;
    default:
      return where.kind satisfies never;
  }
}

/** The faults of the load itself; those of the route are the fuel's. */
const isOfLoad = ({ where }: InputFault): boolean => where.kind !== "route" && where.kind !== "rules";

/** What is wrong, place by place. */
function atEachPlace(faults: readonly InputFault[]): readonly (readonly [InputFault, readonly string[]])[] {
  const places = new Map<string, [InputFault, string[]]>();
  for (const fault of faults) {
    const key = `${fault.where.kind}:${fault.where.id}`;
    const known = places.get(key);
    if (known === undefined) places.set(key, [fault, [fault.says]]);
    else known[1].push(fault.says);
  }
  return [...places.values()];
}

/**
 * One open verdict for each part of the load that is not there, and for each thing said that cannot be. The route and
 * what the aircraft burns are the fuel's to ask for.
 */
export function unknownVerdicts(
  context: OfBook,
  plan: FlightPlan,
  { missing, faults }: LoadFigures,
): readonly Finding[] {
  const whats = (is: (part: string) => boolean): readonly string[] =>
    missing.filter(({ part }) => is(part)).map(({ what }) => what);
  const book = whats((part) => part === "book-loading" || part === "book-tanks");
  if (book.length > 0) {
    const says = `Not in the book: ${book.join("; ")}`;
    return [open(context, { id: "load:book", title: "Load", says, missing: book, short: "not in the book" })];
  }
  const aboard = whats((part) => part === "load");
  const crew = whats((part) => part === "crew");
  const tanks = whats((part) => part.startsWith("tank:"));
  return [
    ...(aboard.length === 0
      ? []
      : [
          open(context, {
            id: "load:aboard",
            title: "Load",
            says: "Nobody is said to be aboard",
            missing: aboard,
          }),
        ]),
    ...(crew.length === 0
      ? []
      : [open(context, { id: "load:crew", title: "Load", says: "Nobody is said to fly it", missing: crew })]),
    ...(tanks.length === 0 || plan.load === undefined
      ? []
      : [
          open(context, {
            id: "load:fuel",
            title: "Fuel aboard",
            says: `Not said: ${tanks.join(", ")}`,
            missing: tanks,
          }),
        ]),
    ...atEachPlace(faults.filter(isOfLoad)).map(([fault, says]) =>
      open(context, {
        id: `load:${fault.where.kind}:${fault.where.id}`,
        title: titleOf(fault, context, plan),
        says: says.join("; "),
        missing: says,
        short: "cannot be",
      }),
    ),
  ];
}
