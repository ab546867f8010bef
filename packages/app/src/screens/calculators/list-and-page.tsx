import { type ReactNode, useLayoutEffect, useRef } from "react";
import { PlainTitle } from "../../frame/title-block.tsx";
import type { KeepSnapshot } from "../../keep/contract.ts";
import { useWide } from "../../preferences/wide.ts";
import { href } from "../../routes/route.ts";
import { keptOfAll } from "../../words/keeping.ts";
import type { InList } from "./kept-typed.ts";
import "./calculators.css";

interface ListAndPageProps {
  readonly snapshot: KeepSnapshot;
  readonly title: string;
  readonly list: ReactNode;
  /** The page that is open, by its id and as it is drawn; none while one chooses. */
  readonly open: { readonly id: string; readonly page: ReactNode } | undefined;
  /** Beside the list, while none is open. */
  readonly invites: string;
  /** The way back to the list, on a screen that holds one of the two. */
  readonly all: { readonly words: string; readonly address: string };
  readonly inList: InList;
}

/** A list and one page of it: side by side where there is room, one after the other where there is not. */
export function ListAndPage({ snapshot, title, list, open, invites, all, inList }: ListAndPageProps) {
  const wide = useWide();
  return (
    <div className="frame">
      <PlainTitle title={title} kept={keptOfAll(snapshot.status)} back={href({ at: "apron" })} />
      {wide ? (
        <main className="calc-two">
          {list}
          <div className="calc-pane">
            {open?.page ?? (
              <section className="calc-page">
                <p>{invites}</p>
              </section>
            )}
          </div>
        </main>
      ) : (
        <OnePane key={open?.id ?? ""} inList={open === undefined ? inList : undefined}>
          {open?.page ?? list}
        </OnePane>
      )}
      {wide ? null : (
        <footer className="plain-foot">
          <a className="button full tall" href={open === undefined ? href({ at: "apron" }) : all.address}>
            {open === undefined ? "Back to the Apron" : all.words}
          </a>
        </footer>
      )}
    </div>
  );
}

interface OnePaneProps {
  readonly inList: InList | undefined;
  readonly children: ReactNode;
}

/** A page begins at its top; the list is where one left it. */
function OnePane({ inList, children }: OnePaneProps) {
  const pane = useRef<HTMLElement>(null);
  useLayoutEffect(() => {
    if (inList !== undefined) pane.current?.scrollTo(0, inList.scrolled_px);
  }, [inList]);
  return (
    <main
      ref={pane}
      className="calc-one"
      onScroll={({ currentTarget }) => {
        if (inList !== undefined) inList.scrolled_px = currentTarget.scrollTop;
      }}
    >
      {children}
    </main>
  );
}
