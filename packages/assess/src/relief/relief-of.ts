import type { Book, Equipment, KindOfOperation, MelItem } from "@witnessmark/book";
import { positionLightNights } from "@witnessmark/engine";
import type { Discrepancy, LocalDate, PlannedFlight } from "@witnessmark/ledger";
import { type FlightNature, isOfAnyKind, natureOfFlight } from "../flight/kinds-of-flight.ts";
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
import { usPart91 } from "../rules/us-part-91/pack.ts";
import { localDayOf } from "../timed/local-day.ts";
import { offsetOf_min } from "../words/local-time.ts";
import { equipmentOf } from "./equipment-of.ts";

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
}

/** Undefined while nobody can tell which piece of equipment it is: then there is nothing to rule on. */
export function reliefOf({
  book,
  discrepancy,
  flight,
  said,
  pack: wanted,
}: Request): ReliefAnswer | undefined {
  const equipment = equipmentOf(book, discrepancy);
  if (equipment === undefined) return undefined;
  const pack = wanted ?? packOf(flight);
  const nature = natureForRelief(book, flight);
  const list = book.relief?.minimumEquipmentList;
  const listItem = list?.items.find((item) => item.equipment === equipment.id);
  const byRule = kindsOfRule(book, pack, equipment.ruleItem);
  const known = tellsNeeds(book);
  const item: ReliefItem = {
    inOwnList: listItem !== undefined,
    typeEquipment: known ? equipment.typeEquipment : undefined,
    listed: known ? among(equipment.neededFor, nature) : undefined,
    ruleRequires: known ? among(byRule, nature) : undefined,
    directive: known ? equipment.directive !== undefined : undefined,
    endangers: said.noHazardBy === undefined ? undefined : said.noHazardBy === "nobody",
  };
  const { certification, engine } = book.aircraft;
  const ruling = pack.relief({
    aircraft: {
      engine,
      maxTakeOff_kg: certification?.maxTakeOff?.valueSI,
      masterList: certification?.masterList,
      ownList: list !== undefined,
      letterAboard: list?.letterAboard,
    },
    item,
    said: { ...said, provisosMet: provisosMet(said, listItem, nature) },
  } satisfies ReliefInput);
  const raised = discrepancy.raised.recordedAt;
  const foundOn = localDayOf(Date.parse(raised), offsetOf_min(raised));
  return {
    pack,
    equipment,
    ruling,
    ask: ruling.steps.find(({ holds, asks }) => holds === "unknown" && asks !== undefined)?.asks,
    notFor: [
      ...new Set([
        ...(list === undefined ? [...byRule, ...(equipment.neededFor ?? [])] : (listItem?.notFor ?? [])),
      ]),
    ],
    until: listItem === undefined ? undefined : repairUntil(listItem.category, foundOn, listItem.days),
    listItem,
    placard: listItem?.placard ?? "Inoperative",
  };
}

/** A proviso of the list is broken by the flight's kind, whatever is said. */
function provisosMet(
  { provisosMet: met }: ReliefSaid,
  item: MelItem | undefined,
  nature: FlightNature,
): boolean | undefined {
  if (met !== true || item === undefined) return met;
  const broken = among(item.notFor, nature);
  return broken === undefined ? undefined : !broken;
}
