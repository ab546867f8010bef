import type { RuleQuestion } from "@witnessmark/assess";
import { useEffect, useRef, useState } from "react";
import { Mark } from "../../marks/mark.tsx";
import { ScalarField } from "../calculators/input-fields.tsx";
import { type KeptTyped, keepTyped, keptTyped, NOTHING_TYPED } from "../calculators/kept-typed.ts";
import { Sources } from "../calculators/working-lines.tsx";
import { RuledStepList, statusOf } from "../record/ruled-step-list.tsx";
import { AskField } from "./ask-field.tsx";
import { readAnswers, specOf } from "./read-answers.ts";
import { packTitle } from "./rules-found.ts";
import "./rules.css";

/** One question: what the rule wants to know, what it says, every step of it, and its text. */
export function RulePage({ question }: { readonly question: RuleQuestion }) {
  const place = `rule ${question.id}`;
  const [typed, setTyped] = useState(() => keptTyped(place));
  const change = (next: KeptTyped) => {
    keepTyped(place, next);
    setTyped(next);
  };
  const textOf = (name: string) => typed.texts[name]?.[0] ?? "";
  const onText = (name: string, text: string) =>
    change({ ...typed, texts: { ...typed.texts, [name]: [text] } });
  const { said, faults } = readAnswers(question, textOf, (ask) => typed.units[ask.name] ?? ask.askedIn);
  const { steps, holds, says, citations } = question.answer(said);
  const status = statusOf(holds);
  const heading = useRef<HTMLHeadingElement>(null);
  // a new page is read from its heading
  useEffect(() => heading.current?.focus({ preventScroll: true }), []);
  return (
    <article className="calc-page">
      <h2 tabIndex={-1} ref={heading}>
        {question.title}
      </h2>
      <p className="rule-pack">
        {packTitle(question)}
        {question.about === undefined ? "" : `. ${question.about}`}
      </p>
      <form className="calc-fields" onSubmit={(event) => event.preventDefault()} noValidate>
        {question.asks.map((ask) =>
          ask.kind === "figure" ? (
            <ScalarField
              key={ask.name}
              spec={specOf(ask)}
              faults={faults}
              texts={typed.texts}
              unitOf={({ name }) => typed.units[name] ?? ask.askedIn}
              onText={(name, _, text) => onText(name, text)}
              onUnit={(name, unit) => change({ ...typed, units: { ...typed.units, [name]: unit } })}
            />
          ) : (
            <AskField
              key={ask.name}
              ask={ask}
              text={textOf(ask.name)}
              onText={(text) => onText(ask.name, text)}
            />
          ),
        )}
      </form>
      <section className="rule-answer" aria-labelledby="rule-answer">
        <h3 id="rule-answer" className="out-of-sight">
          What the rule says
        </h3>
        <output aria-live="polite" className={`verdict ${status}`}>
          <Mark status={status} size_px={28} silent />
          <span>{says}</span>
        </output>
      </section>
      <section className="calc-part" aria-labelledby="rule-steps">
        <h3 id="rule-steps">Step by step</h3>
        <RuledStepList steps={steps} />
      </section>
      <section className="calc-part">
        <h3>Where it is written</h3>
        <Sources sources={citations} />
      </section>
      <p className="rule-caution">
        The rule's own text and the authority come first: it may have been changed since, and other rules may
        bind this flight too. Read it; if in doubt, ask, and stay on the ground.
      </p>
      <div className="row-of-buttons calc-foot">
        <button
          type="button"
          className="button"
          disabled={Object.values(typed.texts).every((texts) => texts.every((text) => text === ""))}
          onClick={() => change({ ...NOTHING_TYPED, units: typed.units })}
        >
          Answer again from the start
        </button>
      </div>
    </article>
  );
}
