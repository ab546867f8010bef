import type { Book } from "@witnessmark/book";
import { useState } from "react";
import { Mark } from "../../marks/mark.tsx";
import { lower } from "../../words/capital.ts";
import type { Card } from "./cards.ts";
import { Explained } from "./explained.tsx";
import { isRightAnswer, wouldMiss } from "./round.ts";

export type CardAnswer = { readonly chosen: ReadonlySet<string> } | { readonly right: boolean };

interface AskCardProps {
  readonly book: Book;
  readonly card: Card;
  /** Called once, when it is answered. */
  readonly onAnswer: (answer: CardAnswer) => void;
  readonly onNext: () => void;
}

/** One question, and what is to be said of the answer. */
export function AskCard({ book, card, onAnswer, onNext }: AskCardProps) {
  const [answer, setAnswer] = useState<CardAnswer | null>(null);
  const [chosen, setChosen] = useState<ReadonlySet<string>>(new Set());
  const say = (next: CardAnswer) => {
    setAnswer(next);
    onAnswer(next);
  };
  const { check, place } = card;
  return (
    <section>
      <h2>
        {place}: {lower(check.title)}
      </h2>
      {card.kind === "look-for" ? (
        <>
          <p>Which of these do you look for here?</p>
          <fieldset className="choices learn-choices" disabled={answer !== null}>
            <legend className="out-of-sight">Things that may be wrong</legend>
            {card.choices.map(({ words, isOwn }) => (
              <button
                key={words}
                type="button"
                aria-pressed={chosen.has(words)}
                onClick={() => {
                  const next = new Set(chosen);
                  if (!next.delete(words)) next.add(words);
                  setChosen(next);
                }}
              >
                {words}
                {answer === null ? null : <small>{isOwn ? "of this check" : "of another"}</small>}
              </button>
            ))}
          </fieldset>
          {answer === null ? (
            <button
              type="button"
              className="button filled tall full"
              disabled={chosen.size === 0}
              onClick={() => say({ chosen })}
            >
              {chosen.size === 0 ? "Choose one or more" : "These"}
            </button>
          ) : null}
        </>
      ) : (
        <>
          <p className="learn-found">{card.found}</p>
          {answer === null ? (
            <div className="row-of-buttons">
              <button type="button" className="button filled tall" onClick={() => say({ right: true })}>
                As it should be
              </button>
              <button type="button" className="button tall" onClick={() => say({ right: false })}>
                Not right
              </button>
            </div>
          ) : null}
        </>
      )}
      {answer === null ? null : <Told book={book} card={card} answer={answer} onNext={onNext} />}
    </section>
  );
}

function Told({
  book,
  card,
  answer,
  onNext,
}: Pick<AskCardProps, "book" | "card" | "onNext"> & { readonly answer: CardAnswer }) {
  const isRight = isRightAnswer(card, answer);
  const missed = wouldMiss(card, answer);
  return (
    <>
      <p className={`verdict ${isRight ? "clear" : missed ? "stop" : "caution"}`} role="status">
        <Mark status={isRight ? "clear" : missed ? "stop" : "caution"} size_px={28} />
        <span>
          {isRight
            ? "So it is."
            : missed
              ? "That would have got past you."
              : "That was no fault of this check."}
          {card.kind === "judge" ? ` ${card.because}` : ""}
        </span>
      </p>
      <Explained book={book} check={card.check} />
      <button type="button" className="button filled tall full" onClick={onNext}>
        Next
      </button>
    </>
  );
}
