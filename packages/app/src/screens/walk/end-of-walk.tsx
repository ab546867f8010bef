import type { OpenAircraft } from "../../frame/open-aircraft.ts";
import { Trouble } from "../../frame/trouble.tsx";
import { useKeeping } from "../../frame/use-keeping.ts";
import { useKeep } from "../../keep/react.ts";
import { Mark } from "../../marks/mark.tsx";
import { href } from "../../routes/route.ts";
import { go } from "../../routes/use-route.ts";
import type { WalkView } from "../../walk/walk-view.ts";
import { clockTime } from "../../words/dates.ts";
import { countOf } from "../../words/figures.ts";
import type { Sayer } from "./sayer.ts";
import { StepList } from "./step-list.tsx";
import { useHeadingFocus } from "./use-heading-focus.ts";

interface EndOfWalkProps {
  readonly open: OpenAircraft;
  readonly view: WalkView;
  readonly sayer: Sayer;
}

/** Nothing is left: the walk is closed by an act of its own. */
export function EndOfWalk({ open, view, sayer }: EndOfWalkProps) {
  const { registration } = open;
  const keep = useKeep();
  const keeping = useKeeping();
  const heading = useHeadingFocus();
  const left = view.steps.filter((each) => each.status === "open");
  const not = view.steps.filter((each) => each.status === "stop" || each.status === "caution");
  const finished = view.walk.finished;
  const finish = async () => {
    const kept = await keeping.keep(() =>
      keep.append(registration, [{ type: "walk.finished", body: { walk: view.walk.id } }]),
    );
    if (kept) go({ at: "decide", registration });
  };
  // what the headline says: a stop may stand that no step of this walk is about
  const { status } = open.assessment;
  return (
    <>
      <div className="card-in">
        <header className="what end-head">
          <p className="where">
            <b>
              {view.steps.length - left.length} of {view.steps.length} done
            </b>
            , begun {clockTime(Date.parse(view.walk.recordedAt))}
          </p>
          <h2 ref={heading} tabIndex={-1}>
            {left.length === 0 ? "Nothing is left of this walk" : `${countOf(left.length, "thing")} left`}
          </h2>
        </header>
        <StepList open={open} steps={[...left, ...not]} />
      </div>
      <Trouble words={sayer.trouble ?? keeping.trouble} onDismiss={sayer.dismiss} />
      <p className={`verdict ${status}`}>
        <Mark status={status} size_px={28} />
        <span>{open.assessment.headline}</span>
      </p>
      <div className={finished === undefined ? "answers one" : "answers two"}>
        {finished === undefined ? (
          <button type="button" className="yes filled" aria-busy={keeping.busy} onClick={() => void finish()}>
            {left.length === 0
              ? "Finish the walk"
              : `Finish; ${countOf(left.length, "thing").toLowerCase()} ${left.length === 1 ? "stays" : "stay"} open`}
          </button>
        ) : (
          <>
            <a className="yes filled" href={href({ at: "decide", registration })}>
              Go to Decide
            </a>
            <a href={href({ at: "start", registration })}>Another walk</a>
          </>
        )}
      </div>
    </>
  );
}
