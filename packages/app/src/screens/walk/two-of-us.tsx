import type { SharedWalk } from "@witnessmark/planner";
import { useEffect, useMemo, useState } from "react";
import type { OpenAircraft } from "../../frame/open-aircraft.ts";
import { Trouble } from "../../frame/trouble.tsx";
import { askShares } from "../../walk/order/ask-order.ts";
import { myRow } from "../../walk/order/my-orders.ts";
import { setTurn, turnOf } from "../../walk/order/walk-turn.ts";
import { aboutWords } from "../../walk/time-left.ts";
import { alsoOf } from "../../walk/walk-plan.ts";
import type { WalkView } from "../../walk/walk-view.ts";
import { tally } from "../../words/figures.ts";

interface TwoOfUsProps {
  readonly open: OpenAircraft;
  readonly view: WalkView;
  readonly onDone: () => void;
}

const NAMES = ["First half", "Second half"] as const;

/** The walk in two halves: which one is taken on this phone. Each sees what the other has done disappear. */
export function TwoOfUs({ open, view, onDone }: TwoOfUsProps) {
  const { book, state, assessment } = open;
  const { id, kind } = view.walk;
  const [shared, setShared] = useState<readonly SharedWalk[]>([]);
  const [trouble, setTrouble] = useState<string | null>(null);
  const also = useMemo(
    () => alsoOf(book, kind, id, state, assessment).join(" "),
    [book, kind, id, state, assessment],
  );
  useEffect(() => {
    let isCurrent = true;
    const by = myRow(book.aircraft.registration, kind);
    askShares({ ask: "shared", book, kind, also: also.split(" ").filter(Boolean), by }).then(
      (halves) => isCurrent && setShared(halves),
      (error: unknown) => isCurrent && setTrouble(`The walk could not be shared: ${String(error)}`),
    );
    return () => {
      isCurrent = false;
    };
  }, [book, kind, also]);
  const turn = turnOf(id);
  return (
    <div className="two-of-us">
      <p>
        Take one half on each phone. What one has done disappears for the other; what is left over comes to
        both.
      </p>
      <Trouble words={trouble} />
      <ul className="popup-list">
        {shared.map(({ mine, others, time_s }, i) => {
          const half = i === 0 ? 0 : 1;
          const steps = mine.flatMap((stop) => stop.steps);
          const left = steps.filter((step) => view.byId.get(step)?.status === "open").length;
          const [first, last] = [mine.at(0), mine.at(-1)].map(
            (stop) => book.stancesById.get(stop?.stance ?? "")?.name,
          );
          return (
            <li key={NAMES[half]}>
              <button
                type="button"
                aria-pressed={turn?.half === half}
                onClick={() => {
                  setTurn({ walk: id, half, mine: mine.length, stops: [...mine, ...others] });
                  onDone();
                }}
              >
                {NAMES[half]}: {first} to {last}
                <small>
                  {left} of {tally(steps.length, "step")} left, {aboutWords(time_s)} in all
                  {whoIsAt(steps, view, open)}
                </small>
              </button>
            </li>
          );
        })}
      </ul>
      {shared.length === 0 && trouble === null ? <p role="status">Sharing the walk.</p> : null}
    </div>
  );
}

/** Who has answered there, so that two do not take the same half. */
function whoIsAt(steps: readonly string[], view: WalkView, { person }: OpenAircraft): string {
  const names = new Set(
    steps.flatMap((step) => {
      const author = view.byId.get(step)?.answer?.author;
      return author === undefined || author.id === person.id ? [] : [author.name];
    }),
  );
  return names.size === 0 ? "" : `; ${[...names].join(", ")} is at it`;
}
