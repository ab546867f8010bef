import type { Interruption } from "@witnessmark/ledger";
import type { OpenAircraft } from "../../frame/open-aircraft.ts";
import { backTold } from "../../walk/presence.ts";
import { stepName, type WalkView } from "../../walk/walk-view.ts";
import { clockTime } from "../../words/dates.ts";
import { countOf } from "../../words/figures.ts";
import { StepList } from "./step-list.tsx";
import { useHeadingFocus } from "./use-heading-focus.ts";

interface WelcomeBackProps {
  readonly open: OpenAircraft;
  readonly view: WalkView;
  readonly interruption: Interruption;
}

/** After a break: where one was, when, and which looks are asked again. A break is where things are missed. */
export function WelcomeBack({ open, view, interruption }: WelcomeBackProps) {
  const heading = useHeadingFocus();
  const again = view.walk.askedAgain.flatMap((id) => view.byId.get(id) ?? []);
  const last = again.at(-1);
  const left = clockTime(Date.parse(interruption.left));
  const back = clockTime(Date.parse(interruption.back));
  return (
    <>
      <div className="card-in">
        <header className="what">
          <p className="where">
            Away from <b>{left}</b> to <b>{back}</b>
          </p>
          <h2 ref={heading} tabIndex={-1}>
            The walk was broken off
          </h2>
        </header>
        <dl className="parts">
          {last === undefined ? null : (
            <>
              <dt>Last seen</dt>
              <dd>
                {stepName(last.step, open.book.points)}, stance {last.stop.number}
                {last.answer === undefined ? "" : `, ${clockTime(Date.parse(last.answer.recordedAt))}`}
              </dd>
            </>
          )}
          <dt>Again</dt>
          <dd>
            {countOf(again.length, "look")} {again.length === 1 ? "is" : "are"} asked again:
          </dd>
        </dl>
        <StepList open={open} steps={again} />
      </div>
      <div className="answers one">
        <button type="button" className="yes filled" onClick={() => backTold.set(interruption.event)}>
          Look again
        </button>
      </div>
    </>
  );
}
