import { AircraftFrame } from "../../frame/aircraft-frame.tsx";
import type { OpenAircraft } from "../../frame/open-aircraft.ts";
import { Trouble } from "../../frame/trouble.tsx";
import { useKeeping } from "../../frame/use-keeping.ts";
import { useKeep } from "../../keep/react.ts";
import { backTold, lastSeen, leaving, type Presence } from "../../walk/presence.ts";
import { lastTouched, stepName, type WalkView } from "../../walk/walk-view.ts";
import { clockTime, isoWithOffset } from "../../words/dates.ts";

interface AwayScreenProps {
  readonly open: OpenAircraft;
  readonly view: WalkView;
  readonly left: Presence;
}

/** The break made visible: it says so until the person says that they are back. */
export function AwayScreen({ open, view, left }: AwayScreenProps) {
  const keep = useKeep();
  const keeping = useKeeping();
  const last = lastTouched(view, open.state, open.person.id);
  const back = async () => {
    const kept = await keeping.keep(async () => {
      const [event] = await keep.append(open.registration, [
        {
          type: "walk.interrupted",
          body: {
            walk: left.walk,
            cause: "said",
            left: isoWithOffset(left.at_ms),
            back: isoWithOffset(Date.now()),
          },
        },
      ]);
      // this screen has told of it already
      if (event !== undefined) backTold.set(event.id);
    });
    if (!kept) return;
    lastSeen.set({ ...left, at_ms: Date.now() });
    leaving.set(null);
  };
  return (
    <AircraftFrame open={open} sheet="walk" title="Walk" under="Broken off">
      <main className="away">
        <h2>The walk is broken off</h2>
        <p>You left at {clockTime(left.at_ms)}.</p>
        {last === undefined ? null : (
          <p>
            Last confirmed: <b>{stepName(last.step, open.book.points)}</b>
            {last.answer === undefined ? "" : `, ${clockTime(Date.parse(last.answer.recordedAt))}`}, at stance{" "}
            {last.stop.number}.
          </p>
        )}
        <p>When you are back, the last three looks are asked again: a break is where things are missed.</p>
        <Trouble words={keeping.trouble} onDismiss={keeping.dismiss} />
        <button
          type="button"
          className="button filled tall full"
          aria-busy={keeping.busy}
          onClick={() => void back()}
        >
          I am back
        </button>
      </main>
    </AircraftFrame>
  );
}
