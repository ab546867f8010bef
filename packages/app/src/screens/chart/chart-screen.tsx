import { useState } from "react";
import { saveFile } from "../../frame/save-file.ts";
import { PlainTitle } from "../../frame/title-block.tsx";
import type { KeepSnapshot } from "../../keep/contract.ts";
import { href } from "../../routes/route.ts";
import { keptOfAll } from "../../words/keeping.ts";
import { FromPaperPage } from "./from-paper.tsx";
import type { FromPaper } from "./wanted.ts";

/** Tables from paper by themselves: what is made is copied or saved as text for a book. */
export function ChartScreen({ snapshot }: { readonly snapshot: KeepSnapshot }) {
  const [made, setMade] = useState<FromPaper | null>(null);
  return (
    <div className="frame">
      <PlainTitle title="From paper" kept={keptOfAll(snapshot.status)} back={href({ at: "apron" })} />
      <main className="chart-page">
        {made === null ? null : <Made made={made} onBack={() => setMade(null)} />}
        <div hidden={made !== null}>
          <FromPaperPage heldAs="by itself" onTable={setMade} />
        </div>
      </main>
    </div>
  );
}

function Made({ made, onBack }: { readonly made: FromPaper; readonly onBack: () => void }) {
  const [copied, setCopied] = useState<"yes" | "no" | null>(null);
  const copy = () =>
    navigator.clipboard.writeText(made.yaml).then(
      () => setCopied("yes"),
      () => setCopied("no"), // the browser does not allow it: the text stands there to be copied by hand
    );
  return (
    <section className="chart-section">
      <h2>For the book</h2>
      <p className="chart-note">
        It belongs under <code>{made.at.join(": ")}</code>, as one more of the list.
      </p>
      <textarea className="chart-paste" readOnly value={made.yaml} aria-label="The text for the book" />
      <div className="row-of-buttons">
        <button type="button" className="button filled" onClick={() => void copy()}>
          Copy
        </button>
        <button
          type="button"
          className="button"
          onClick={() => saveFile(new Blob([made.yaml], { type: "text/yaml" }), `${made.value.id}.yaml`)}
        >
          Save as a file
        </button>
        <button type="button" className="button" onClick={onBack}>
          Back to the paper
        </button>
      </div>
      <p role="status" className="chart-note">
        {copied === "yes"
          ? "Copied."
          : copied === "no"
            ? "This browser does not copy: mark the text and copy it."
            : ""}
      </p>
    </section>
  );
}
