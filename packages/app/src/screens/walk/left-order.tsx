import { useState } from "react";
import type { OpenAircraft } from "../../frame/open-aircraft.ts";
import { Popup } from "../../frame/popup.tsx";
import { Trouble } from "../../frame/trouble.tsx";
import { useKeeping } from "../../frame/use-keeping.ts";
import { href } from "../../routes/route.ts";
import { go } from "../../routes/use-route.ts";
import { shortestLeft } from "../../walk/order/left-over.ts";
import { setTurn, turnOf } from "../../walk/order/walk-turn.ts";
import { aboutWords, timeLeft_s } from "../../walk/time-left.ts";
import type { WalkView } from "../../walk/walk-view.ts";
import { capital } from "../../words/capital.ts";
import { TwoOfUs } from "./two-of-us.tsx";
import "./order.css";

interface LeftOrderProps {
  readonly open: OpenAircraft;
  readonly view: WalkView;
}

/** How long what is left takes, and the order in which it is walked: from here, shared by two, or as it was. */
export function LeftOrder({ open, view }: LeftOrderProps) {
  const keeping = useKeeping();
  const [two, setTwo] = useState(false);
  const { registration } = open;
  if (view.left === 0) return null;
  const turn = turnOf(view.walk.id);
  const shorten = async () => {
    if (await keeping.keep(() => shortestLeft(open, view))) go({ at: "walk", registration });
  };
  return (
    <section className="left-order">
      <p>
        <b>{capital(aboutWords(timeLeft_s(open.book, open.state, view)))}</b> left
        {turn === undefined
          ? ""
          : turn.half === undefined
            ? ", the shortest way from where you were"
            : `, the ${turn.half === 0 ? "first" : "second"} half first`}
      </p>
      <Trouble words={keeping.trouble} onDismiss={keeping.dismiss} />
      <div className="left-order-ways">
        <button type="button" className="button" aria-busy={keeping.busy} onClick={() => void shorten()}>
          Shortest way from here
        </button>
        <button type="button" className="button" aria-haspopup="dialog" onClick={() => setTwo(true)}>
          Two of us
        </button>
        {turn === undefined ? (
          <a className="button" href={href({ at: "order", registration })}>
            Whole order
          </a>
        ) : (
          <button type="button" className="button" onClick={() => setTurn(null)}>
            As it was planned
          </button>
        )}
      </div>
      {two ? (
        <Popup title="Two of us" onClose={() => setTwo(false)}>
          <TwoOfUs open={open} view={view} onDone={() => go({ at: "walk", registration })} />
        </Popup>
      ) : null}
    </section>
  );
}
