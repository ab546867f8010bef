import { type FormEvent, useState } from "react";
import { Trouble } from "../../frame/trouble.tsx";
import { useKeeping } from "../../frame/use-keeping.ts";
import { useKeep } from "../../keep/react.ts";

interface TakeBackProps {
  readonly registration: string;
  /** The event that was wrong; it stays on the record beside its withdrawal. */
  readonly event: string;
  /** What it is, for one who does not see where the button stands: "50-hour oil change, 14 Nov". */
  readonly what: string;
}

/** Takes back what was written down wrongly, however long ago: it counts no more, and the record keeps both. */
export function TakeBack({ registration, event, what }: TakeBackProps) {
  const keep = useKeep();
  const keeping = useKeeping();
  const [why, setWhy] = useState("");
  const [asked, setAsked] = useState(false);
  const send = async (submitted: FormEvent) => {
    submitted.preventDefault();
    setAsked(true);
    if (why.trim() === "") return;
    await keeping.keep(() =>
      keep.append(registration, [{ type: "event.withdrawn", body: { event, why: why.trim() } }]),
    );
  };
  return (
    <details className="take-back">
      <summary className="quiet">
        Written down wrongly<span className="out-of-sight">: {what}</span>
      </summary>
      <form onSubmit={(submitted) => void send(submitted)} noValidate>
        <label className="field">
          <span>What was wrong</span>
          <input
            value={why}
            maxLength={200}
            aria-invalid={asked && why.trim() === ""}
            onChange={({ target }) => setWhy(target.value)}
          />
        </label>
        {asked && why.trim() === "" ? (
          <p className="trouble" role="alert">
            Say in a word or two what was wrong: it stays on the record.
          </p>
        ) : null}
        <Trouble words={keeping.trouble} onDismiss={keeping.dismiss} />
        <button type="submit" className="button full" aria-busy={keeping.busy}>
          Take it back
        </button>
      </form>
    </details>
  );
}
