import { quantities } from "@witnessmark/engine";
import { type ReactNode, useLayoutEffect, useRef } from "react";
import { PlainTitle } from "../../frame/title-block.tsx";
import type { KeepSnapshot } from "../../keep/contract.ts";
import { useWide } from "../../preferences/wide.ts";
import { href } from "../../routes/route.ts";
import { keptOfAll } from "../../words/keeping.ts";
import { inList } from "./kept-typed.ts";
import { QuantityList } from "./quantity-list.tsx";
import { QuantityPage } from "./quantity-page.tsx";
import "./calculators.css";

interface CalculatorsProps {
  readonly snapshot: KeepSnapshot;
  readonly quantity: string | undefined;
}

/** Every quantity that the program works out, to be used by itself; the address holds which. */
export function Calculators({ snapshot, quantity: id }: CalculatorsProps) {
  const wide = useWide();
  const quantity = id === undefined ? undefined : quantities.get(id);
  const page =
    id === undefined ? null : quantity === undefined ? (
      <section className="calc-page">
        <h2>Not here</h2>
        <p>There is no quantity “{id}”. The list has all there are.</p>
      </section>
    ) : (
      <QuantityPage key={id} quantity={quantity} />
    );
  const list = <QuantityList here={id} />;
  return (
    <div className="frame">
      <PlainTitle title="Calculators" kept={keptOfAll(snapshot.status)} back={href({ at: "apron" })} />
      {wide ? (
        <main className="calc-two">
          {list}
          <div className="calc-pane">
            {page ?? (
              <section className="calc-page">
                <p>
                  Choose a quantity. Its figures go in and come out in any unit, with the working and its
                  sources.
                </p>
              </section>
            )}
          </div>
        </main>
      ) : (
        <OnePane key={id ?? ""} list={page === null}>
          {page ?? list}
        </OnePane>
      )}
      {wide ? null : (
        <footer className="plain-foot">
          <a
            className="button full tall"
            href={href(id === undefined ? { at: "apron" } : { at: "calculators" })}
          >
            {id === undefined ? "Back to the Apron" : "All calculators"}
          </a>
        </footer>
      )}
    </div>
  );
}

/** A page begins at its top; the list is where one left it. */
function OnePane({ list, children }: { readonly list: boolean; readonly children: ReactNode }) {
  const pane = useRef<HTMLElement>(null);
  useLayoutEffect(() => {
    if (list) pane.current?.scrollTo(0, inList.scrolled_px);
  }, [list]);
  return (
    <main
      ref={pane}
      className="calc-one"
      onScroll={({ currentTarget }) => {
        if (list) inList.scrolled_px = currentTarget.scrollTop;
      }}
    >
      {children}
    </main>
  );
}
