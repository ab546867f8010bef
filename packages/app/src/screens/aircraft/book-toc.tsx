import type { Check } from "@witnessmark/book";
import { memo, useEffect, useRef } from "react";
import type { OpenAircraft } from "../../frame/open-aircraft.ts";
import { href } from "../../routes/route.ts";

interface BookTocProps {
  readonly open: OpenAircraft;
  readonly check: Check | undefined;
}

/** The stances in walking order, each with its checks. */
export function BookToc({ open, check }: BookTocProps) {
  return <Toc book={open.book} registration={open.registration} current={check?.id} stance={check?.stance} />;
}

interface TocProps {
  readonly book: OpenAircraft["book"];
  readonly registration: string;
  readonly current: string | undefined;
  readonly stance: string | undefined;
}

const Toc = memo(function Toc({ book, registration, current, stance }: TocProps) {
  const list = useRef<HTMLElement>(null);
  useEffect(() => {
    if (current === undefined) return;
    list.current?.querySelector('[aria-current="true"]')?.scrollIntoView({ block: "center" });
  }, [current]);
  return (
    <nav className="toc" aria-label="Stances and checks" ref={list}>
      <h2>Stances in walking order</h2>
      {book.stances.map((each, index) => {
        const checks = book.checks.filter((check) => check.stance === each.id);
        return (
          <details key={each.id} open={each.id === stance}>
            <summary>
              <b>{index + 1}</b>
              <span>{each.name}</span>
              <small>{checks.length}</small>
            </summary>
            {checks.map((check) => (
              <a
                key={check.id}
                href={href({ at: "aircraft", registration, check: check.id })}
                aria-current={check.id === current ? "true" : undefined}
              >
                <span>{book.points.get(check.point)?.name ?? check.id}</span>
                <small>{check.method}</small>
              </a>
            ))}
          </details>
        );
      })}
    </nav>
  );
});
