import { useState } from "react";
import { onTap } from "../../frame/on-tap.ts";
import { Trouble } from "../../frame/trouble.tsx";
import type { Draft } from "../../keep/contract.ts";
import { useKeep } from "../../keep/react.ts";
import { Mark } from "../../marks/mark.tsx";
import { answered } from "../../walk/answered.ts";
import { putOff } from "../../walk/put-off.ts";
import type { CheckCardProps } from "./check-card-props.ts";
import { PanelHead } from "./panel-head.tsx";
import { PhotoButton } from "./photo-button.tsx";
import type { ReadingInHand } from "./use-reading.ts";

interface PhotoAskedProps extends CheckCardProps {
  /** Asked by this walk, and not by the book. */
  readonly byChance: boolean;
  readonly reading: ReadingInHand | null;
  readonly onBack: () => void;
}

/** A check whose evidence is a photo: it is taken, or the reason why not is written beside the answer. */
export function PhotoAsked(props: PhotoAskedProps) {
  const { view, check, sayer, reading, byChance } = props;
  const keep = useKeep();
  const [photo, setPhoto] = useState<File | null>(null);
  const [reason, setReason] = useState("");
  const [asked, setAsked] = useState(false);
  const subject = { kind: "check", id: check.id } as const;
  const take = (file: File) => {
    keep.preparePhoto(file);
    setPhoto(file);
  };
  const save = async () => {
    setAsked(true);
    if (photo === null && reason.trim() === "") return;
    const note = photo === null ? [whyNone(byChance, view.walk.id, check.id, reason.trim())] : [];
    if (photo === null && !byChance) putOff(view.walk.id, check.id);
    const kept = await sayer.say(
      [...(reading?.drafts() ?? []), answered(view.walk.id, check.id, "as-it-should-be"), ...note],
      photo === null ? {} : { photo: { subject, file: photo } },
    );
    if (kept) reading?.settle();
  };
  return (
    <>
      <div className="card-in panel">
        <PanelHead {...props} title={byChance ? "This walk asks for a photo" : "The book asks for a photo"} />
        <p className="panel-text">{check.shouldBe}</p>
        <label className="field in-words">
          <span>No photo? Say why</span>
          <input value={reason} onChange={(event) => setReason(event.target.value)} maxLength={300} />
        </label>
      </div>
      <Trouble words={sayer.trouble} onDismiss={sayer.dismiss} />
      <p className="verdict open" role="status">
        <Mark status="open" size_px={28} />
        <span>
          {photo !== null
            ? "Photo taken. It is kept with the answer."
            : asked
              ? "A photo, or a reason why not."
              : byChance
                ? "Drawn by chance, by hazard and how long since it was shown"
                : "Without the photo it stays open"}
        </span>
      </p>
      <div className="answers two">
        <PhotoButton label={photo === null ? "Photo" : "Another photo"} onPhoto={take} />
        <button type="button" className="filled" aria-busy={sayer.busy} {...onTap(() => void save())}>
          As it should be
        </button>
      </div>
    </>
  );
}

/** What is kept instead of a photo: a draw is declined; what the book asks for stays open, with a note that says why. */
const whyNone = (byChance: boolean, walk: string, check: string, why: string): Draft =>
  byChance
    ? { type: "evidence.declined", body: { walk, check, why } }
    : { type: "note.written", body: { subject: { kind: "check", id: check }, text: `No photo: ${why}` } };
