import type { RuledStep } from "@witnessmark/assess";
import { Mark } from "../../marks/mark.tsx";
import "./ruled-step-list.css";

/** The mark of what holds, does not, or is not known. */
export const statusOf = (holds: RuledStep["holds"]) =>
  holds === true ? "clear" : holds === false ? "stop" : "open";
const STEP_WORDS = { clear: "holds", stop: "does not hold", open: "not known yet" } as const;

/** Every step of a rule, as it stands. */
export function RuledStepList({ steps }: { readonly steps: readonly RuledStep[] }) {
  return (
    <ol className="ruled-steps">
      {steps.map(({ rule, words, holds }) => {
        const status = statusOf(holds);
        return (
          <li key={`${rule}${words}`}>
            <Mark status={status} size_px={22} silent />
            <b>{rule}</b>
            <span>
              {words} <em>({STEP_WORDS[status]})</em>
            </span>
          </li>
        );
      })}
    </ol>
  );
}
