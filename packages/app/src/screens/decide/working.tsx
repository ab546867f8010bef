import type { Verdict } from "@witnessmark/assess";
import { ended } from "@witnessmark/sheet";
import { href } from "../../routes/route.ts";

/** How an answer was reached: every figure, the formula, and where it comes from. */
export function Working({ verdict }: { readonly verdict: Verdict }) {
  const { working, sources } = verdict;
  const because = verdict.status === "caution" || verdict.status === "stop" ? verdict.because : [];
  const missing = verdict.status === "open" ? verdict.missing : [];
  return (
    <div className="working">
      <dl>
        {working.lines.map((line) => (
          <div key={`${line.label}${line.value}`}>
            <dt>{line.label}</dt>
            <dd>{line.value}</dd>
          </div>
        ))}
      </dl>
      {missing.length === 0 ? null : <p>Missing: {missing.join(", ")}.</p>}
      {because.map((reason) => (
        <p key={reason}>{ended(reason)}</p>
      ))}
      {working.formula === undefined ? null : (
        <p className="formula">
          <a href={href({ at: "calculators", quantity: working.formula.quantity })}>{working.formula.text}</a>
        </p>
      )}
      {sources.length === 0 ? null : (
        <p className="sources">
          {sources
            .map((source) =>
              source.locator === undefined ? source.title : `${source.title}, ${source.locator}`,
            )
            .join(". ")}
          .
        </p>
      )}
    </div>
  );
}
