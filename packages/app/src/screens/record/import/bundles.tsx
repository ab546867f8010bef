import type { AircraftState } from "@witnessmark/ledger";
import { useMemo } from "react";
import { dayMonth } from "../../../words/dates.ts";
import { tally } from "../../../words/figures.ts";
import { bundlesOf } from "./bundles-of.ts";
import type { BringIn } from "./use-bring-in.ts";

export function Bundles({ state, bringing }: { readonly state: AircraftState; readonly bringing: BringIn }) {
  const bundles = useMemo(() => bundlesOf(state), [state]);
  if (bundles.length === 0) return null;
  return (
    <section className="one-section" aria-label="Brought in before">
      <h3>Brought in before</h3>
      <ul className="import-bundles">
        {bundles.map(({ id, at_ms, by, count, noun }) => {
          const words = tally(count, ...noun);
          return (
            <li key={id}>
              <span>
                {words}, {dayMonth(at_ms)} by {by}
              </span>
              <button
                type="button"
                className="button"
                onClick={() => void bringing.takeBack({ bundle: id, count, of: count, noun })}
              >
                Take {words} back
              </button>
            </li>
          );
        })}
      </ul>
    </section>
  );
}
