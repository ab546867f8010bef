import { idOf, PERFORMANCE_QUANTITIES, type Plain, sectionOf, valueAt } from "@witnessmark/book";
import { href } from "../../routes/route.ts";
import { go } from "../../routes/use-route.ts";
import { FromPaperPage } from "../chart/from-paper.tsx";
import { heldAlsoAs } from "../chart/held.ts";
import type { PaperWay, Wanted } from "../chart/wanted.ts";
import { listIn, textOf } from "./book-toc.tsx";
import { paperEdits } from "./paper-edits.ts";
import { paperAddress, paperPlace } from "./paper-place.ts";
import { indexOfItem } from "./section-page.tsx";
import { useDesk } from "./use-desk.ts";

interface FromPaperDeskProps {
  readonly way: PaperWay;
  /** `tables`, or `tables.landing` for the one that is there. */
  readonly of: string | undefined;
}

/** A table or an envelope of the draft from its paper; taken, it is one step of the draft that can be undone. */
export function FromPaperDesk({ way, of }: FromPaperDeskProps) {
  const desk = useDesk();
  const { registration, plain, draft } = desk;
  const place = paperPlace(of);
  const section = sectionOf(place?.section ?? "");
  if (place === undefined || section === undefined || plain === null) {
    return <p className="bk-none">Tables and envelopes are made from paper, from their own pages.</p>;
  }
  const index = indexOfItem(listIn(plain, section.path.map(String)), place.item);
  const item = index === undefined ? undefined : valueAt(plain, [...section.path, index]);
  const back = href({
    at: "book",
    registration,
    page: section.id,
    ...(place.item === undefined ? {} : { item: place.item }),
  });
  const title =
    item === undefined
      ? `A new ${section.one ?? ""}`
      : textOf(item, "title") || textOf(item, "name") || (idOf(item) ?? "");
  const heldAs = heldName(registration, way, of ?? "");
  return (
    <article className="bk-paper">
      <header className="bk-head">
        <a className="back-row" href={back}>
          Back to {item === undefined ? section.title.toLowerCase() : `the ${section.one ?? ""}`}
        </a>
        <h2>
          {title}, {way === "picture" ? "from a picture" : "pasted"}
        </h2>
      </header>
      {draft === null ? (
        <p className="bk-none">
          The book is in force and never changes. Change this book first: that begins a draft.
        </p>
      ) : (
        <FromPaperPage
          key={heldAs}
          wanted={wantedFor(section.id, item)}
          way={way}
          heldAs={heldAs}
          onTable={(made) => {
            const { edits, item: id } = paperEdits(plain, section, made, index);
            desk.edit(edits);
            heldAlsoAs(heldAs, heldName(registration, way, paperAddress(place.section, id)));
            go({ at: "book", registration, page: section.id, item: id }, "replace");
          }}
        />
      )}
    </article>
  );
}

const heldName = (registration: string, way: PaperWay, of: string): string => `${registration} ${way} ${of}`;

function wantedFor(section: string, item: Plain | undefined): Wanted {
  const id = item === undefined ? undefined : idOf(item);
  const known = id === undefined ? {} : { id };
  if (section === "envelopes")
    return { kind: "envelope", ...known, ...(item === undefined ? {} : { name: textOf(item, "name") }) };
  const quantity = PERFORMANCE_QUANTITIES.find((each) => each === textOf(item, "quantity"));
  return {
    kind: "table",
    ...known,
    ...(quantity === undefined ? {} : { quantity }),
    ...(item === undefined ? {} : { title: textOf(item, "title") }),
  };
}
