import { useState } from "react";
import { Popup } from "../../frame/popup.tsx";
import { Trouble } from "../../frame/trouble.tsx";

interface NotGoingProps {
  /** Who signs: "MK, pilot in command". */
  readonly who: string;
  readonly busy: boolean;
  readonly trouble: string | null;
  readonly onSign: (words: string) => void;
  readonly onClose: () => void;
}

/** Not going is a decision like the other one: signed, kept, and followed by another when things have changed. */
export function NotGoing({ who, busy, trouble, onSign, onClose }: NotGoingProps) {
  const [words, setWords] = useState("");
  return (
    <Popup title="Not going yet" onClose={onClose}>
      <form
        className="popup-body"
        onSubmit={(event) => {
          event.preventDefault();
          onSign(words);
        }}
        noValidate
      >
        <p>
          {who}, signs this. It goes on the record and stays there. To decide anew, come back to this page:
          the last decision is the one that counts.
        </p>
        <label className="field">
          <span>Why, if you like</span>
          <textarea value={words} onChange={(event) => setWords(event.target.value)} maxLength={300} />
        </label>
        <Trouble words={trouble} />
        <button type="submit" className="button filled tall full" aria-busy={busy}>
          Sign: not going
        </button>
      </form>
    </Popup>
  );
}
