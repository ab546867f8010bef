import { type Assessment, decisionBody, decisionFaults, decisionNeeds } from "@witnessmark/assess";
import { type Decision, newId } from "@witnessmark/ledger";
import { STANDING_CAUTION } from "@witnessmark/sheet";
import { useState } from "react";
import type { OpenAircraft } from "../../frame/open-aircraft.ts";
import { Popup } from "../../frame/popup.tsx";
import { Trouble } from "../../frame/trouble.tsx";
import { useKeeping } from "../../frame/use-keeping.ts";
import { useKeep } from "../../keep/react.ts";
import { Mark } from "../../marks/mark.tsx";
import { tally } from "../../words/figures.ts";
import { personText, ROLE_NAMES } from "../../words/people.ts";
import { asksText } from "./summary-words.ts";

type Reasons = Readonly<Record<string, { readonly words: string; readonly basis: string }>>;

interface SignProps {
  readonly open: OpenAircraft;
  readonly onSigned: (decision: string) => void;
}

/** The standing caution, who signs, what it rests on, and the two answers. */
export function Sign({ open, onSigned }: SignProps) {
  const { assessment, person, book, registration } = open;
  const keep = useKeep();
  const keeping = useKeeping();
  const [asking, setAsking] = useState<Assessment | null>(null);
  const [reasons, setReasons] = useState<Reasons>({});
  const { counts, restsOn } = assessment;
  const hold = counts.stop > 0 || counts.open > 0;
  const asks = asksText(counts);

  const sign = async (shown: Assessment, answer: Decision["answer"], given: Decision["reasons"]) => {
    const decision = newId();
    const kept = await keeping.keep(async () => {
      const body = await decisionBody({ assessment: shown, decision, answer, reasons: given });
      await keep.append(registration, [{ type: "decision.signed", body }]);
    });
    if (!kept) return;
    setAsking(null);
    setReasons({});
    onSigned(decision);
  };
  const go = () => {
    // what is signed is what is shown: a later assessment is another one
    if (decisionNeeds(assessment, "go").length > 0) setAsking(assessment);
    else void sign(assessment, "go", []);
  };
  return (
    <section className="sign" aria-label="Decision">
      <p className="standing-caution">
        {STANDING_CAUTION.replace("The pilot in command decides.", "You decide, as pilot in command.")}
      </p>
      <dl className="parts">
        <dt>Signs</dt>
        <dd>{personText(person)}, with this device’s key</dd>
        <dt>Rests on</dt>
        <dd>
          {tally(restsOn.checks, "check")}, {tally(restsOn.readings, "reading")}, book rev {book.revision}
        </dd>
      </dl>
      {person.role === "pilot" || person.role === "instructor" || person.role === "owner" ? null : (
        <p className="sign-note">
          {ROLE_NAMES[person.role]} holds this. The pilot in command signs: hand it over in Units and theme.
        </p>
      )}
      <Trouble words={keeping.trouble} onDismiss={keeping.dismiss} />
      <div className="acts">
        <button
          type="button"
          className={hold ? "filled" : undefined}
          aria-busy={keeping.busy}
          onClick={() => void sign(assessment, "not-going", [])}
        >
          Not going yet
        </button>
        <button type="button" className={hold ? undefined : "filled"} aria-busy={keeping.busy} onClick={go}>
          Go
          {asks === "" ? null : <small>{asks}</small>}
        </button>
      </div>
      {asking === null ? null : (
        <WhyGo
          assessment={asking}
          reasons={reasons}
          busy={keeping.busy}
          trouble={keeping.trouble}
          onReasons={setReasons}
          onSign={(given) => sign(asking, "go", given)}
          onClose={() => setAsking(null)}
        />
      )}
    </section>
  );
}

interface WhyGoProps {
  readonly assessment: Assessment;
  readonly reasons: Reasons;
  readonly busy: boolean;
  readonly trouble: string | null;
  readonly onReasons: (reasons: Reasons) => void;
  readonly onSign: (reasons: Decision["reasons"]) => Promise<void>;
  readonly onClose: () => void;
}

/** Go with something that is not clear: a reason for each, and for a stop the lawful basis by name. */
function WhyGo({ assessment, reasons, busy, trouble, onReasons, onSign, onClose }: WhyGoProps) {
  const needs = decisionNeeds(assessment, "go");
  const [asked, setAsked] = useState(false);
  const given: Decision["reasons"] = needs.flatMap((need) => {
    const said = reasons[need.verdict];
    if (said === undefined || said.words.trim() === "") return [];
    const basis = said.basis.trim();
    return [
      { verdict: need.verdict, words: said.words.trim(), ...(need.basis && basis !== "" ? { basis } : {}) },
    ];
  });
  const faults = decisionFaults(assessment, "go", given);
  const faultsOf = (verdict: string) => faults.filter((fault) => fault.verdict === verdict);
  const change = (verdict: string, part: Partial<Reasons[string]>) =>
    onReasons({ ...reasons, [verdict]: { words: "", basis: "", ...reasons[verdict], ...part } });
  const sign = () => {
    setAsked(true);
    if (faults.length === 0) void onSign(given);
  };
  return (
    <Popup title="Go, and why" onClose={onClose}>
      <form
        className="popup-body why-go"
        onSubmit={(event) => {
          event.preventDefault();
          sign();
        }}
        noValidate
      >
        {needs.map((need) => (
          <fieldset key={need.verdict} className={`why-one ${need.status}`}>
            <legend>
              <Mark status={need.status} size_px={24} />
              <b>{need.title}</b>
            </legend>
            <p>{need.says}</p>
            <label className="field">
              <span>Why you go with it</span>
              <input
                value={reasons[need.verdict]?.words ?? ""}
                onChange={(event) => change(need.verdict, { words: event.target.value })}
                maxLength={300}
                aria-invalid={asked && faultsOf(need.verdict).some(({ code }) => code === "no-reason")}
              />
            </label>
            {need.basis ? (
              <label className="field">
                <span>Lawful basis, by name</span>
                <input
                  value={reasons[need.verdict]?.basis ?? ""}
                  onChange={(event) => change(need.verdict, { basis: event.target.value })}
                  maxLength={200}
                  aria-invalid={asked && faultsOf(need.verdict).some(({ code }) => code === "no-basis")}
                />
              </label>
            ) : null}
            {asked && faultsOf(need.verdict).length > 0 ? (
              <p className="stop why-missing">
                {faultsOf(need.verdict)
                  .map(({ message }) => message)
                  .join(". ")}
                .
              </p>
            ) : null}
          </fieldset>
        ))}
        <p className="standing-caution">{STANDING_CAUTION}</p>
        {asked && faults.length > 0 ? (
          <p className="trouble" role="alert">
            {faults.length === 1 ? "One answer is missing." : `${faults.length} answers are missing.`}
          </p>
        ) : null}
        <Trouble words={trouble} />
        <button type="submit" className="button filled tall full" aria-busy={busy}>
          Sign: go
        </button>
      </form>
    </Popup>
  );
}
