import { AnyEnvelope, bodyOf, KnownEnvelope } from "./bodies.ts";
import type { LedgerEvent } from "./event.ts";
import { isEventType, SCHEMA_VERSION } from "./known.ts";

/** One thing that keeps a value from being an event. */
export interface EventFault {
  /** `body.read.unit`; empty for the event as a whole. */
  readonly path: string;
  readonly expected: string;
  readonly found: string;
}

export type ParsedEvent =
  | { readonly ok: true; readonly event: LedgerEvent }
  | { readonly ok: false; readonly faults: readonly [EventFault, ...EventFault[]] };

/** Most bytes of a body as JSON in UTF-8. A book's text is in its event; everything else is small. */
export const BODY_MAX_B = 64_000;
export const BOOK_BODY_MAX_B = 1_500_000;

/**
 * Turns a JSON value from outside into an event. A type or schema version that this version does not know is carried
 * as it came: only its envelope, its size and its text are checked. The hash is not checked here (see `verifyLedger`).
 */
export function parseEvent(value: unknown): ParsedEvent {
  if (typeof value !== "object" || value === null || Array.isArray(value)) {
    return refuse([{ path: "", expected: "an event, as a JSON object", found: shown(value) }]);
  }
  const { type, schemaVersion } = value as { type?: unknown; schemaVersion?: unknown }; // read as unknown, judged below
  const known = typeof type === "string" && isEventType(type) && schemaVersion === SCHEMA_VERSION;
  const envelope = (known ? KnownEnvelope : AnyEnvelope).safeParse(value);
  const faults: EventFault[] = envelope.success ? [] : faultsOf(envelope.error.issues, value, []);

  const { body } = value as { body?: unknown };
  const tooLarge = sizeFault(type, body);
  if (tooLarge !== null) faults.push(tooLarge);
  else if (known) {
    const parsed = bodyOf(type).safeParse(body);
    if (!parsed.success) faults.push(...faultsOf(parsed.error.issues, body, ["body"]));
  } else faults.push(...unkeepable(value, ""));

  return faults.length === 0
    ? { ok: true, event: value as LedgerEvent } // every field was checked above, and none is changed by that
    : refuse(faults);
}

/** All faults as one line: `body.read.unit: expected a unit of the engine, found "bananas"; …` */
export const saysOfFaults = (faults: readonly EventFault[]): string =>
  faults
    .slice(0, 8)
    .map((fault) => `${fault.path || "event"}: expected ${fault.expected}, found ${fault.found}`)
    .join("; ") + (faults.length > 8 ? `; and ${faults.length - 8} more` : "");

function refuse(faults: readonly EventFault[]): ParsedEvent {
  const [first, ...others] = faults;
  const whole = { path: "", expected: "an event", found: "something else" };
  return { ok: false, faults: [first ?? whole, ...others] };
}

function sizeFault(type: unknown, body: unknown): EventFault | null {
  const most_B = type === "book.adopted" ? BOOK_BODY_MAX_B : BODY_MAX_B;
  const json = JSON.stringify(body);
  if (json === undefined) return { path: "body", expected: "a JSON value", found: shown(body) };
  // UTF-8 takes 1 to 3 bytes for each UTF-16 unit, so most bodies need no counting.
  const size_B = json.length * 3 <= most_B ? json.length : new TextEncoder().encode(json).length;
  return size_B <= most_B
    ? null
    : { path: "body", expected: `at most ${most_B} bytes`, found: `${size_B} bytes` };
}

/** Text anywhere in a carried event that no store could hold or no hash cover. */
function unkeepable(value: unknown, path: string, depth = 0): EventFault[] {
  if (typeof value === "string") {
    const keepable = value.isWellFormed() && !value.includes("\0");
    return keepable
      ? []
      : [{ path, expected: "text without the character 0 or half a character", found: shown(value) }];
  }
  if (typeof value !== "object" || value === null) return [];
  if (depth > 64) return [{ path, expected: "at most 64 levels", found: "more" }];
  return Object.entries(value).flatMap(([key, part]) => [
    ...unkeepable(key, path, depth + 1),
    ...unkeepable(part, path === "" ? key : `${path}.${key}`, depth + 1),
  ]);
}

type Issue = Exclude<ReturnType<typeof KnownEnvelope.safeParse>["error"], undefined>["issues"][number];

function faultsOf(issues: readonly Issue[], root: unknown, at: readonly string[]): EventFault[] {
  return issues.flatMap((issue) => {
    if (issue.code === "unrecognized_keys") {
      const place = valueAt(root, issue.path);
      return issue.keys.map((key) => ({
        path: pathText([...at, ...issue.path, key]),
        expected: "no such field",
        found: shown(valueAt(place, [key])),
      }));
    }
    return [
      {
        path: pathText([...at, ...issue.path]),
        expected: expectedBy(issue),
        found: shown(valueAt(root, issue.path)),
      },
    ];
  });
}

function expectedBy(issue: Issue): string {
  if (issue.code === "invalid_type" && (issue.expected === "object" || issue.expected === "record")) {
    return "an object";
  }
  if (issue.code === "invalid_type" && issue.expected === "array") return "a list";
  if (issue.code === "invalid_union") return "one of the kinds of this version";
  if (issue.code === "invalid_key") return `keys that are ${issue.issues[0]?.message ?? "of the right form"}`;
  return issue.message;
}

const pathText = (path: readonly PropertyKey[]): string =>
  path.reduce<string>((text, part) => {
    if (typeof part === "number") return `${text}[${part}]`;
    return text === "" ? String(part) : `${text}.${String(part)}`;
  }, "");

function valueAt(root: unknown, path: readonly PropertyKey[]): unknown {
  let value = root;
  for (const part of path) {
    if (typeof value !== "object" || value === null) return undefined;
    value = Object.getOwnPropertyDescriptor(value, part)?.value;
  }
  return value;
}

function shown(value: unknown): string {
  if (value === undefined) return "nothing";
  const json = JSON.stringify(value) ?? typeof value;
  return json.length > 80 ? `${json.slice(0, 77)}…` : json;
}
