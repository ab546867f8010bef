import { type BookEdit, type BookField, type BookPath, type Plain, valueAt } from "@witnessmark/book";

type Kinds = Extract<BookField, { readonly is: "kinds" }>;
type Keyed = { readonly [key: string]: Plain };

/** What was typed under each kind, for coming back to it. */
export type KindsTyped = ReadonlyMap<string, Keyed>;

/** A value that is keys and values as such; nothing in it otherwise. */
export const keyed = (value: Plain | undefined): Keyed =>
  typeof value === "object" && value !== null && !Array.isArray(value) ? (value as Keyed) : {}; // keys and values, as just seen

/**
 * What a field is when another kind of it is chosen: what both kinds have stays, what the new one had comes back, and
 * what it has in common with one before that too.
 */
export function asKind(field: Kinds, value: Plain | undefined, typed: KindsTyped, kind: string): Plain {
  const chosen = field.kinds[kind];
  if (chosen === undefined) return value ?? null;
  const now = keyed(value);
  const has = new Set([...chosen.fields.map(({ key }) => key), ...Object.keys(keyed(chosen.blank))]);
  const shared = (from: Keyed): Keyed =>
    Object.fromEntries(Object.entries(from).filter(([key, each]) => has.has(key) && each !== ""));
  const before = Object.assign({}, ...[...typed.values()].map(shared)) as Keyed; // keys and values, put together
  return { ...keyed(chosen.blank), ...before, ...typed.get(kind), ...shared(now), [field.by]: kind };
}

/**
 * Whose temperature moves the limit of a reading goes with its kind: named where it moves, and not where it does not.
 *
 * @param limit where the limit stands, within its reading
 */
export function temperatureEdits(plain: Plain | null, limit: BookPath, kind: string): readonly BookEdit[] {
  const reading = limit.slice(0, -1);
  if (limit.at(-1) !== "limit" || reading.at(-1) !== "reading") return [];
  const path = [...reading, "temperatureOf"];
  const of = valueAt(plain ?? undefined, path);
  if (kind === "fixed") return of === undefined ? [] : [{ remove: path }];
  if (typeof of === "string" && of !== "") return [];
  if (kind === "cylinder") return [{ set: path, to: "cylinder" }];
  const quantity = valueAt(plain ?? undefined, [...reading, "quantity"]);
  const what = typeof quantity === "string" ? quantity.replace(/ (pressure|level|quantity|length)$/, "") : "";
  return [{ set: path, to: kind === "tyre" ? "tyre" : what }];
}
