import type { Book, Equipment, KindOfOperation, MelItem } from "@witnessmark/book";
import { positionLightNights } from "@witnessmark/engine";
import type { AircraftState, Discrepancy, LocalDate, PlannedFlight } from "@witnessmark/ledger";
import { type FlightNature, isOfAnyKind, KIND_WORDS, natureOfFlight } from "../flight/kinds-of-flight.ts";
import {
  type EquipmentOf,
  FLIGHT_KINDS,
  type ReliefInput,
  type ReliefItem,
  type ReliefRuling,
  type ReliefSaid,
} from "../rules/relief.ts";
import { repairUntil } from "../rules/repair-interval.ts";
import type { RulePack } from "../rules/rule-pack.ts";
import { rulePacks } from "../rules/rule-packs.ts";
import { LOCATOR_PLACARD, removedLocatorUntil } from "../rules/us-part-91/locator-removed.ts";
import { usPart91 } from "../rules/us-part-91/pack.ts";
import { localDayOf } from "../timed/local-day.ts";
import { listed } from "../words/count-words.ts";
import { offsetOf_min } from "../words/local-time.ts";
import { equipmentOf } from "./equipment-of.ts";
import { nextRequiredInspection } from "./required-inspection.ts";

/** Which relief there is for a discrepancy, on a flight, with what was said so far. */
export interface ReliefAnswer {
  readonly pack: RulePack;
  readonly equipment: Equipment;
  readonly ruling: ReliefRuling;
  /** What is to be asked next of the person; undefined when nothing of theirs is open. */
  readonly ask: keyof ReliefSaid | undefined;
  /** Kinds of flight that the relief can never cover. */
  readonly notFor: readonly KindOfOperation[];
  /** The last day on which it holds; undefined where the rules set none. */
  readonly until: LocalDate | undefined;
  readonly listItem: MelItem | undefined;
  /** What bars it whatever is said: the list's own conditions, on this flight or by a second fault; its days are over. */
  readonly broken: readonly string[];
  /** What the placard says. */
  readonly placard: string;
}

/** The flight's own pack, else the first: a relief is always sought under some authority's rules. */
export const packOf = (flight: PlannedFlight | null): RulePack =>
  rulePacks.get(flight?.plan?.rulePack ?? usPart91.id) ?? usPart91;

/** For relief the night begins at sunset: that is when lights are asked for, and no rule's night is longer. */
export const natureForRelief = (book: Book, flight: PlannedFlight | null): FlightNature =>
  natureOfFlight(book, flight, positionLightNights);

/** Whether the book says of its equipment what a flight needs; where it says nothing, nothing is known. */
const tellsNeeds = ({ equipment }: Book): boolean =>
  equipment.some(({ neededFor, ruleItem, typeEquipment }) => neededFor || ruleItem || typeEquipment);

/** The rule under which a locator may be away for repair. */
const LOCATOR_AWAY = "91.207(f)(10)";
const CERTIFIED_AFTER = "1996-03-11";

function equipmentGiven(book: Book): EquipmentOf {
  const { aircraft } = book;
  const { certification } = aircraft;
  return {
    altitudeEngine: certification?.altitudeEngine ?? false,
    retractable: aircraft.retractable,
    ...(certification?.certifiedOn === undefined
      ? {}
      : { certifiedAfter1996: certification.certifiedOn > CERTIFIED_AFTER }),
  };
}

/** The kinds of flight on which a rule of the pack asks for it. */
const kindsOfRule = (book: Book, pack: RulePack, ruleItem: string | undefined): readonly KindOfOperation[] =>
  ruleItem === undefined
    ? []
    : FLIGHT_KINDS.filter((kind) => pack.requiredEquipment(kind, equipmentGiven(book)).includes(ruleItem));

const among = (kinds: readonly KindOfOperation[] | undefined, nature: FlightNature): boolean | undefined =>
  kinds === undefined || kinds.length === 0 ? false : isOfAnyKind(kinds, nature);

interface Request {
  readonly book: Book;
  readonly discrepancy: Discrepancy;
  readonly flight: PlannedFlight | null;
  readonly said: ReliefSaid;
  readonly pack?: RulePack;
  /** The local day on which it is sought: a relief whose days are over is none. */
  readonly today?: LocalDate;
  /** What else is on the record: other faults of the same equipment, the inspection that comes next. */
  readonly state?: AircraftState;
}

/** How many discrepancies of one piece of equipment stand open, this one among them. */
function openOf(equipment: Equipment, { book, discrepancy, state }: Request): number {
  const others = state === undefined ? [] : [...state.discrepancies.values()];
  return (
    1 +
    others.filter(
      (other) => other.isOpen && other.id !== discrepancy.id && equipmentOf(book, other)?.id === equipment.id,
    ).length
  );
}

