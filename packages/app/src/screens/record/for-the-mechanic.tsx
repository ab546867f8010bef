import type { Discrepancy } from "@witnessmark/ledger";
import { type MechanicAnswer, readAnswer, workPaper } from "@witnessmark/record";
import { useId, useState } from "react";
import type { OpenAircraft } from "../../frame/open-aircraft.ts";
import { Popup } from "../../frame/popup.tsx";
import { saveFile } from "../../frame/save-file.ts";
import { Trouble } from "../../frame/trouble.tsx";
import { useKeeping } from "../../frame/use-keeping.ts";
import type { Keep } from "../../keep/contract.ts";
import { useKeep } from "../../keep/react.ts";
import { longDay } from "../../words/dates.ts";
import { lifeOf } from "./discrepancy-life.ts";

interface MechanicProps {
  readonly open: OpenAircraft;
  readonly discrepancy: Discrepancy;
}

const HOW = { "put-right": "Put right", "no-fault-found": "No fault found" } as const;

/** One discrepancy goes to a mechanic as a file, and what was done comes back as one; no net is needed for either. */
export function ForTheMechanic({ open, discrepancy }: MechanicProps) {
  const keep = useKeep();
  const keeping = useKeeping();
  const [asking, setAsking] = useState(false);
  const save = () =>
    keeping.keep(async () => {
      const page = await paperOf(open, discrepancy, keep);
      saveFile(
        new Blob([page], { type: "text/html" }),
        `${open.registration.toLowerCase()}-for-the-mechanic.html`,
      );
    });
  return (
    <>
      <button type="button" aria-busy={keeping.busy} onClick={() => void save()}>
        <b>For the mechanic</b>
        <span>Saves a page with all that is known of it, and a form for what was done</span>
      </button>
      <button type="button" onClick={() => setAsking(true)}>
        <b>Take in an answer</b>
        <span>The file that the mechanic sent back</span>
      </button>
      <Trouble words={keeping.trouble} onDismiss={keeping.dismiss} />
      {asking ? <TakeIn open={open} discrepancy={discrepancy} onClose={() => setAsking(false)} /> : null}
    </>
  );
}

/** @throws {Error} when a photo that is here cannot be read */
async function paperOf(
  { book, state, registration }: OpenAircraft,
  found: Discrepancy,
  keep: Keep,
): Promise<string> {
  const check = book.checks.find(({ id }) => id === found.check);
  const point = book.points.get(found.point ?? check?.point ?? "");
  const photos = state.photos.filter(
    ({ subject }) => subject.kind === "discrepancy" && subject.id === found.id,
  );
  const blobs = await Promise.all(photos.map(({ sha256 }) => keep.photo(sha256)));
  const addresses = await Promise.all(blobs.flatMap((blob) => (blob === null ? [] : [dataAddress(blob)])));
  const equipment = book.equipment.find(({ id }) => id === found.assessments.at(-1)?.equipment);
  return workPaper({
    registration,
    type: book.aircraft.type,
    bookRevision: book.revision,
    discrepancy: found.id,
    words: found.words,
    where: [point?.name, equipment?.name].filter((part) => part !== undefined).join("; ") || "Not said",
    jasc: found.jasc ?? equipment?.jasc,
    book:
      check === undefined
        ? []
        : [
            ["Found at", check.title],
            ["Should be", check.shouldBe],
            ["If missed", check.hazard.ifMissed],
          ],
    life: lifeOf(found, book),
    photos: addresses,
    madeOn: longDay(Date.now()),
  });
}

const dataAddress = (blob: Blob): Promise<string> =>
  new Promise((done, failed) => {
    const reader = new FileReader();
    reader.onload = () => done(String(reader.result));
    reader.onerror = () =>
      failed(new Error("A photo cannot be read. Try again, or save the page without a net."));
    reader.readAsDataURL(blob);
  });

function TakeIn({ open, discrepancy, onClose }: MechanicProps & { readonly onClose: () => void }) {
  const keep = useKeep();
  const keeping = useKeeping();
  const id = useId();
  const [found, setFound] = useState<MechanicAnswer | null>(null);
  const [fault, setFault] = useState<string | null>(null);
  const choose = async (file: File | undefined) => {
    if (file === undefined) return;
    const read = readAnswer(await file.text(), open.registration, discrepancy.id);
    setFound(read.ok ? read.answer : null);
    setFault(read.ok ? null : read.says);
  };
  const take = async (answer: MechanicAnswer) => {
    const { how, words, releasedBy } = answer;
    const kept = await keeping.keep(() =>
      keep.append(open.registration, [
        { type: "discrepancy.closed", body: { discrepancy: discrepancy.id, how, words, releasedBy } },
      ]),
    );
    if (kept) onClose();
  };
  return (
    <Popup title="Take in an answer" onClose={onClose}>
      <div className="popup-body">
        <label className="field" htmlFor={id}>
          <span>The file that was sent back</span>
          <input
            id={id}
            type="file"
            accept=".json,application/json"
            onChange={(event) => void choose(event.target.files?.[0])}
          />
        </label>
        {fault === null ? null : (
          <p className="trouble" role="alert">
            {fault}
          </p>
        )}
        {found === null ? null : (
          <>
            <p role="status">
              <b>{HOW[found.how]}.</b> {found.words}. Released by {found.releasedBy}.
            </p>
            <p className="record-caution">
              Nothing proves who wrote this file. Compare it with the maintenance record before you take it
              in: the entry is yours.
            </p>
            <Trouble words={keeping.trouble} />
            <button
              type="button"
              className="button filled tall full"
              aria-busy={keeping.busy}
              onClick={() => void take(found)}
            >
              Take it in
            </button>
          </>
        )}
      </div>
    </Popup>
  );
}
