import { packOf } from "@witnessmark/assess";
import type { Discrepancy } from "@witnessmark/ledger";
import { type FormEvent, useState } from "react";
import type { OpenAircraft } from "../../frame/open-aircraft.ts";
import { Popup } from "../../frame/popup.tsx";
import { Trouble } from "../../frame/trouble.tsx";
import { useKeeping } from "../../frame/use-keeping.ts";
import { useKeep } from "../../keep/react.ts";
import { newRelease, ReleasePart, releasedBody } from "../record/release-part.tsx";

interface PutRightProps {
  readonly open: OpenAircraft;
  readonly discrepancy: Discrepancy;
  readonly wayOut: string;
}

type How = "put-right" | "no-fault-found";

/** Closes a discrepancy: what was done, and who released it, as the work order has it. */
export function PutRight({ open, discrepancy, wayOut }: PutRightProps) {
  const [asking, setAsking] = useState(false);
  return (
    <>
      <button type="button" onClick={() => setAsking(true)}>
        <b>Put it right</b>
        <span>
          {wayOut.replace(/^Put it right:\s*/i, "").replace(/^./, (letter) => letter.toUpperCase())}
        </span>
      </button>
      {asking ? (
        <PutRightForm open={open} discrepancy={discrepancy} onClose={() => setAsking(false)} />
      ) : null}
    </>
  );
}

function PutRightForm({
  open,
  discrepancy,
  onClose,
}: Omit<PutRightProps, "wayOut"> & { readonly onClose: () => void }) {
  const keep = useKeep();
  const keeping = useKeeping();
  const [how, setHow] = useState<How>("put-right");
  const [words, setWords] = useState("");
  const [by, setBy] = useState("");
  const [asked, setAsked] = useState(false);
  const [release, setRelease] = useState(() => newRelease(packOf(open.flight)));
  const asksRelease = how === "put-right" && release.pack.release !== undefined;
  const missing = words.trim() === "" || by.trim() === "" || (asksRelease && release.as === undefined);
  const send = async (event: FormEvent) => {
    event.preventDefault();
    setAsked(true);
    if (missing) return;
    const released = asksRelease ? releasedBody(discrepancy.id, by.trim(), release) : undefined;
    const kept = await keeping.keep(() =>
      keep.append(open.registration, [
        {
          type: "discrepancy.closed",
          body: { discrepancy: discrepancy.id, how, words: words.trim(), releasedBy: by.trim() },
        },
        ...(released === undefined ? [] : [{ type: "discrepancy.released" as const, body: released }]),
      ]),
    );
    if (kept) onClose();
  };
  return (
    <Popup title={discrepancy.words} onClose={onClose}>
      <form className="popup-body" onSubmit={(event) => void send(event)} noValidate>
        <fieldset className="choices">
          <legend className="out-of-sight">How it ended</legend>
          <button type="button" aria-pressed={how === "put-right"} onClick={() => setHow("put-right")}>
            Put right
          </button>
          <button
            type="button"
            aria-pressed={how === "no-fault-found"}
            onClick={() => setHow("no-fault-found")}
          >
            No fault found
          </button>
        </fieldset>
        <label className="field">
          <span>What was done</span>
          <textarea value={words} onChange={(event) => setWords(event.target.value)} maxLength={600} />
        </label>
        <label className="field">
          <span>Released by, as on the work order</span>
          <input
            value={by}
            onChange={(event) => setBy(event.target.value)}
            maxLength={120}
            autoComplete="off"
          />
        </label>
        {how === "put-right" ? <ReleasePart open={open} draft={release} onDraft={setRelease} /> : null}
        {asked && missing ? (
          <p className="trouble" role="alert">
            {asksRelease
              ? "All are needed: what was done, who released it, and on which authority; “Not known” is an answer."
              : "Both are needed: what was done, and who released it."}
          </p>
        ) : null}
        <Trouble words={keeping.trouble} />
        <button type="submit" className="button filled tall full" aria-busy={keeping.busy}>
          Keep it
        </button>
      </form>
    </Popup>
  );
}