/** Undefined while nobody can tell which piece of equipment it is: then there is nothing to rule on. */
export function reliefOf(request: Request): ReliefAnswer | undefined {
  const { book, discrepancy, flight, said } = request;
  const equipment = equipmentOf(book, discrepancy);
  if (equipment === undefined) return undefined;
  const pack = request.pack ?? packOf(flight);
  const nature = natureForRelief(book, flight);
  const list = book.relief?.minimumEquipmentList;
  const listItem = list?.items.find((item) => item.equipment === equipment.id);
  const byRule = kindsOfRule(book, pack, equipment.ruleItem);
  const known = tellsNeeds(book);
  const working = listItem === undefined ? 0 : listItem.installed - openOf(equipment, request);
  const item: ReliefItem = {
    inOwnList: listItem !== undefined,
    typeEquipment: known ? equipment.typeEquipment === true : undefined,
    listed: known ? among(equipment.neededFor, nature) : undefined,
    ruleRequires: known ? among(byRule, nature) : undefined,
    directive: known ? equipment.directive !== undefined : undefined,
    endangers: said.noHazardBy === undefined ? undefined : said.noHazardBy === "nobody",
    restServes: listItem !== undefined && listItem.needed > 0 && working >= listItem.needed,
    locator: equipment.ruleItem === "elt",
  };
  const ruling = pack.relief({
    aircraft: aircraftGiven(book),
    item,
    said: { ...said, provisosMet: provisosMet(said, listItem, nature, working) },
  } satisfies ReliefInput);
  const until = untilOf(request, ruling, listItem);
  return {
    pack,
    equipment,
    ruling,
    ask: ruling.steps.find(({ holds, asks }) => holds === "unknown" && asks !== undefined)?.asks,
    // a locator that is away is asked for on every flight, and may be: its own rule says so
    notFor:
      ruling.path === LOCATOR_AWAY
        ? []
        : [
            ...new Set(
              list === undefined ? [...byRule, ...(equipment.neededFor ?? [])] : (listItem?.notFor ?? []),
            ),
          ],
    until,
    listItem,
    broken: [
      ...(listItem === undefined ? [] : brokenOf(listItem, nature, working)),
      ...overOf(until, request.today),
    ],
    placard: ruling.path === LOCATOR_AWAY ? LOCATOR_PLACARD : (listItem?.placard ?? "Inoperative"),
  };
}

function aircraftGiven({ aircraft, relief }: Book): ReliefInput["aircraft"] {
  const { certification, engine } = aircraft;
  return {
    engine,
    maxTakeOff_kg: certification?.maxTakeOff?.valueSI,
    masterList: certification?.masterList,
    ownList: relief?.minimumEquipmentList !== undefined,
    letterAboard: relief?.minimumEquipmentList?.letterAboard,
  };
}

/** The local day on which it was found. No later word moves it: an interval counts from the fault, not from its relief. */
export function foundOn({ raised }: Discrepancy): LocalDate {
  return localDayOf(Date.parse(raised.recordedAt), offsetOf_min(raised.recordedAt));
}

/** The last day: of the list's interval, of the days without a locator, else the next required inspection. */
function untilOf(
  { book, discrepancy, state }: Request,
  { path }: ReliefRuling,
  listItem: MelItem | undefined,
): LocalDate | undefined {
  const found = foundOn(discrepancy);
  switch (path) {
    case LOCATOR_AWAY:
      return removedLocatorUntil(found);
    case "91.213(d)":
      return state === undefined ? undefined : nextRequiredInspection(book, state);
    default:
      return listItem === undefined ? undefined : repairUntil(listItem.category, found, listItem.days);
  }
}

const overOf = (until: LocalDate | undefined, today: LocalDate | undefined): readonly string[] =>
  until !== undefined && today !== undefined && until < today ? [`Its time ended with ${until}`] : [];

/** What of a list's own conditions does not hold. */
function brokenOf(item: MelItem, nature: FlightNature, working: number): readonly string[] {
  const kinds = item.notFor.filter((kind) => among([kind], nature) === true);
  return [
    ...(kinds.length === 0
      ? []
      : [`The list is not for a flight ${listed(kinds.map((k) => KIND_WORDS[k]))}`]),
    ...(working >= item.needed
      ? []
      : [`${Math.max(0, working)} of ${item.installed} work, ${item.needed} must by the list`]),
  ];
}

/** A proviso of the list is broken by the flight's kind, or by a second fault, whatever is said. */
function provisosMet(
  { provisosMet: met }: ReliefSaid,
  item: MelItem | undefined,
  nature: FlightNature,
  working: number,
): boolean | undefined {
  if (item === undefined) return met;
  if (brokenOf(item, nature, working).length > 0) return false;
  return met === true && among(item.notFor, nature) === undefined ? undefined : met;
}
