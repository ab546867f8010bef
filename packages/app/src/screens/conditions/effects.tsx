import type { Verdict } from "@witnessmark/assess";
import { useState } from "react";
import { Mark } from "../../marks/mark.tsx";
import { Working } from "../decide/working.tsx";
import "../decide/decide.css";

/** What the conditions of a field do to the numbers: its verdicts, the working folded under each. */
export function Effects({ verdicts }: { readonly verdicts: readonly Verdict[] }) {
  return (
    <section className="cond-effects">
      <h2>What it does to the numbers</h2>
      {verdicts.length === 0 ? <p>Nothing yet: say the runway, and what the weather is.</p> : null}
      <ol className="verdicts">
        {verdicts.map((verdict) => (
          <Effect key={verdict.id} verdict={verdict} />
        ))}
      </ol>
    </section>
  );
}

function Effect({ verdict }: { readonly verdict: Verdict }) {
  const [unfolded, setUnfolded] = useState(false);
  const { status } = verdict;
  return (
    <li className={`row-${status}`}>
      <button
        type="button"
        className={status === "stop" ? "row row-wide" : "row"}
        aria-expanded={unfolded}
        onClick={() => setUnfolded(!unfolded)}
      >
        <Mark status={status} size_px={28} />
        <h3>{verdict.title}</h3>
        <span className={`margin ${status}`}>{verdict.margin?.text ?? ""}</span>
        <p>{verdict.says}</p>
        <span className="row-does chevron">Working</span>
      </button>
      {unfolded ? <Working verdict={verdict} /> : null}
      {verdict.status === "stop" ? (
        <div className="ways">
          <p>
            <b>Way out</b>
            <span>{verdict.wayOut.join(". ")}</span>
          </p>
        </div>
      ) : null}
    </li>
  );
}
