import { type BookEdit, freeId, idOf, itemName, type Plain, type Section, valueAt } from "@witnessmark/book";
import type { ReactNode } from "react";
import { cm } from "../../drawing/centimetre.ts";
import { href } from "../../routes/route.ts";
import { go } from "../../routes/use-route.ts";
import { Fields } from "./fields.tsx";
import { useDesk } from "./use-desk.ts";

interface ItemPageProps {
  readonly section: Section;
  readonly index: number;
  readonly back: string | undefined;
  readonly above?: ReactNode;
  /** Between its name and its fields. */
  readonly first?: ReactNode;
  readonly below?: ReactNode;
  readonly acts?: ReactNode;
}

/** One item of a list: its fields, and what can be done with the whole of it. */
export function ItemPage({ section, index, back, above, first, below, acts }: ItemPageProps) {
  const desk = useDesk();
  const path = [...section.path, index];
  const item = valueAt(desk.plain ?? undefined, path);
  if (item === undefined) return <p className="bk-none">It is not there any more.</p>;
  const name = itemName(item, null) ?? `New ${section.one ?? "item"}`;
  return (
    <article className="bk-item">
      {back === undefined ? null : (
        <a className="back-row" href={back}>
          Back to {section.title.toLowerCase()}
        </a>
      )}
      {above}
      <h2>{name}</h2>
      {first}
      <Fields fields={section.fields} path={path} />
      {below}
      {desk.draft === null ? null : (
        <div className="row-of-buttons bk-item-acts">
          {acts}
          <button type="button" className="button" onClick={() => copy(desk, section, index, item)}>
            Copy
          </button>
          <button
            type="button"
            className="button"
            onClick={() => {
              desk.edit([{ remove: path }]);
              go({ at: "book", registration: desk.registration, page: section.id }, "replace");
            }}
          >
            Take out
          </button>
          {index === 0 ? null : (
            <button type="button" className="button" onClick={() => move(desk, section, index, item)}>
              Move up
            </button>
          )}
        </div>
      )}
    </article>
  );
}

/** Right after the one it is a copy of, under a short name of its own. */
function copy(desk: ReturnType<typeof useDesk>, section: Section, index: number, item: Plain): void {
  const id = freeId(desk.plain, section.path, idOf(item) ?? section.one ?? "item");
  const { mirrors: _mirrors, ...rest } = item as { readonly [key: string]: Plain }; // an item of a page is keys and values
  const isKeyed = valueAt(item, ["id"]) !== undefined;
  const place = valueAt(item, ["place"]);
  const beside =
    section.id === "points" && Array.isArray(place) && typeof place[0] === "number"
      ? { place: [cm(place[0] + 0.1), ...place.slice(1)] }
      : {};
  desk.edit([
    { insert: [...section.path, index + 1], item: { ...rest, ...beside, ...(isKeyed ? { id } : {}) } },
  ]);
  go({
    at: "book",
    registration: desk.registration,
    page: section.id,
    item: isKeyed ? id : `at-${index + 1}`,
  });
}

function move(desk: ReturnType<typeof useDesk>, section: Section, index: number, item: Plain): void {
  const edits: readonly BookEdit[] = [
    { remove: [...section.path, index] },
    { insert: [...section.path, index - 1], item },
  ];
  desk.edit(edits);
  if (idOf(item) === undefined)
    go({ at: "book", registration: desk.registration, page: section.id, item: `at-${index - 1}` }, "replace");
}

export const linkTo = (registration: string, page: string, item: string): string =>
  href({ at: "book", registration, page, item });
