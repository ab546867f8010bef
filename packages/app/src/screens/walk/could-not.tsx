import type { CouldNotReason } from "@witnessmark/ledger";
import { useState } from "react";
import { onTap } from "../../frame/on-tap.ts";
import { Trouble } from "../../frame/trouble.tsx";
import { Mark } from "../../marks/mark.tsx";
import { REASON_WORDS, REASONS } from "../../words/answers.ts";
import type { CheckCardProps } from "./check-card-props.ts";
import { PanelHead } from "./panel-head.tsx";

/** Why not, in a tap. It stays open and comes back; nothing is let pass. */
export function CouldNot(props: CheckCardProps & { readonly onBack: () => void }) {
  const { view, check, sayer } = props;
  const [reason, setReason] = useState<CouldNotReason | null>(null);
  const [asked, setAsked] = useState(false);
  const keep = () => {
    setAsked(true);
    if (reason === null) return;
    void sayer.say([
      {
        type: "check.answered",
        body: { walk: view.walk.id, check: check.id, answer: "could-not-check", reason },
      },
    ]);
  };
  return (
    <>
      <div className="card-in panel">
        <PanelHead {...props} title="Why not?" />
        <fieldset className="choices">
          <legend className="out-of-sight">Why it could not be checked</legend>
          {REASONS.map((each) => (
            <button key={each} type="button" aria-pressed={each === reason} onClick={() => setReason(each)}>
              {REASON_WORDS[each]}
            </button>
          ))}
        </fieldset>
      </div>
      <Trouble words={sayer.trouble} onDismiss={sayer.dismiss} />
      <p className="verdict open" role="status">
        <Mark status="open" size_px={28} />
        <span>
          {asked && reason === null
            ? "Choose a reason first."
            : "Stays open. Comes back at the end of the walk."}
        </span>
      </p>
      <div className="answers one">
        <button type="button" className="yes filled" aria-busy={sayer.busy} {...onTap(keep)}>
          Keep it open
        </button>
      </div>
    </>
  );
}
