import { packOf } from "@witnessmark/assess";
import type { Discrepancy } from "@witnessmark/ledger";
import { type FormEvent, useState } from "react";
import type { OpenAircraft } from "../../frame/open-aircraft.ts";
import { Popup } from "../../frame/popup.tsx";
import { Trouble } from "../../frame/trouble.tsx";
import { useKeeping } from "../../frame/use-keeping.ts";
import { useKeep } from "../../keep/react.ts";
import { newRelease, ReleasePart, releasedBody } from "./release-part.tsx";

interface SayReleaseProps {
  readonly open: OpenAircraft;
  readonly discrepancy: Discrepancy;
}

/** For what was put right and is not released yet, or of which nobody said on which authority. */
export function SayRelease({ open, discrepancy }: SayReleaseProps) {
  const [asking, setAsking] = useState(false);
  if (packOf(open.flight).release === undefined) return null;
  return (
    <>
      <button type="button" onClick={() => setAsking(true)}>
        <b>Say who released it</b>
        <span>By whom, and on which authority (ML.A.801, ML.A.803)</span>
      </button>
      {asking ? <ReleaseForm open={open} discrepancy={discrepancy} onClose={() => setAsking(false)} /> : null}
    </>
  );
}

function ReleaseForm({ open, discrepancy, onClose }: SayReleaseProps & { readonly onClose: () => void }) {
  const keep = useKeep();
  const keeping = useKeeping();
  const [by, setBy] = useState(discrepancy.closings.at(-1)?.releasedBy ?? "");
  const [draft, setDraft] = useState(() => newRelease(packOf(open.flight)));
  const [asked, setAsked] = useState(false);
  const missing = by.trim() === "" || (draft.pack.release !== undefined && draft.as === undefined);
  const send = async (event: FormEvent) => {
    event.preventDefault();
    setAsked(true);
    const body = releasedBody(discrepancy.id, by.trim(), draft);
    if (missing || body === undefined) return;
    const kept = await keeping.keep(() =>
      keep.append(open.registration, [{ type: "discrepancy.released", body }]),
    );
    if (kept) onClose();
  };
  return (
    <Popup title={discrepancy.words} onClose={onClose}>
      <form className="popup-body" onSubmit={(event) => void send(event)} noValidate>
        <label className="field">
          <span>Released by</span>
          <input
            value={by}
            onChange={(event) => setBy(event.target.value)}
            maxLength={200}
            autoComplete="off"
          />
        </label>
        <ReleasePart open={open} draft={draft} onDraft={setDraft} />
        {asked && missing ? (
          <p className="trouble" role="alert">
            Say who released it, and on which authority; “Not known” is an answer.
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
