import {
  localDayOf,
  packOf,
  type ReliefAnswer,
  type ReliefSaid,
  reliefOf,
  reliefOnRecord,
  rulePacks,
} from "@witnessmark/assess";
import { type Bodies, type Discrepancy, newId } from "@witnessmark/ledger";
import { useState } from "react";
import type { OpenAircraft } from "../../frame/open-aircraft.ts";
import { Popup } from "../../frame/popup.tsx";
import { Trouble } from "../../frame/trouble.tsx";
import { useKeeping } from "../../frame/use-keeping.ts";
import { useKeep } from "../../keep/react.ts";
import { Mark } from "../../marks/mark.tsx";
import { href } from "../../routes/route.ts";
import { dayOfDate } from "../../words/dates.ts";
import { QUESTIONS } from "./relief-questions.ts";
import { RuledStepList } from "./ruled-step-list.tsx";

interface ReliefProps {
  readonly open: OpenAircraft;
  readonly discrepancy: Discrepancy;
}

/** Whether one may fly with it: every step of the rules, what is still to be answered, and the signature. */
export function Relief({ open, discrepancy }: ReliefProps) {
  const [asking, setAsking] = useState(false);
  const relief = reliefOnRecord(discrepancy);
  return (
    <>
      <button type="button" onClick={() => setAsking(true)}>
        <b>{relief === undefined ? "Fly with it?" : "Relief again"}</b>
        <span>Step by step through the rules: relief, its placard, its limits</span>
      </button>
      {relief === undefined ? null : <EndRelief open={open} discrepancy={discrepancy} relief={relief.id} />}
      {asking ? <ReliefForm open={open} discrepancy={discrepancy} onClose={() => setAsking(false)} /> : null}
    </>
  );
}

function ReliefForm({ open, discrepancy, onClose }: ReliefProps & { readonly onClose: () => void }) {
  const { book, flight, state } = open;
  const [packId, setPackId] = useState(packOf(flight).id);
  const [said, setSaid] = useState<ReliefSaid>({});
  const today = localDayOf(Date.now(), -new Date().getTimezoneOffset());
  const pack = rulePacks.get(packId) ?? packOf(flight);
  const answer = reliefOf({ book, discrepancy, flight, said, pack, state, today });
  return (
    <Popup title={discrepancy.words} onClose={onClose}>
      <div className="popup-body relief">
        <fieldset className="choices">
          <legend className="legend">Under which rules</legend>
          {[...rulePacks.values()].map((each) => (
            <button
              key={each.id}
              type="button"
              aria-pressed={each.id === packId}
              onClick={() => {
                setPackId(each.id);
                setSaid({});
              }}
            >
              {each.title}
            </button>
          ))}
        </fieldset>
        {answer === undefined ? (
          <p className="trouble" role="alert">
            Which piece of the book's equipment it is, is not known. Say so first, under “Say what it is”.
          </p>
        ) : (
          <Steps
            open={open}
            discrepancy={discrepancy}
            answer={answer}
            said={said}
            onSaid={setSaid}
            onClose={onClose}
          />
        )}
        <p className="record-caution">
          Relief is given by the rules, the approved lists and those whom they name, never by this program.
          Read the text itself; if in doubt, the aircraft stays.
        </p>
      </div>
    </Popup>
  );
}

interface StepsProps extends ReliefProps {
  readonly answer: ReliefAnswer;
  readonly said: ReliefSaid;
  readonly onSaid: (said: ReliefSaid) => void;
  readonly onClose: () => void;
}

function Steps({ open, discrepancy, answer, said, onSaid, onClose }: StepsProps) {
  const { ruling, equipment, listItem, broken } = answer;
  const barred = ruling.failing.length > 0 || broken.length > 0;
  const ask = askOf(answer, said);
  return (
    <>
      <p>
        {equipment.name}, by {ruling.path}
        {answer.until === undefined ? "" : `, until ${dayOfDate(answer.until)}`}
      </p>
      <RuledStepList steps={ruling.steps} />
      {listItem === undefined ? null : (
        <ul className="relief-provisos">
          {[...listItem.provisos, listItem.maintenance, listItem.operation]
            .filter((line) => line !== undefined)
            .map((line) => (
              <li key={line}>{line}</li>
            ))}
        </ul>
      )}
      {ask === undefined || broken.length > 0 || (ruling.failing.length > 0 && ask !== "action") ? null : (
        <Question ask={ask} answer={answer} said={said} onSaid={onSaid} />
      )}
      {barred ? (
        <p className="verdict stop" role="status">
          <Mark status="stop" size_px={28} />
          <span>
            {broken.map((line) => `${line}. `).join("")}
            No relief for this flight. It is put right, or a special permit is asked for: a way of its own.
          </span>
        </p>
      ) : null}
      {barred && answer.pack.id === "us-part-91" ? (
        <a className="button full" href={href({ at: "rules", question: "special-permit" })}>
          May a special flight permit be asked for?
        </a>
      ) : null}
      {said.placard === false && ask === undefined && !barred ? (
        <p className="verdict stop" role="status">
          <Mark status="stop" size_px={28} />
          <span>No relief without the placard. Fit it, then answer again.</span>
        </p>
      ) : null}
      {Object.keys(said).length === 0 ? null : (
        <button type="button" className="quiet" onClick={() => onSaid({})}>
          Answer again from the start
        </button>
      )}
      {ruling.allowed && !barred && ask === undefined && isPlacarded(answer, said) ? (
        <Sign open={open} discrepancy={discrepancy} answer={answer} said={said} onClose={onClose} />
      ) : null}
    </>
  );
}

