import { useState } from "react";
import type { OpenAircraft } from "../../frame/open-aircraft.ts";
import { Popup } from "../../frame/popup.tsx";
import { turnOf } from "../../walk/order/walk-turn.ts";
import type { WalkView } from "../../walk/walk-view.ts";
import { TwoOfUs } from "./two-of-us.tsx";
import "./order.css";

interface WalksTooProps {
  readonly open: OpenAircraft;
  readonly view: WalkView;
}

/** Says that another person is at this walk, as long as it is not shared, and shares it. */
export function WalksToo({ open, view }: WalksTooProps) {
  const [sharing, setSharing] = useState(false);
  const [alone, setAlone] = useState("");
  const { walk } = view;
  if (turnOf(walk.id)?.half !== undefined || alone === walk.id || view.left === 0) return null;
  const other = view.steps
    .map(({ answer }) => answer?.author)
    .find((by) => by !== undefined && by.id !== open.person.id);
  const by = walk.author.id === open.person.id ? other : walk.author;
  if (by === undefined || walk.finished !== undefined) return null;
  return (
    <div className="walks-too">
      <span>
        <b>{by.name}</b> {walk.author.id === by.id ? "began this walk" : "walks it too"}
      </span>
      <button type="button" aria-haspopup="dialog" onClick={() => setSharing(true)}>
        Share it
      </button>
      <button type="button" aria-label="Walk on as it is" onClick={() => setAlone(walk.id)}>
        No
      </button>
      {sharing ? (
        <Popup title="Two of us" onClose={() => setSharing(false)}>
          <TwoOfUs open={open} view={view} onDone={() => setSharing(false)} />
        </Popup>
      ) : null}
    </div>
  );
}
