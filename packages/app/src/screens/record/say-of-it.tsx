import type { Discrepancy } from "@witnessmark/ledger";
import { type FormEvent, useState } from "react";
import type { OpenAircraft } from "../../frame/open-aircraft.ts";
import { Popup } from "../../frame/popup.tsx";
import { Trouble } from "../../frame/trouble.tsx";
import { useKeeping } from "../../frame/use-keeping.ts";
import { useKeep } from "../../keep/react.ts";

interface SayOfItProps {
  readonly open: OpenAircraft;
  readonly discrepancy: Discrepancy;
  readonly what: "assessed" | "reopened";
}

const TEXTS = {
  assessed: {
    act: "Say what it is",
    under: "Which equipment, and what was found",
    label: "What was found",
    missing: "Write what was found first.",
  },
  reopened: {
    act: "Open it again",
    under: "It came back, or was never right",
    label: "What is not right again",
    missing: "Write what is not right again first.",
  },
} as const;

/** Says what a discrepancy is, or that it is there again. */
export function SayOfIt({ open, discrepancy, what }: SayOfItProps) {
  const [asking, setAsking] = useState(false);
  const texts = TEXTS[what];
  return (
    <>
      <button type="button" onClick={() => setAsking(true)}>
        <b>{texts.act}</b>
        <span>{texts.under}</span>
      </button>
      {asking ? (
        <Form open={open} discrepancy={discrepancy} what={what} onClose={() => setAsking(false)} />
      ) : null}
    </>
  );
}

function Form({ open, discrepancy, what, onClose }: SayOfItProps & { readonly onClose: () => void }) {
  const keep = useKeep();
  const keeping = useKeeping();
  const [words, setWords] = useState("");
  const [equipment, setEquipment] = useState(discrepancy.assessments.at(-1)?.equipment ?? "");
  const [asked, setAsked] = useState(false);
  const texts = TEXTS[what];
  const said = words.trim();
  const send = async (event: FormEvent) => {
    event.preventDefault();
    setAsked(true);
    if (said === "") return;
    const { id } = discrepancy;
    const kept = await keeping.keep(() =>
      keep.append(open.registration, [
        what === "reopened"
          ? { type: "discrepancy.reopened", body: { discrepancy: id, words: said } }
          : {
              type: "discrepancy.assessed",
              body: { discrepancy: id, words: said, ...(equipment === "" ? {} : { equipment }) },
            },
      ]),
    );
    if (kept) onClose();
  };
  return (
    <Popup title={discrepancy.words} onClose={onClose}>
      <form className="popup-body" onSubmit={(event) => void send(event)} noValidate>
        {what === "assessed" ? (
          <label className="field">
            <span>Equipment of the book</span>
            <select value={equipment} onChange={(event) => setEquipment(event.target.value)}>
              <option value="">None of the list</option>
              {open.book.equipment.map(({ id, name }) => (
                <option key={id} value={id}>
                  {name}
                </option>
              ))}
            </select>
          </label>
        ) : null}
        <label className="field">
          <span>{texts.label}</span>
          <textarea value={words} onChange={(event) => setWords(event.target.value)} maxLength={1000} />
        </label>
        {asked && said === "" ? (
          <p className="trouble" role="alert">
            {texts.missing}
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
