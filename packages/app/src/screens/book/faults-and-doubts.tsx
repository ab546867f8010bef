import {
  type BookFault,
  consistencyOf,
  fieldOf,
  itemName,
  type Plain,
  SECTIONS,
  sectionOf,
  spaced,
  valueAt,
} from "@witnessmark/book";
import { useMemo } from "react";
import { href } from "../../routes/route.ts";
import { capital } from "../../words/capital.ts";
import { countOf } from "../../words/figures.ts";
import { pathOf, type ToldFault, toldFault } from "./fault-words.ts";
import { indexOfPath, sectionOfPath } from "./section-of-path.ts";
import { type Desk, useDesk } from "./use-desk.ts";

const MOST = 12;

/** Everything that is wrong with the draft, and what does not hang together, each with the way to its place. */
export function FaultsAndDoubts() {
  const desk = useDesk();
  const { book, text, isRead, faults } = desk;
  const doubts = useMemo(
    () => (isRead && book !== null && faults.length === 0 ? consistencyOf(book, text) : []),
    [isRead, book, text, faults],
  );
  if (faults.length === 0 && doubts.length === 0) return null;
  const told = faults.map((fault) => ({ ...toldFault(fault, desk.plain), fault }));
  const wrong = told.filter(({ is }) => is === "wrong");
  const missing = told.filter(({ is }) => is === "missing");
  return (
    <section className="bk-wrong" aria-label="What is wrong">
      <Listed title={countOf(wrong.length, "fault")} told={wrong} />
      <Listed title={`Still to be put in, ${missing.length}`} told={missing} />
      {doubts.length === 0 ? null : (
        <>
          <h2>To look at</h2>
          <ul>
            {doubts.slice(0, MOST).map((doubt) => (
              <li key={`${doubt.path} ${doubt.says}`}>
                <a href={wayTo(desk, doubt.path)}>{doubt.says}</a>
                <span>{doubt.remedy}</span>
              </li>
            ))}
          </ul>
        </>
      )}
    </section>
  );
}

interface ListedProps {
  readonly title: string;
  readonly told: readonly (ToldFault & { readonly fault: BookFault })[];
}

function Listed({ title, told }: ListedProps) {
  const desk = useDesk();
  if (told.length === 0) return null;
  return (
    <>
      <h2>{title}</h2>
      <ul>
        {told.slice(0, MOST).map(({ fault, text }) => (
          <li key={`${fault.path} ${fault.line} ${fault.expected}`}>
            <a href={wayTo(desk, fault.path)}>{placeName(desk.plain, fault.path) || `Line ${fault.line}`}</a>
            <span>{text}</span>
          </li>
        ))}
      </ul>
      {told.length > MOST ? <p className="note">and {countOf(told.length - MOST, "more", "more")}</p> : null}
    </>
  );
}

/** The page and the item that a path is of; the text where no page has it. */
function wayTo({ registration, plain }: Desk, path: string): string {
  const page = sectionOfPath(path);
  if (page === undefined) return href({ at: "book", registration, page: "text" });
  const section = sectionOf(page);
  const index = indexOfPath(path);
  const id = section?.one === undefined || index === undefined ? undefined : idAt(plain, section.path, index);
  return href({ at: "book", registration, page, ...(id === undefined ? {} : { item: id }) });
}

function idAt(plain: Plain | null, list: readonly (string | number)[], index: number): string | undefined {
  const item = valueAt(plain ?? undefined, [...list, index]);
  const id = [valueAt(item, ["id"]), valueAt(item, ["code"])].find(
    (each) => typeof each === "string" && each !== "",
  );
  return typeof id === "string" ? id : `at-${index}`;
}

/** "Left main tyre, place" */
function placeName(plain: Plain | null, path: string): string {
  const section = SECTIONS.find(({ id }) => id === sectionOfPath(path));
  const index = indexOfPath(path);
  const item =
    section?.one === undefined || index === undefined
      ? undefined
      : itemName(valueAt(plain ?? undefined, [...section.path, index]), plain);
  const last = /([A-Za-z]+)[^A-Za-z]*$/.exec(path)?.[1] ?? "";
  const field = fieldOf(pathOf(path));
  const what = field?.key === last ? field.label.toLowerCase() : spaced(last);
  const lead = item ?? section?.title ?? "";
  return capital(
    lead === "" ? path : last === "" || section?.path.at(-1) === last ? lead : `${lead}, ${what}`,
  );
}
