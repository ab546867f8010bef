import { useState } from "react";
import type { OpenAircraft } from "../../frame/open-aircraft.ts";
import { Popup } from "../../frame/popup.tsx";
import { Trouble } from "../../frame/trouble.tsx";
import { useKeep } from "../../keep/react.ts";
import { href } from "../../routes/route.ts";
import { go } from "../../routes/use-route.ts";
import { leaving } from "../../walk/presence.ts";
import { putOff } from "../../walk/put-off.ts";
import { type StepView, stepName, type WalkView } from "../../walk/walk-view.ts";
import { PhotoButton } from "./photo-button.tsx";
import type { Sayer } from "./sayer.ts";

interface WalkMoreProps {
  readonly open: OpenAircraft;
  readonly view: WalkView;
  readonly inHand: StepView | undefined;
  readonly sayer: Sayer;
  readonly onClose: () => void;
}

/** What is wanted now and then: skip, note, photo, something happened, leaving, and the end of the walk. */
export function WalkMore({ open, view, inHand, sayer, onClose }: WalkMoreProps) {
  const keep = useKeep();
  const { registration } = open;
  const [noting, setNoting] = useState(false);
  const check = inHand?.step.kind === "check" ? inHand.step.check : undefined;
  const name = inHand === undefined ? "" : stepName(inHand.step, open.book.points);
  const subject =
    check === undefined
      ? ({ kind: "walk", id: view.walk.id } as const)
      : ({ kind: "check", id: check.id } as const);
  const about = check === undefined ? "this walk" : name;
  const aside = async (words: string, task: () => Promise<unknown>) => {
    if (await sayer.aside(words, task)) onClose();
  };
  const leave = () => {
    leaving.set({ registration, walk: view.walk.id, at_ms: Date.now() });
    onClose();
  };
  const skip = () => {
    if (inHand !== undefined) putOff(view.walk.id, inHand.step.id);
    go({ at: "walk", registration }, "replace");
    onClose();
  };
  if (noting) {
    return (
      <Popup title="Note" onClose={onClose}>
        <NoteForm
          about={about}
          busy={sayer.busy}
          trouble={sayer.trouble}
          onNote={(text) =>
            void aside(`Note on ${about}`, () =>
              keep.append(registration, [{ type: "note.written", body: { subject, text } }]),
            )
          }
        />
      </Popup>
    );
  }
  return (
    <Popup title="More" onClose={onClose}>
      <Trouble words={sayer.trouble} />
      <ul className="popup-list">
        {inHand === undefined ? null : (
          <li>
            <button type="button" onClick={skip}>
              Skip, come back
              <small>{name} comes back at the end of the walk</small>
            </button>
          </li>
        )}
        <li>
          <button type="button" onClick={() => setNoting(true)}>
            Note
            <small>In words, on {about}</small>
          </button>
        </li>
        <li>
          <PhotoButton
            label="Photo"
            onPhoto={(file) =>
              void aside(`Photo of ${about}`, () => keep.attachPhoto(registration, subject, file))
            }
          />
        </li>
        <li>
          <a href={href({ at: "left", registration })}>
            What is left
            <small>
              {view.left} of {view.steps.length}, by stance
            </small>
          </a>
        </li>
        {check === undefined ? null : (
          <li>
            <a href={href({ at: "point", registration, point: check.point })}>
              Its past
              <small>Results, readings and photos of {name}</small>
            </a>
          </li>
        )}
        <li>
          <a href={href({ at: "after", registration })}>
            It has flown
            <small>Hours, landings, what was filled up, where it stands</small>
          </a>
        </li>
        <li>
          <a href={href({ at: "happened", registration })}>
            Something happened
            <small>Fuelled, left alone, rain, frost, worked on</small>
          </a>
        </li>
        <li>
          <a href={href({ at: "start", registration })}>
            Another walk
            <small>Begins anew; this one stays as it is</small>
          </a>
        </li>
        <li>
          <button type="button" onClick={leave}>
            I am leaving
            <small>Marks the break; the last three looks are asked again</small>
          </button>
        </li>
        <li>
          <a href={href({ at: "aircraft", registration })}>
            Its book
            <small>Shape, checks and limits; the whole record as a file</small>
          </a>
        </li>
      </ul>
    </Popup>
  );
}

interface NoteFormProps {
  readonly about: string;
  readonly busy: boolean;
  readonly trouble: string | null;
  readonly onNote: (text: string) => void;
}

function NoteForm({ about, busy, trouble, onNote }: NoteFormProps) {
  const [text, setText] = useState("");
  return (
    <form
      className="popup-body"
      onSubmit={(event) => {
        event.preventDefault();
        if (text.trim() !== "") onNote(text.trim());
      }}
    >
      <label className="field">
        <span>On {about}</span>
        <textarea value={text} onChange={(event) => setText(event.target.value)} maxLength={1000} />
      </label>
      <Trouble words={trouble} />
      <button
        type="submit"
        className="button filled tall full"
        aria-busy={busy}
        disabled={text.trim() === ""}
      >
        Keep the note
      </button>
    </form>
  );
}
