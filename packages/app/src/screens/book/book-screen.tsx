import { newDraft, sectionOf } from "@witnessmark/book";
import type { ReactNode } from "react";
import { Opening } from "../../frame/opening.tsx";
import { PlainTitle } from "../../frame/title-block.tsx";
import { Trouble } from "../../frame/trouble.tsx";
import type { AircraftEntry, KeepSnapshot } from "../../keep/contract.ts";
import { useWide } from "../../preferences/wide.ts";
import { href } from "../../routes/route.ts";
import { keptOfAll } from "../../words/keeping.ts";
import { AsText } from "./as-text.tsx";
import { BookActs } from "./book-acts.tsx";
import { BookHome } from "./book-home.tsx";
import { BookTitle } from "./book-title.tsx";
import { BookToc } from "./book-toc.tsx";
import { Changes } from "./changes.tsx";
import { FromPaperDesk } from "./from-paper-desk.tsx";
import { Issue } from "./issue.tsx";
import { SectionPage } from "./section-page.tsx";
import { ShapePage } from "./shape-page.tsx";
import { type Desk, DeskProvider, useOpenDesk } from "./use-desk.ts";
import { WalkPage } from "./walk-page.tsx";
import "../aircraft/aircraft.css";
import "./book.css";
import "./shape.css";

interface BookScreenProps {
  readonly snapshot: KeepSnapshot;
  readonly entry: AircraftEntry | undefined;
  readonly registration: string;
  readonly page: string | undefined;
  readonly item: string | undefined;
}

/** The aircraft's book: read, and changed in a draft until a person issues it. */
export function BookScreen({ snapshot, entry, registration, page, item }: BookScreenProps) {
  const desk = useOpenDesk(registration, entry);
  if (desk === undefined) return <Opening />;
  if (desk === null) return <NoBook snapshot={snapshot} registration={registration} />;
  return (
    <DeskProvider value={desk}>
      <Frame desk={desk} snapshot={snapshot} page={page} item={item} />
    </DeskProvider>
  );
}

interface FrameProps extends Pick<BookScreenProps, "snapshot" | "page" | "item"> {
  readonly desk: Desk;
}

function Frame({ desk, snapshot, page, item }: FrameProps) {
  const wide = useWide();
  const asText = desk.plain === null && page !== "changes";
  const at = asText ? "text" : page;
  // a paper needs the whole width, and has an Undo of its own
  const isPaper = at === "picture" || at === "pasted";
  const hasToc = wide && !isPaper;
  return (
    <div className="frame bk">
      <BookTitle snapshot={snapshot} />
      <main className={hasToc ? "bk-wide" : undefined} key={hasToc ? "wide" : (at ?? "home")}>
        {hasToc ? <BookToc page={at} item={item} /> : null}
        <Page page={at} item={item} snapshot={snapshot} wide={wide} />
      </main>
      <footer className="bk-foot">
        <Trouble words={desk.trouble} onDismiss={desk.dismiss} />
        {isPaper ? null : <BookActs snapshot={snapshot} page={at} />}
      </footer>
    </div>
  );
}

interface PageProps {
  readonly page: string | undefined;
  readonly item: string | undefined;
  readonly snapshot: KeepSnapshot;
  readonly wide: boolean;
}

function Page({ page, item, snapshot, wide }: PageProps) {
  switch (page) {
    case "text":
      return (
        <Pane>
          <AsText />
        </Pane>
      );
    case "changes":
      return (
        <Pane>
          <Changes />
        </Pane>
      );
    case "issue":
      return (
        <Pane>
          <Issue snapshot={snapshot} />
        </Pane>
      );
    case "picture":
    case "pasted":
      return <FromPaperDesk way={page} of={item} />;
    case "points":
    case "checks":
    case "stances":
      return <WalkPage section={page} item={item} wide={wide} />;
    case undefined:
      return wide ? (
        <WalkPage section="points" item={undefined} wide home={<BookHome />} />
      ) : (
        <Pane>
          <BookHome />
        </Pane>
      );
    default: {
      const section = sectionOf(page);
      if (section?.group === "aircraft" && section.path.length > 0)
        return <ShapePage key={page} section={section} item={item} wide={wide} />;
      return (
        <Pane>
          {section === undefined ? (
            <BookHome />
          ) : (
            <SectionPage key={page} section={section} item={item} wide={wide} />
          )}
        </Pane>
      );
    }
  }
}

function Pane({ children }: { readonly children: ReactNode }) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: it scrolls, and may hold nothing else to focus
    <section className="bk-pane" tabIndex={0} aria-label="What the book says">
      {children}
    </section>
  );
}

function NoBook({
  snapshot,
  registration,
}: {
  readonly snapshot: KeepSnapshot;
  readonly registration: string;
}) {
  return (
    <div className="frame">
      <PlainTitle title="Not here" kept={keptOfAll(snapshot.status)} back={href({ at: "apron" })} />
      <main className="page">
        <section>
          <p>There is no book of {registration} here, and no draft of one.</p>
          <a className="button filled tall full" href={href({ at: "begin" })}>
            Begin a book
          </a>
        </section>
      </main>
    </div>
  );
}

/** A draft of the revision in force. */
export const draftOfBook = (desk: Desk) =>
  newDraft(desk.text, desk.book === null ? null : { revision: desk.book.revision, text: desk.text });