const isPlacarded = ({ listItem }: ReliefAnswer, said: ReliefSaid): boolean =>
  listItem?.placard === undefined || said.placard === true;

/** What the rules want to know, then whether the list's own placard is there: no rule's step asks for that one. */
const askOf = (answer: ReliefAnswer, said: ReliefSaid): keyof ReliefSaid | undefined =>
  answer.ask ??
  (answer.listItem?.placard !== undefined && said.placard === undefined && answer.ruling.allowed
    ? "placard"
    : undefined);

interface QuestionProps {
  readonly ask: keyof ReliefSaid;
  readonly answer: ReliefAnswer;
  readonly said: ReliefSaid;
  readonly onSaid: (said: ReliefSaid) => void;
}

function Question({ ask, answer, said, onSaid }: QuestionProps) {
  const question = QUESTIONS[ask];
  return (
    <fieldset className="choices">
      <legend className="legend">{question.asks(answer)}</legend>
      {question.choices.map(({ label, value }) => (
        <button key={label} type="button" onClick={() => onSaid({ ...said, [ask]: value })}>
          {label}
        </button>
      ))}
    </fieldset>
  );
}

function Sign({ open, discrepancy, answer, said, onClose }: Omit<StepsProps, "onSaid">) {
  const keep = useKeep();
  const keeping = useKeeping();
  const [by, setBy] = useState(open.person.name);
  const [entry, setEntry] = useState("");
  const [asked, setAsked] = useState(false);
  const isRecorded = said.recorded === true;
  const sign = async () => {
    setAsked(true);
    if (by.trim() === "" || (isRecorded && entry.trim() === "")) return;
    const kept = await keeping.keep(() =>
      keep.append(open.registration, [
        { type: "discrepancy.relieved", body: bodyOf(discrepancy, answer, said, by.trim(), entry.trim()) },
      ]),
    );
    if (kept) onClose();
  };
  return (
    <>
      <label className="field">
        <span>Determined by</span>
        <input value={by} onChange={(event) => setBy(event.target.value)} maxLength={200} />
      </label>
      {asked && by.trim() === "" ? (
        <p className="trouble" role="alert">
          Say who determined it.
        </p>
      ) : null}
      {isRecorded ? (
        <label className="field">
          <span>What the maintenance record says of it</span>
          <textarea
            value={entry}
            onChange={(event) => setEntry(event.target.value)}
            rows={2}
            maxLength={400}
          />
        </label>
      ) : null}
      {asked && isRecorded && entry.trim() === "" ? (
        <p className="trouble" role="alert">
          Copy the entry, with its date and who signed it.
        </p>
      ) : null}
      {said.placard === true ? (
        <p className="relief-placard">
          <span className="out-of-sight">The placard: </span>
          {answer.placard}
        </p>
      ) : null}
      <Trouble words={keeping.trouble} />
      <button
        type="button"
        className="button filled tall full"
        aria-busy={keeping.busy}
        onClick={() => void sign()}
      >
        Sign the relief
      </button>
    </>
  );
}

function bodyOf(
  { id }: Discrepancy,
  { pack, equipment, ruling, notFor, until, listItem, placard }: ReliefAnswer,
  said: ReliefSaid,
  determinedBy: string,
  recordEntry: string,
): Bodies["discrepancy.relieved"] {
  const by = said.noHazardBy;
  return {
    discrepancy: id,
    relief: newId(),
    rulePack: pack.id,
    basis: `${pack.id === "us-part-91" ? "14 CFR " : ""}${ruling.path}`,
    equipment: equipment.id,
    steps: ruling.steps.map(({ rule, words, holds }) => ({ rule, words, holds: holds === true })),
    action: said.action ?? "none",
    ...(said.placard === true ? { placard } : {}),
    ...(said.recorded === true ? { recordEntry } : {}),
    determinedBy,
    as: by === undefined || by === "nobody" ? "pilot" : by,
    notFor: [...notFor],
    ...(until === undefined ? {} : { until }),
    ...(listItem === undefined ? {} : { category: listItem.category }),
  };
}

function EndRelief({ open, discrepancy, relief }: ReliefProps & { readonly relief: string }) {
  const keep = useKeep();
  const keeping = useKeeping();
  const end = () =>
    keeping.keep(() =>
      keep.append(open.registration, [
        {
          type: "discrepancy.reliefEnded",
          body: { discrepancy: discrepancy.id, relief, why: "Ended by a person before its time" },
        },
      ]),
    );
  return (
    <>
      <button type="button" aria-busy={keeping.busy} onClick={() => void end()}>
        <b>End the relief</b>
        <span>It stops flight again until it is put right</span>
      </button>
      <Trouble words={keeping.trouble} onDismiss={keeping.dismiss} />
    </>
  );
}
