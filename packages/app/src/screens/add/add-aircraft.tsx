import type { BookFault } from "@witnessmark/book";
import type { PackFault } from "@witnessmark/pack";
import { type ChangeEvent, useState } from "react";
import { PlainTitle } from "../../frame/title-block.tsx";
import { Trouble } from "../../frame/trouble.tsx";
import { useKeeping } from "../../frame/use-keeping.ts";
import type { KeepSnapshot } from "../../keep/contract.ts";
import { useKeep } from "../../keep/react.ts";
import { href } from "../../routes/route.ts";
import { go } from "../../routes/use-route.ts";
import { keptOfAll } from "../../words/keeping.ts";
import { CopyOfABook, DraftsHere } from "../begin/drafts-here.tsx";
import { BookFaults } from "./book-faults.tsx";
import { PackFaults } from "./pack-faults.tsx";
import { readBookFile } from "./read-book-file.ts";
import "./add.css";

interface Outcome {
  readonly fileName: string;
  readonly faults: readonly BookFault[];
  /** Of the pack that the book came in. */
  readonly packFaults: readonly PackFault[];
}

/** Adds an aircraft from its book; every fault of the file is shown at once, with its place. */
export function AddAircraft({ snapshot }: { readonly snapshot: KeepSnapshot }) {
  return (
    <div className="frame">
      <PlainTitle title="Add an aircraft" kept={keptOfAll(snapshot.status)} back={href({ at: "apron" })} />
      <main className="page add">
        <DraftsHere />
        <section>
          <h2>From its book</h2>
          <p>
            A book is a text file (.yaml), or one with its pictures (.zip), that tells the aircraft’s shape,
            what to look at, what right looks like and its limits. One for an aircraft that is here already
            becomes its next revision.
          </p>
          <BookFile
            label="Choose a book"
            onAdopted={(registration) => go({ at: "aircraft", registration }, "replace")}
          />
        </section>
        <section>
          <h2>Without a book</h2>
          <p>
            A few figures of the aircraft draw it, with its points in their places and what is generally
            looked at there.
          </p>
          <a className="button tall full" href={href({ at: "begin" })}>
            Begin a book
          </a>
        </section>
        <CopyOfABook snapshot={snapshot} />
      </main>
      <footer className="plain-foot">
        <a className="button full tall" href={href({ at: "apron" })}>
          Back to the Apron
        </a>
      </footer>
    </div>
  );
}

interface BookFileProps {
  readonly label: string;
  readonly onAdopted: (registration: string) => void;
}

/** Takes a book from a file; says what was read, or all that is wrong with it. */
export function BookFile({ label, onAdopted }: BookFileProps) {
  const keep = useKeep();
  const keeping = useKeeping();
  const [outcome, setOutcome] = useState<Outcome | null>(null);
  const take = async (event: ChangeEvent<HTMLInputElement>) => {
    const input = event.currentTarget;
    const file = input.files?.[0];
    if (file === undefined) return;
    setOutcome(null);
    await keeping.keep(async () => {
      const read = await readBookFile(file);
      if ("packFaults" in read) {
        setOutcome({ fileName: file.name, faults: [], packFaults: read.packFaults });
        return;
      }
      const result = await keep.adoptBook(read.text, read.name, read.pictures);
      if ("faults" in result) setOutcome({ fileName: read.name, faults: result.faults, packFaults: [] });
      else onAdopted(result.registration);
    });
    // so that the same file can be chosen again once it is mended
    input.value = "";
  };
  return (
    <>
      <label className="button filled tall full file-button" aria-busy={keeping.busy}>
        {keeping.busy ? "Reading" : label}
        <input
          type="file"
          accept=".yaml,.yml,.zip,text/yaml,application/zip"
          onChange={(event) => void take(event)}
        />
      </label>
      <Trouble words={keeping.trouble} />
      {outcome === null ? null : outcome.packFaults.length > 0 ? (
        <PackFaults fileName={outcome.fileName} faults={outcome.packFaults} />
      ) : (
        <BookFaults fileName={outcome.fileName} faults={outcome.faults} />
      )}
    </>
  );
}
