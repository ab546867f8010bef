import { type FollowedItem, type PilotItem, packOf, rulePacks } from "@witnessmark/assess";
import { type FormEvent, useState } from "react";
import type { OpenAircraft } from "../../frame/open-aircraft.ts";
import { Mark } from "../../marks/mark.tsx";
import { href } from "../../routes/route.ts";
import { KeepRow, useKeptHere } from "../after/keep-and-undo.tsx";
import { followDrafts } from "./done-drafts.ts";
import { DoneForm } from "./done-form.tsx";
import { offersOf } from "./pilot-offers.ts";
import "./timed.css";

/** The pilot's own items of a rule pack that nobody follows yet: a licence goes by its own rules wherever it is flown. */
export function ToFollow({ open }: { readonly open: OpenAircraft }) {
  const [pack, setPack] = useState(packOf(open.flight).id);
  const offers = offersOf(open, pack);
  return (
    <details className="to-follow">
      <summary>
        <b>Your own, not followed yet</b>
        <span>Flight review, medical, recency</span>
      </summary>
      <label className="field">
        <span>Your licence is by the rules of</span>
        <select value={pack} onChange={({ target }) => setPack(target.value)}>
          {[...rulePacks.values()].map(({ id, title }) => (
            <option key={id} value={id}>
              {title}
            </option>
          ))}
        </select>
      </label>
      {offers.length === 0 ? (
        <p className="record-none">All that these rules ask of you is followed.</p>
      ) : null}
      <ul>
        {offers.map(({ item, onlyFor }) => (
          <li key={item.id}>
            <a href={href({ at: "timed", registration: open.registration, item: item.id })}>
              <b>{item.name}</b>
              <span>
                {[item.rule, onlyFor === undefined ? undefined : `for ${onlyFor}`].filter(Boolean).join(", ")}
              </span>
            </a>
          </li>
        ))}
      </ul>
    </details>
  );
}

interface FollowItProps {
  readonly open: OpenAircraft;
  readonly offered: PilotItem;
}

/** One that is offered: what it is, and what has to be said for it to be answered from now on. */
export function FollowIt({ open, offered: { item, onlyFor } }: FollowItProps) {
  const kept = useKeptHere(open.registration);
  const follow = async (event: FormEvent) => {
    event.preventDefault();
    await kept.keepAll(followDrafts({ item, offered: item }), `${item.name} is followed.`);
  };
  return (
    <>
      <div className="one-head timed-head row-open">
        <div>
          <span className="discrepancy-head">
            <Mark status="open" size_px={28} />
            <h2>{item.name}</h2>
            <b className="open">not followed</b>
          </span>
          <p>
            {item.rule}
            {onlyFor === undefined ? "" : `, for ${onlyFor}`}
          </p>
          <p className="record-small">{item.why}</p>
        </div>
      </div>
      <p className="one-section record-small">
        Once it is followed, every pilot of {open.registration} is asked for their own; for one who has said
        nothing its answer is open.
      </p>
      {item.counts === undefined ? (
        <DoneForm open={open} followed={{ item, offered: item }} />
      ) : (
        <section className="one-section">
          <form className="done-form" onSubmit={(event) => void follow(event)} noValidate>
            <p className="record-small">
              The flights made with {open.registration} count by themselves; what you flew elsewhere you write
              down next.
            </p>
            <KeepRow kept={kept} act="Follow it" fault={null} />
          </form>
        </section>
      )}
    </>
  );
}

/** What a person added can be left again, with a reason; the book's own items are changed in the book. */
export function NoLongerFollowed({
  open,
  item,
}: {
  readonly open: OpenAircraft;
  readonly item: FollowedItem;
}) {
  const kept = useKeptHere(open.registration);
  const [why, setWhy] = useState("");
  const [fault, setFault] = useState<string | null>(null);
  const send = async (event: FormEvent) => {
    event.preventDefault();
    const reason = why.trim();
    setFault(reason === "" ? "Say why it need not be followed any more." : null);
    if (reason === "") return;
    await kept.keepAll(
      [{ type: "timedItem.dropped", body: { item: item.id, why: reason } }],
      `${item.name} is no longer followed.`,
    );
  };
  return (
    <section className="one-section">
      <details>
        <summary className="button">No longer follow it</summary>
        <form className="done-form" onSubmit={(event) => void send(event)} noValidate>
          <label className="field">
            <span>Why</span>
            <input value={why} maxLength={400} onChange={(event) => setWhy(event.target.value)} />
          </label>
          <KeepRow kept={kept} act="Leave it" fault={fault} />
        </form>
      </details>
    </section>
  );
}
