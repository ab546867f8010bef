import { figure, tally } from "../../../words/figures.ts";
import type { Plan } from "./plan.ts";
import type { BringIn, UnderWay } from "./use-bring-in.ts";

/** What can be done with a file that was read. */
export function Act({ plan, bringing }: { readonly plan: Plan; readonly bringing: BringIn }) {
  if (plan.missing.length > 0 || plan.questions.length > 0) return null;
  const [one, several] = plan.noun;
  return (
    <section className="one-section import-act">
      <button
        type="button"
        className="button filled tall full"
        disabled={plan.count === 0}
        onClick={() => void bringing.bringIn(plan)}
      >
        {plan.count === 0 ? "Nothing to bring in" : `Bring in ${tally(plan.count, one, several)}`}
      </button>
    </section>
  );
}

/** How far it is, and the way to stop it. */
export function Under({ now, onStop }: { readonly now: UnderWay; readonly onStop: () => void }) {
  return (
    <section className="one-section import-act" aria-label="Under way">
      {now.is === "going-back" ? (
        <p role="status">Taking it back</p>
      ) : (
        <>
          <HowFar done={now.done} of={now.of} words={now.isStopping ? "Stopping at" : "Brought in"} />
          <p className="record-small">What is in stays in when this is stopped, and can be taken back.</p>
          <button type="button" className="button tall full" disabled={now.isStopping} onClick={onStop}>
            {now.isStopping ? "Stopping" : "Stop"}
          </button>
        </>
      )}
    </section>
  );
}

interface HowFarProps {
  readonly words: string;
  readonly done: number;
  readonly of: number;
}

export function HowFar({ words, done, of }: HowFarProps) {
  return (
    <div className="import-progress" role="status">
      <progress value={done} max={of} aria-label="How far it is" />
      <span>
        {words} {figure(done)} of {figure(of)}
      </span>
    </div>
  );
}

/** What was brought in or taken back, and what can be done with it. */
export function Brought({ bringing, file }: { readonly bringing: BringIn; readonly file: string }) {
  const { brought } = bringing;
  if (brought === null) return null;
  const { count, of, takenBack } = brought;
  const [one, several] = brought.noun;
  const isOne = count === 1;
  const isPart = count < of;
  const words =
    isPart && !takenBack ? `${figure(count)} of ${tally(of, one, several)}` : tally(count, one, several);
  return (
    <section className="one-section import-act">
      <h3>{takenBack ? "Taken back" : isPart ? "Stopped" : "Brought in"}</h3>
      <p role="status">
        {takenBack
          ? `${words} no longer ${isOne ? "counts" : "count"}; the ledger keeps what was withdrawn.`
          : `${words} of ${file} ${isOne ? "is" : "are"} on the record.`}
      </p>
      {takenBack ? null : (
        <>
          {isPart ? (
            <button type="button" className="button filled tall full" onClick={() => void bringing.goOn()}>
              Bring in the other {figure(of - count)}
            </button>
          ) : null}
          <button type="button" className="button tall full" onClick={() => void bringing.takeBack(brought)}>
            Take {isOne ? "it" : "them"} back
          </button>
        </>
      )}
    </section>
  );
}
