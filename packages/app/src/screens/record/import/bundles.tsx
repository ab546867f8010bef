import type { AircraftState } from "@witnessmark/ledger";
import { useMemo } from "react";
import { dayMonth } from "../../../words/dates.ts";
import { tally } from "../../../words/figures.ts";
import type { BringIn } from "./use-bring-in.ts";

interface Bundle {
  readonly id: string;
  readonly at_ms: number;
  readonly by: string;
  readonly events: readonly string[];
}

/** What was brought in before, each file by itself, the latest first. */
function bundlesOf(state: AircraftState): readonly Bundle[] {
  const bundles = new Map<string, { id: string; at_ms: number; by: string; events: string[] }>();
  for (const { readings } of state.checks.values()) {
    for (const { imported, event, author } of readings) {
      if (imported === undefined) continue;
      const { import: id, broughtInAt } = imported;
      const bundle = bundles.get(id) ?? { id, at_ms: Date.parse(broughtInAt), by: author.name, events: [] };
      bundle.events.push(event);
      bundles.set(id, bundle);
    }
  }
  return [...bundles.values()].sort((a, b) => b.at_ms - a.at_ms);
}

export function Bundles({ state, bringing }: { readonly state: AircraftState; readonly bringing: BringIn }) {
  const bundles = useMemo(() => bundlesOf(state), [state]);
  if (bundles.length === 0 || bringing.progress !== null) return null;
  return (
    <section className="one-section" aria-label="Brought in before">
      <h3>Brought in before</h3>
      <ul className="import-bundles">
        {bundles.map(({ id, at_ms, by, events }) => {
          const words = tally(events.length, "reading");
          return (
            <li key={id}>
              <span>
                {words}, {dayMonth(at_ms)} by {by}
              </span>
              <button type="button" className="button" onClick={() => void bringing.takeBack(events)}>
                Take {words} back
              </button>
            </li>
          );
        })}
      </ul>
    </section>
  );
}
