import { GROUP_NAMES, missingFor, SECTIONS, type Section, valueAt } from "@witnessmark/book";
import { useMemo } from "react";
import { href } from "../../routes/route.ts";
import { countOf as countWords } from "../../words/figures.ts";
import { countOf } from "./book-toc.tsx";
import { Merge } from "./changes.tsx";
import { countText } from "./fault-words.ts";
import { FaultsAndDoubts } from "./faults-and-doubts.tsx";
import { sectionOfPath } from "./section-of-path.ts";
import { useChanges } from "./use-changes.ts";
import { useDesk } from "./use-desk.ts";

const GROUPS = Object.keys(GROUP_NAMES) as Section["group"][]; // the keys of a const object

/** All pages of the book, with what is missing for which verdicts, and what is wrong. */
export function BookHome() {
  const { registration, plain, draft, faults } = useDesk();
  const missing = useMemo(() => (plain === null ? [] : missingFor(plain)), [plain]);
  const changes = useChanges();
  const notice = valueAt(plain ?? undefined, ["notice"]);
  const wrong = (section: Section) =>
    countText(
      faults.filter(({ path }) => sectionOfPath(path) === section.id),
      plain,
    );
  return (
    <div className="bk-home">
      {draft?.base == null ? null : (
        <a className="bk-row-link" href={href({ at: "book", registration, page: "changes" })}>
          <b>Changes since revision {draft.base.revision}</b>
          <span>{changes.length === 0 ? "none" : countWords(changes.length, "change")}</span>
        </a>
      )}
      {typeof notice === "string" ? <p className="bk-says">{notice}</p> : null}
      <Merge />
      <FaultsAndDoubts />
      {GROUPS.map((group) => (
        <section key={group}>
          <h2>{GROUP_NAMES[group]}</h2>
          <ul>
            {SECTIONS.filter((section) => section.group === group).map((section) => (
              <li key={section.id}>
                <a className="bk-row-link" href={href({ at: "book", registration, page: section.id })}>
                  <b>{section.title}</b>
                  <span>{wrong(section) || countOf(section, plain)}</span>
                  {missing
                    .filter((each) => each.section === section.id)
                    .map(({ says }) => (
                      <small key={says}>{says}</small>
                    ))}
                </a>
              </li>
            ))}
          </ul>
        </section>
      ))}
    </div>
  );
}
