import type { WalkKind } from "@witnessmark/book";
import type { Read } from "@witnessmark/ledger";
import { walkPaper } from "@witnessmark/sheet";
import { useMemo, useState } from "react";
import { useFlight } from "../../flight/flight-in-hand.ts";
import { AircraftFrame } from "../../frame/aircraft-frame.tsx";
import type { OpenAircraft } from "../../frame/open-aircraft.ts";
import { useMinute } from "../../preferences/clock.ts";
import { preferences } from "../../preferences/preferences.ts";
import { href } from "../../routes/route.ts";
import { assessed } from "../../walk/assessed.ts";
import { likelyKind } from "../../walk/open-walk.ts";
import { useWalkPlan } from "../../walk/order/use-walk-plan.ts";
import { PrintTools } from "../sheet/print-tools.tsx";
import { FigureField } from "./figure-field.tsx";
import { PaperWalk } from "./paper-walk.tsx";
import { WalkKindField } from "./walk-kind-field.tsx";
import "../sheet/sheet-page.css";
import "../walk/left.css";
import "./paper.css";

/** The walk to carry on paper: for when the phone is dead, or stays in the office. */
export function PaperScreen({ open }: { readonly open: OpenAircraft }) {
  const { registration, book, state } = open;
  const minute = useMinute();
  const flight = useFlight(registration, state, minute * 60_000);
  const { verdicts } = assessed(book, state, flight, minute);
  const [kind, setKind] = useState<WalkKind>(() => likelyKind(state, Date.now()));
  const [temperature, setTemperature] = useState<Read | null>(null);
  const plan = useWalkPlan(open, kind);
  const paper = useMemo(
    () => walkPaper(book, state, plan, verdicts, temperature ?? undefined),
    [book, state, plan, verdicts, temperature],
  );
  return (
    <AircraftFrame open={open} sheet="walk" title="Walk" under="On paper" className="sheet-page">
      <main>
        <PrintTools back={href({ at: "start", registration })} backTo="Back to the walk">
          <a className="button" href={href({ at: "typed-in", registration })}>
            Type one in
          </a>
        </PrintTools>
        <div className="paper-choice">
          <WalkKindField kind={kind} onKind={setKind} />
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
