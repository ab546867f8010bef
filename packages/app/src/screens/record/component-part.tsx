import { componentAboard, componentRan, type FollowedItem } from "@witnessmark/assess";
import type { Counter } from "@witnessmark/book";
import type { OpenAircraft } from "../../frame/open-aircraft.ts";
import { counterText } from "../after/counter-said.ts";
import { useKeptHere } from "../after/keep-and-undo.tsx";
import { MoveForm } from "./move-form.tsx";
import "./timed.css";

interface ComponentPartProps {
  readonly open: OpenAircraft;
  readonly component: string;
  readonly item: FollowedItem;
}

/** Which one is fitted and what it has run; a form for the day on which another goes in, or this one comes out. */
export function ComponentPart({ open, component, item }: ComponentPartProps) {
  const { book, state, registration } = open;
  const aboard = componentAboard(state, component);
  const kept = useKeptHere(registration);
  const counters = countersFor(open, component);
  const name = book.equipment.find(({ id }) => id === component)?.name ?? component;
  return (
    <section className="one-section">
      <h3>Which one is fitted</h3>
      <p className="record-small">
        {aboard === undefined
          ? `Nobody has written down the number of: ${name}. It is taken for the one the aircraft came with.`
          : aboard.isFitted
            ? `Number ${aboard.serial}, fitted ${aboard.on}. What it has run goes with it from aircraft to aircraft.`
            : `Number ${aboard.serial} was removed on ${aboard.on}; nothing is in its place.`}
      </p>
      {aboard === undefined || !aboard.isFitted || counters.length === 0 ? null : (
        <dl className="parts">
          {counters.map((counter) => {
            const ran = componentRan(state, aboard, counter.id);
            return [
              <dt key={`${counter.id} name`}>Has run, {counter.name.toLowerCase()}</dt>,
              <dd key={counter.id}>{ran === undefined ? "not known" : counterText(ran, counter)}</dd>,
            ];
          })}
        </dl>
      )}
      <details>
        <summary className="button">Fitted or removed</summary>
        <MoveForm
          key={aboard?.event ?? ""}
          open={open}
          component={component}
          counters={counters}
          recurs={!item.endsLife}
          kept={kept}
          item={item.id}
        />
      </details>
    </section>
  );
}

/** The counters that anything followed of a component runs by. */
function countersFor({ book, state }: OpenAircraft, component: string): readonly Counter[] {
  const items = [...book.timedItems, ...[...state.timedAdded.values()].map(({ item }) => item)];
  const ids = new Set(
    items
      .filter((item) => item.component === component)
      .flatMap(({ limits }) => limits.flatMap((limit) => (limit.by === "counter" ? [limit.counter] : []))),
  );
  return book.counters.filter(({ id }) => ids.has(id));
}
