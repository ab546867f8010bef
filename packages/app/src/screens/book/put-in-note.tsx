import { type Plain, sectionOf, valueAt } from "@witnessmark/book";
import { href } from "../../routes/route.ts";
import { tally } from "../../words/figures.ts";
import { listed } from "../../words/listed.ts";
import { useDesk } from "./use-desk.ts";

/** Pages that are put in together with the empty mass. */
const WITH_IT = ["stations", "tanks", "envelopes"] as const;

/** How many boxes of a value were never filled. */
const empties = (value: Plain | undefined): number => {
  if (value === "") return 1;
  if (typeof value !== "object" || value === null) return 0;
  return (Object.values(value) as readonly Plain[]).reduce<number>((sum, each) => sum + empties(each), 0);
};

/** What stands on other pages since the empty mass was put in, and still has empty boxes. */
export function PutInNote() {
  const { plain, draft, registration } = useDesk();
  if (draft === null) return null;
  const open = WITH_IT.flatMap((id) => {
    const section = sectionOf(id);
    const list = section === undefined ? undefined : valueAt(plain ?? undefined, section.path);
    if (section?.one === undefined || !Array.isArray(list) || empties(list) === 0) return [];
    return [{ id, title: section.title, words: tally(list.length, section.one, PLURAL[id]) }];
  });
  if (open.length === 0) return null;
  return (
    <div className="bk-put-in">
      <p>
        Put in with it, on pages of their own: {listed(open.map(({ words }) => words))}. They are drawn where
        such things mostly are; their figures are still to be put in, from the handbook.
      </p>
      <p className="row-of-buttons">
        {open.map(({ id, title }) => (
          <a key={id} className="button" href={href({ at: "book", registration, page: id })}>
            {title}
          </a>
        ))}
      </p>
    </div>
  );
}

const PLURAL = { stations: "seats and bays", tanks: "tanks", envelopes: "envelopes" } as const;
