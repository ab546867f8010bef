import { type Book, jascTitle } from "@witnessmark/book";
import type { AircraftState, Author, Discrepancy } from "@witnessmark/ledger";

/** Names in the book's words; ids where there is no book that has them. */
export interface Names {
  readonly book: Book | undefined;
  readonly state: AircraftState;
}

export const personWords = ({ name, role }: Author): string => `${name}, ${role.replace("-", " ")}`;

export function checkName(id: string, { book }: Names): string {
  const check = book?.checksById.get(id);
  if (check === undefined) return id;
  const point = book?.points.get(check.point)?.name;
  return point === undefined ? check.title : `${point}: ${check.title}`;
}

/** `groundGear.removed` as `ground gear removed`. */
export const eventWords = (type: string): string =>
  type
    .replaceAll(".", " ")
    .replaceAll(/([a-z])([A-Z])/g, (_, before, after) => `${before} ${after.toLowerCase()}`);

export function itemName(id: string, { book, state }: Names): string {
  return book?.timedItems.find((item) => item.id === id)?.name ?? state.timedAdded.get(id)?.item.name ?? id;
}

export function counterName(id: string, { book }: Names): string {
  return book?.counters.find((counter) => counter.id === id)?.name ?? id;
}

/** `1,284.6 h`; a plain number for landings and starts. */
export function countWords(id: string, value: number, { book }: Names): string {
  const figure = value.toLocaleString("en", { maximumFractionDigits: 1 });
  return book?.counters.find((counter) => counter.id === id)?.unit === "h" ? `${figure} h` : figure;
}

/** What a verdict was about, from its id; the assessment it stands in was not kept, only its hash. */
export function verdictName(id: string, names: Names): string {
  const [kind = "", ...rest] = id.split(":");
  const subject = rest.join(":");
  switch (kind) {
    case "check":
      return checkName(subject, names);
    case "timed":
      return itemName(subject, names);
    case "gear":
      return names.book?.groundGear.find((item) => item.id === subject)?.name ?? subject;
    case "discrepancy":
    case "repeat":
      return names.state.discrepancies.get(subject)?.words ?? subject;
    default:
      return id.replaceAll(":", ", ").replaceAll("-", " ");
  }
}

export function whereWords(discrepancy: Discrepancy, names: Names): string {
  const { point, check, jasc, place } = discrepancy;
  const system = jasc === undefined ? undefined : [jasc, jascTitle(jasc)].filter(Boolean).join(" ");
  const said = [
    check === undefined
      ? point === undefined
        ? undefined
        : names.book?.points.get(point)?.name
      : checkName(check, names),
    place === undefined
      ? undefined
      : `x ${place.x_m.toFixed(2)} m, y ${place.y_m.toFixed(2)} m, z ${place.z_m.toFixed(2)} m`,
    system === undefined ? undefined : `JASC ${system}`,
  ];
  return said.filter((part) => part !== undefined).join("; ");
}
