import { type Assessment, decisionBody, decisionNeeds } from "@witnessmark/assess";
import { type Decision, newId } from "@witnessmark/ledger";
import { STANDING_CAUTION } from "@witnessmark/sheet";
import { useState } from "react";
import type { OpenAircraft } from "../../frame/open-aircraft.ts";
import { Trouble } from "../../frame/trouble.tsx";
import { useKeeping } from "../../frame/use-keeping.ts";
import { useKeep } from "../../keep/react.ts";
import { tally } from "../../words/figures.ts";
import { personText, ROLE_NAMES } from "../../words/people.ts";
import { notCountedText } from "./not-counted.ts";
import { NotGoing } from "./not-going.tsx";
import { NO_REASONS } from "./reasons.ts";
import { asksText } from "./summary-words.ts";
import { WhyGo } from "./why-go.tsx";

interface SignProps {
  readonly open: OpenAircraft;
  readonly onSigned: (decision: string) => void;
}

/** The assessment as it was when an answer was tapped: what is signed is what was shown, a later one is another. */
interface Asking {
  readonly answer: Decision["answer"];
  readonly assessment: Assessment;
}

interface Given {
  readonly reasons: Decision["reasons"];
  readonly words?: string;
}

/** The standing caution, who signs, what it rests on, and the two answers. */
export function Sign({ open, onSigned }: SignProps) {
  const { assessment, person, book, registration, state } = open;
  const keep = useKeep();
  const keeping = useKeeping();
  const [asking, setAsking] = useState<Asking | null>(null);
  const [reasons, setReasons] = useState(NO_REASONS);
  const { counts, restsOn } = assessment;
  const hold = counts.stop > 0 || counts.open > 0;
  const asks = asksText(counts);
  const notCounted = notCountedText(assessment, state);

  const sign = async ({ answer, assessment: shown }: Asking, given: Given) => {
    const decision = newId();
    const kept = await keeping.keep(async () => {
      const body = await decisionBody({ assessment: shown, decision, answer, ...given });
      await keep.append(registration, [{ type: "decision.signed", body }]);
    });
    if (!kept) return;
    setAsking(null);
    setReasons(NO_REASONS);
    onSigned(decision);
  };
  const go = () => {
    const going: Asking = { answer: "go", assessment };
    if (decisionNeeds(assessment, "go").length > 0) setAsking(going);
    else void sign(going, { reasons: [] });
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
      {notCounted === undefined ? null : <p className="sign-note">{notCounted}</p>}
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
          onClick={() => setAsking({ answer: "not-going", assessment })}
        >
          Not going yet
        </button>
        <button type="button" className={hold ? undefined : "filled"} aria-busy={keeping.busy} onClick={go}>
          Go
          {asks === "" ? null : <small>{asks}</small>}
        </button>
      </div>
      {asking?.answer === "not-going" ? (
        <NotGoing
          who={personText(person)}
          busy={keeping.busy}
          trouble={keeping.trouble}
          onSign={(words) => void sign(asking, { reasons: [], words })}
          onClose={() => setAsking(null)}
        />
      ) : null}
      {asking?.answer === "go" ? (
        <WhyGo
          assessment={asking.assessment}
          reasons={reasons}
          busy={keeping.busy}
          trouble={keeping.trouble}
          onReasons={setReasons}
          onSign={(given) => sign(asking, { reasons: given })}
          onClose={() => setAsking(null)}
        />
      ) : null}
    </section>
  );
}
