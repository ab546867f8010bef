import type { BookFault, BookResult } from "./book.ts";
import { FaultList, inOrder, locatedFault, type Report, WHOLE_FILE } from "./faults/fault-list.ts";
import { pathText } from "./faults/path.ts";
import { shown } from "./faults/shown.ts";
import { resolveBook } from "./resolve.ts";
import { cabinHoldsItsAir } from "./rules/cabin.ts";
import { envelopesEnclose } from "./rules/envelopes.ts";
import { fieldsCanBeUsed } from "./rules/fields.ts";
import { fuelCanBeBurnt } from "./rules/fuel.ts";
import { gaugesMakeSense } from "./rules/gauges.ts";
import { geometryMakesSense } from "./rules/geometry.ts";
import { iceProtectionProtects } from "./rules/ice-protection.ts";
import { idsAreUnique } from "./rules/ids.ts";
import { jascCodesAreKnown } from "./rules/jasc.ts";
import { listsDoNotRepeat } from "./rules/lists.ts";
import { limitsCanBeKept } from "./rules/loading-limits.ts";
import { bothSidesAreChecked, mirrorsAreMirrorImages } from "./rules/mirrors.ts";
import { checksDoNotRepeat, orderCanBeKept } from "./rules/order.ts";
import { oxygenCanBeGiven } from "./rules/oxygen.ts";
import { performanceNeverFlatters } from "./rules/performance.ts";
import { pointsAreOnTheAircraft } from "./rules/places.ts";
import { readReadings } from "./rules/readings.ts";
import { recordCanBeKept } from "./rules/record.ts";
import { referencesHold } from "./rules/references.ts";
import type { Rule } from "./rules/rule.ts";
import { stancesCanBeTaken } from "./rules/stances.ts";
import { stationsAreInTheAircraft } from "./rules/stations.ts";
import { readTables } from "./rules/tables.ts";
import { tanksHoldFuel } from "./rules/tanks.ts";
import { hazardsAreKeptFrom, manualOrderCanBeWalked } from "./rules/walk-order.ts";
import { draftOf, partialDraftOf } from "./shape/draft.ts";
import { checkShape } from "./shape/shape-faults.ts";
import { textFault } from "./text-fault.ts";
import { given } from "./to-si/given.ts";
import { NodePositions } from "./yaml/node-positions.ts";
import { parseYaml } from "./yaml/parse-yaml.ts";
import { PlainReader } from "./yaml/plain-value.ts";

const RULES: readonly Rule[] = [
  idsAreUnique,
  referencesHold,
  listsDoNotRepeat,
  gaugesMakeSense,
  geometryMakesSense,
  stancesCanBeTaken,
  pointsAreOnTheAircraft,
  mirrorsAreMirrorImages,
  bothSidesAreChecked,
  checksDoNotRepeat,
  orderCanBeKept,
  manualOrderCanBeWalked,
  hazardsAreKeptFrom,
  jascCodesAreKnown,
  limitsCanBeKept,
  stationsAreInTheAircraft,
  tanksHoldFuel,
  envelopesEnclose,
  fuelCanBeBurnt,
  oxygenCanBeGiven,
  cabinHoldsItsAir,
  performanceNeverFlatters,
  iceProtectionProtects,
  fieldsCanBeUsed,
  recordCanBeKept,
];

const VERSION = 1;

/**
 * Reads a book from its YAML text. A text with faults gives all of them, in the order of its lines; only where its
 * YAML cannot be read, or its version is another, is there no telling what the rest means.
 *
 * @param fileName as the person knows it; it stands in every fault
 */
export async function readBook(text: string, fileName: string): Promise<BookResult> {
  const unreadable = textFault(text, fileName);
  if (unreadable !== undefined) return { ok: false, faults: [unreadable] };
  const body = text.startsWith(BYTE_ORDER_MARK) ? text.slice(1) : text;

  const { document, lines, faults: syntaxFaults } = parseYaml(body, fileName);
  if (isNotEmpty(syntaxFaults)) return failed(fileName, syntaxFaults);

  // The reader reports while it still learns what the aliases stand for: positions look that up when asked.
  const reader: PlainReader = new PlainReader((path, fault) => {
    if (fault.on !== "key") withoutValue.add(pathText(path));
    list.report(path, fault);
  });
  const withoutValue = new Set<string>();
  const list = new FaultList(fileName, new NodePositions(document.contents, reader.targets, lines));
  const plain = reader.read(document.contents);
  if (reader.stopped) return failed(fileName, list.inOrder());

  if (typeof plain !== "object" || plain === null || Array.isArray(plain)) {
    list.report([], {
      expected: "a book: keys and values, the first `witnessmark: 1`",
      found: shown(plain),
    });
    return failed(fileName, list.inOrder());
  }
  if (isOtherVersion(plain, list.report)) return failed(fileName, list.inOrder());

  const shape = checkShape(plain, (path, fault) => {
    if (!withoutValue.has(pathText(path))) list.report(path, fault); // else it is told already what is wrong there
  });
  const draft = shape.ok ? draftOf(shape.source) : partialDraftOf(plain, shape.faultyPaths);
  for (const rule of RULES) rule(draft, list.report);
  const readings = readReadings(draft, list.report);
  const tables = readTables(draft, list.report);

  const faults = list.inOrder();
  if (isNotEmpty(faults)) return { ok: false, faults, ...given("geometry", draft.geometry) };
  if (!shape.ok) throw new Error(`${fileName}: the schema refused the book without saying why`);
  return { ok: true, book: resolveBook(shape.source, readings, tables, await sha256(body)) };
}

const BYTE_ORDER_MARK = "\uFEFF";

/** Of a later version the other keys may mean anything: one fault, not a hundred. */
function isOtherVersion(plain: object, report: Report): boolean {
  const version: unknown = Reflect.get(plain, "witnessmark");
  if (typeof version !== "number" || version === VERSION) return false;
  report(["witnessmark"], {
    expected: `a book of version ${VERSION}`,
    found: String(version),
    remedy: version > VERSION ? "a newer Witnessmark reads it" : `write \`witnessmark: ${VERSION}\``,
  });
  return true;
}

const isNotEmpty = (faults: readonly BookFault[]): faults is readonly [BookFault, ...BookFault[]] =>
  faults.length > 0;

function failed(file: string, faults: readonly BookFault[]): BookResult {
  const sorted = inOrder(file, faults);
  if (isNotEmpty(sorted)) return { ok: false, faults: sorted };
  const unsaid = { expected: "a book", found: "something that could not be read" };
  return { ok: false, faults: [locatedFault(file, WHOLE_FILE, unsaid)] };
}

/** SHA-256 of the text in UTF-8, without its byte order mark, hexadecimal. */
async function sha256(text: string): Promise<string> {
  const digest = await crypto.subtle.digest("SHA-256", new TextEncoder().encode(text));
  return Array.from(new Uint8Array(digest), (byte) => byte.toString(16).padStart(2, "0")).join("");
}
