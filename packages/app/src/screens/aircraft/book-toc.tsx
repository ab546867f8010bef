import type { Check } from "@witnessmark/book";
import type { WalkPlan } from "@witnessmark/planner";
import { memo, useEffect, useRef } from "react";
import type { OpenAircraft } from "../../frame/open-aircraft.ts";
import { href } from "../../routes/route.ts";
import { useWalkPlan } from "../../walk/order/use-walk-plan.ts";
import { stancesListed } from "./stances-listed.ts";

interface BookTocProps {
  readonly open: OpenAircraft;
  readonly check: Check | undefined;
}

/** The stances in the order of the first walk of the day, each with its checks. */
export function BookToc({ open, check }: BookTocProps) {
  const plan = useWalkPlan(open, "first-of-day");
  return <Toc book={open.book} plan={plan} registration={open.registration} current={check?.id} />;
}

interface TocProps {
  readonly book: OpenAircraft["book"];
  readonly plan: WalkPlan;
  readonly registration: string;
  readonly current: string | undefined;
}

const Toc = memo(function Toc({ book, plan, registration, current }: TocProps) {
  const list = useRef<HTMLElement>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: another order of the walk puts it elsewhere
  useEffect(() => {
    if (current === undefined) return;
    list.current?.querySelector('[aria-current="true"]')?.scrollIntoView({ block: "center" });
  }, [current, plan]);
  return (
    <nav className="toc" aria-label="Stances and checks" ref={list}>
      <h2>Stances, as the first walk of the day goes</h2>
      {stancesListed(book, plan).map(({ number, stance, name, checks }) => (
        <details key={`${number} ${stance}`} open={checks.some(({ id }) => id === current)}>
          <summary>
            <b>{number}</b>
            <span>{name}</span>
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
      ))}
    </nav>
  );
});
