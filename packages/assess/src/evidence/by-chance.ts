import type { Book, Check } from "@witnessmark/book";
import type { AircraftState, Walk } from "@witnessmark/ledger";
import { type BookIndex, indexOf } from "../book-index.ts";

/** Of so many looks that are a tick alone, one is asked to be shown. */
const ONE_OF = 40;
const DAY_MS = 86_400_000;
/** A look that was shown longer ago than this, or never, has waited long enough: it gains no more. */
const LONGEST_d = 180;
/** How much likelier than one of low hazard. */
const HAZARD: Readonly<Record<Check["hazard"]["severity"], number>> = { high: 4, medium: 2, low: 1 };

/** What of a walk the draw rests on. */
type BegunWalk = Pick<Walk, "id" | "kind" | "recordedAt" | "hlc">;

const NONE: ReadonlySet<string> = new Set();
const drawn = new WeakMap<AircraftState["photos"], Map<string, ReadonlySet<string>>>();

/**
 * The checks that this walk asks a photo of, though the book lets a look suffice: so that "always fine" is sometimes
 * shown. Drawn by hazard and by how long since a photo was last left, from the walk's own id and what was on the
 * record when it began: anyone can draw them again from the ledger.
 *
 * Weighted sampling without replacement: Efraimidis and Spirakis, Information Processing Letters 97 (2006) 181.
 */
export function askedByChance(book: Book, state: AircraftState, walk: BegunWalk | null): ReadonlySet<string> {
  if (walk === null || walk.kind !== "first-of-day") return NONE;
  const held = drawn.get(state.photos) ?? new Map<string, ReadonlySet<string>>();
  drawn.set(state.photos, held);
  const key = `${walk.id} ${book.sha256}`;
  const found = held.get(key) ?? draw(indexOf(book), state, walk);
  held.set(key, found);
  return found;
}

function draw(index: BookIndex, state: AircraftState, walk: BegunWalk): ReadonlySet<string> {
  const looks = index.ofKind[walk.kind].filter(
    ({ evidence, reading }) => evidence === "look" && reading === undefined,
  );
  const shown = lastShown(state, walk);
  const began_ms = Date.parse(walk.recordedAt);
  const keyed = looks.map((check) => {
    const at_ms = shown.get(check.id);
    const age_d = at_ms === undefined ? LONGEST_d : Math.max(0, (began_ms - at_ms) / DAY_MS);
    const weight = HAZARD[check.hazard.severity] * (1 + Math.min(age_d, LONGEST_d) / 30);
    return { id: check.id, key: -Math.log(uniform(`${walk.id}/${check.id}`)) / weight };
  });
  const asked = Math.floor(looks.length / ONE_OF);
  return new Set(
    keyed
      .toSorted((a, b) => a.key - b.key || (a.id < b.id ? -1 : 1))
      .slice(0, asked)
      .map(({ id }) => id),
  );
}

/** When a photo of each check was last left before the walk began, milliseconds since 1970 UTC. */
function lastShown(state: AircraftState, walk: BegunWalk): ReadonlyMap<string, number> {
  const shown = new Map<string, number>();
  for (const { subject, hlc, recordedAt } of state.photos)
    if (subject.kind === "check" && hlc < walk.hlc) shown.set(subject.id, Date.parse(recordedAt));
  return shown;
}

/** A number above 0 and below 1, the same for the same text: 32-bit FNV-1a (RFC 9923), its bits mixed as MurmurHash3 ends. */
function uniform(text: string): number {
  let hash = 0x811c9dc5;
  for (const byte of new TextEncoder().encode(text)) hash = Math.imul(hash ^ byte, 0x01000193);
  hash = Math.imul(hash ^ (hash >>> 16), 0x85ebca6b);
  hash = Math.imul(hash ^ (hash >>> 13), 0xc2b2ae35);
  return (((hash ^ (hash >>> 16)) >>> 0) + 0.5) / 2 ** 32;
}
