import type { OpenAircraft } from "../../frame/open-aircraft.ts";
import { Mark } from "../../marks/mark.tsx";
import { href } from "../../routes/route.ts";
import { type StepView, stepName } from "../../walk/walk-view.ts";
import { REASON_WORDS } from "../../words/answers.ts";
import { tally } from "../../words/figures.ts";
import "./left.css";

/** Steps by name, each with its mark and a way to it. */
export function StepList({
  open,
  steps,
}: {
  readonly open: OpenAircraft;
  readonly steps: readonly StepView[];
}) {
  const { registration, book } = open;
  return (
    <ul className="step-list">
      {steps.map((view) => (
        <li key={view.step.id}>
          <a href={href({ at: "walk", registration, step: { kind: view.step.kind, id: view.step.id } })}>
            <Mark status={view.status} size_px={24} />
            <b>{stepName(view.step, book.points)}</b>
            <span>{underText(view)}</span>
          </a>
        </li>
      ))}
    </ul>
  );
}

function underText({ step, answer, status, askedAgain }: StepView): string {
  if (askedAgain) return "Asked again after a break";
  if (answer?.reason !== undefined && status === "open") {
    return `Could not check: ${REASON_WORDS[answer.reason].toLowerCase()}`;
  }
  return step.kind === "check" ? step.check.title : `Ground gear, ${tally(step.item.count, "piece")}`;
}
