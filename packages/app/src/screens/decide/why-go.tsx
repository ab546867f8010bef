import {
  type Assessment,
  type DecisionFault,
  type DecisionNeed,
  decisionFaults,
  decisionNeeds,
} from "@witnessmark/assess";
import type { Decision } from "@witnessmark/ledger";
import { ended, STANDING_CAUTION } from "@witnessmark/sheet";
import { useState } from "react";
import { Popup } from "../../frame/popup.tsx";
import { Trouble } from "../../frame/trouble.tsx";
import { useFirstFault } from "../../frame/use-first-fault.ts";
import { Mark } from "../../marks/mark.tsx";
import { countOf, tally } from "../../words/figures.ts";
import { givenReasons, parted, type TypedReasons } from "./reasons.ts";

interface WhyGoProps {
  readonly assessment: Assessment;
  readonly reasons: TypedReasons;
  readonly busy: boolean;
  readonly trouble: string | null;
  readonly onReasons: (reasons: TypedReasons) => void;
  readonly onSign: (reasons: Decision["reasons"]) => Promise<void>;
  readonly onClose: () => void;
}

type Typed = TypedReasons["each"][string];
const NOTHING: Typed = { words: "", basis: "" };

/**
 * Go with something that is not clear: a reason for each, and for a stop the lawful basis by name. Checks that are open
 * may share one reason; that confirms none of them.
 */
export function WhyGo({ assessment, reasons, busy, trouble, onReasons, onSign, onClose }: WhyGoProps) {
  const [asked, setAsked] = useState(0);
  const form = useFirstFault(asked);
  const both = parted(decisionNeeds(assessment, "go"), assessment);
  const given = givenReasons(both, reasons);
  const faults = decisionFaults(assessment, "go", given);
  const shown = asked === 0 ? [] : faults;
  const change = (verdict: string, part: Partial<Typed>) =>
    onReasons({
      ...reasons,
      each: { ...reasons.each, [verdict]: { ...NOTHING, ...reasons.each[verdict], ...part } },
    });
  const missing = missingOf(faults, both.unseen);
  return (
    <Popup title="Go, and why" onClose={onClose}>
      <form
        ref={form}
        className="popup-body why-go"
        onSubmit={(event) => {
          event.preventDefault();
          if (faults.length === 0) void onSign([...given]);
          else setAsked(asked + 1);
        }}
        noValidate
      >
        {both.single.map((need) => (
          <WhyOne
            key={need.verdict}
            need={need}
            typed={reasons.each[need.verdict] ?? NOTHING}
            faults={shown.filter(({ verdict }) => verdict === need.verdict)}
            onChange={(part) => change(need.verdict, part)}
          />
        ))}
        {both.unseen.length === 0 ? null : (
          <WhyUnseen
            unseen={both.unseen}
            reasons={reasons}
            faults={shown}
            onShared={(unseen) => onReasons({ ...reasons, unseen })}
            onChange={change}
          />
        )}
        <p className="standing-caution">{STANDING_CAUTION}</p>
        <div className="why-foot">
          {missing === 0 ? null : (
            <p className={asked === 0 ? undefined : "trouble"} role={asked === 0 ? undefined : "alert"}>
              {missing === 1 ? "One answer is missing." : `${missing} answers are missing.`}
            </p>
          )}
          <Trouble words={trouble} />
          <button type="submit" className="button filled tall full" aria-busy={busy}>
            Sign: go
          </button>
        </div>
      </form>
    </Popup>
  );
}

/** How many fields are still empty: what may share a reason is one. */
function missingOf(faults: readonly DecisionFault[], unseen: readonly DecisionNeed[]): number {
  const shared = new Set(unseen.map(({ verdict }) => verdict));
  const single = faults.filter(({ verdict }) => !shared.has(verdict)).length;
  return single + (faults.length > single ? 1 : 0);
}

interface WhyOneProps {
  readonly need: DecisionNeed;
  readonly typed: Typed;
  readonly faults: readonly DecisionFault[];
  readonly onChange: (part: Partial<Typed>) => void;
}

function WhyOne({ need, typed, faults, onChange }: WhyOneProps) {
  const lacks = (code: DecisionFault["code"]) => faults.some((fault) => fault.code === code);
  return (
    <fieldset className={`why-one ${need.status}`}>
      <legend>
        <Mark status={need.status} size_px={24} />
        <b>{need.title}</b>
      </legend>
      <p>{need.says}</p>
      <label className="field">
        <span>Why you go with it</span>
        <input
          value={typed.words}
          onChange={(event) => onChange({ words: event.target.value })}
          maxLength={300}
          aria-invalid={lacks("no-reason")}
        />
      </label>
      {need.basis ? (
        <label className="field">
          <span>Lawful basis, by name</span>
          <input
            value={typed.basis}
            onChange={(event) => onChange({ basis: event.target.value })}
            maxLength={200}
            aria-invalid={lacks("no-basis")}
          />
        </label>
      ) : null}
      {faults.length === 0 ? null : (
        <p className="stop why-missing">{faults.map(({ message }) => ended(message)).join(" ")}</p>
      )}
    </fieldset>
  );
}

interface WhyUnseenProps {
  readonly unseen: readonly DecisionNeed[];
  readonly reasons: TypedReasons;
  readonly faults: readonly DecisionFault[];
  readonly onShared: (words: string) => void;
  readonly onChange: (verdict: string, part: Partial<Typed>) => void;
}

/** Checks that nobody could look at: one reason for all that have none of their own. */
function WhyUnseen({ unseen, reasons, faults, onShared, onChange }: WhyUnseenProps) {
  const [isListed, setListed] = useState(false);
  const lacking = faults.filter((fault) => unseen.some(({ verdict }) => verdict === fault.verdict)).length;
  return (
    <fieldset className="why-one open">
      <legend>
        <Mark status="open" size_px={24} />
        <b>{countOf(unseen.length, "check")} not known</b>
      </legend>
      <p>Nothing is confirmed by a reason: each stays open on the record, with these words beside it.</p>
      <label className="field">
        <span>Why you go without them, the same for each</span>
        <input
          value={reasons.unseen}
          onChange={(event) => onShared(event.target.value)}
          maxLength={300}
          aria-invalid={lacking > 0}
        />
      </label>
      {lacking === 0 ? null : (
        <p className="stop why-missing">{tally(lacking, "check")} without a reason: say why you go.</p>
      )}
      <button
        type="button"
        className="why-fold chevron"
        aria-expanded={isListed}
        onClick={() => setListed(!isListed)}
      >
        Which they are, and another reason for one
      </button>
      {isListed ? (
        <ul className="why-list">
          {unseen.map(({ verdict, title, says }) => (
            <li key={verdict}>
              <label className="field">
                <span>
                  <b>{title}</b> {ended(says)}
                </span>
                <input
                  value={reasons.each[verdict]?.words ?? ""}
                  onChange={(event) => onChange(verdict, { words: event.target.value })}
                  placeholder={reasons.unseen}
                  maxLength={300}
                />
              </label>
            </li>
          ))}
        </ul>
      ) : null}
    </fieldset>
  );
}
