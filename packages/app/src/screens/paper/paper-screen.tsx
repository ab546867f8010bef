import type { WalkKind } from "@witnessmark/book";
import type { Read } from "@witnessmark/ledger";
import { walkPaper } from "@witnessmark/sheet";
import { useMemo, useState } from "react";
import { AircraftFrame } from "../../frame/aircraft-frame.tsx";
import type { OpenAircraft } from "../../frame/open-aircraft.ts";
import { preferences } from "../../preferences/preferences.ts";
import { href } from "../../routes/route.ts";
import { likelyKind, WALK_NAMES } from "../../walk/open-walk.ts";
import { useWalkPlan } from "../../walk/order/use-walk-plan.ts";
import { FigureField } from "./figure-field.tsx";
import { PaperWalk } from "./paper-walk.tsx";
import "../sheet/sheet-page.css";
import "../walk/left.css";
import "./paper.css";

const KINDS: readonly WalkKind[] = ["first-of-day", "turnaround", "after-flight"];

/** The walk to carry on paper: for when the phone is dead, or stays in the office. */
export function PaperScreen({ open }: { readonly open: OpenAircraft }) {
  const { registration, book, state } = open;
  const [kind, setKind] = useState<WalkKind>(() => likelyKind(state, Date.now()));
  const [temperature, setTemperature] = useState<Read | null>(null);
  const plan = useWalkPlan(open, kind);
  const paper = useMemo(
    () => walkPaper(book, state, plan, temperature ?? undefined),
    [book, state, plan, temperature],
  );
  return (
    <AircraftFrame open={open} sheet="walk" title="Walk" under="On paper" className="sheet-page">
      <main>
        <div className="sheet-tools">
          <a className="back-row" href={href({ at: "start", registration })}>
            Back to the walk
          </a>
          <a className="button" href={href({ at: "typed-in", registration })}>
            Type one in
          </a>
          <button type="button" className="button filled" onClick={() => window.print()}>
            Print
          </button>
        </div>
        <div className="paper-choice">
          <label className="field">
            <span>Which walk</span>
            <select value={kind} onChange={(event) => setKind(KINDS[event.target.selectedIndex] ?? kind)}>
              {KINDS.map((each) => (
                <option key={each} value={each}>
                  {WALK_NAMES[each]}
                </option>
              ))}
            </select>
          </label>
          <FigureField
            label="Temperature of what stands outside"
            unit={preferences.get().units.temperature ?? "degC"}
            example="8"
            onRead={setTemperature}
          />
        </div>
        {plan.stepCount === 0 ? (
          <p className="sheet-working">The book has no step for this walk.</p>
        ) : (
          <PaperWalk paper={paper} book={book} plan={plan} />
        )}
      </main>
    </AircraftFrame>
  );
}
