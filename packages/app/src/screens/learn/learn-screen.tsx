import type { Book } from "@witnessmark/book";
import { useMemo, useState } from "react";
import { AircraftFrame } from "../../frame/aircraft-frame.tsx";
import type { OpenAircraft } from "../../frame/open-aircraft.ts";
import { href } from "../../routes/route.ts";
import { useWalkPlan } from "../../walk/order/use-walk-plan.ts";
import { tally } from "../../words/figures.ts";
import { AskCard, type CardAnswer } from "./ask-card.tsx";
import type { Card } from "./cards.ts";
import { Explained } from "./explained.tsx";
import { NOTHING_LEARNT, progress } from "./learnt-store.ts";
import { cardsOfRound, isRightAnswer, learntWith, type Score, scoreOf, wouldMiss } from "./round.ts";
import "../walk/left.css";
import "./learn.css";

interface Missed {
  readonly card: Card;
  readonly passed: boolean;
}

/** Learning an aircraft: each check is explained before it is asked, and what would have been missed is counted. */
export function LearnScreen({ open }: { readonly open: OpenAircraft }) {
  const { registration, book } = open;
  const plan = useWalkPlan(open, "first-of-day");
  const known = progress.use()[registration] ?? NOTHING_LEARNT;
  const [round, setRound] = useState(known.rounds + 1);
  // the cards of a round are those of its beginning, whatever is learnt on the way
  const [learntBefore, setLearntBefore] = useState(known.checks);
  const cards = useMemo(
    () => cardsOfRound(book, plan, learntBefore, round),
    [book, plan, learntBefore, round],
  );
  const [at, setAt] = useState(0);
  const [missed, setMissed] = useState<readonly Missed[]>([]);
  const card = cards[at];
  const answered = (answer: CardAnswer) => {
    if (card === undefined) return;
    const isRight = isRightAnswer(card, answer);
    if (!isRight) setMissed([...missed, { card, passed: wouldMiss(card, answer) }]);
    const checks = learntWith(known.checks, card.check.id, round, isRight);
    const rounds = at + 1 === cards.length ? round : known.rounds;
    progress.set({ ...progress.get(), [registration]: { rounds, checks } });
  };
  const again = () => {
    setLearntBefore(progress.get()[registration]?.checks ?? {});
    setRound(round + 1);
    setAt(0);
    setMissed([]);
  };
  return (
    <AircraftFrame
      open={open}
      sheet="aircraft"
      title="Learn"
      under={card === undefined ? "How it went" : `${at + 1} of ${cards.length}`}
    >
      <main className="page learn">
        <a className="back-row" href={href({ at: "aircraft", registration })}>
          Back to the aircraft
        </a>
        {cards.length === 0 ? (
          <section>
            <p>The book tells neither faults nor limits, so there is nothing to ask.</p>
          </section>
        ) : card === undefined ? (
          <HowItWent
            book={book}
            count={cards.length}
            missed={missed}
            score={scoreOf(book, plan, known.checks)}
            open={open}
            onAgain={again}
          />
        ) : (
          <OneCard
            key={`${round} ${at}`}
            book={book}
            card={card}
            onAnswer={answered}
            onNext={() => setAt(at + 1)}
          />
        )}
      </main>
    </AircraftFrame>
  );
}

interface OneCardProps {
  readonly book: Book;
  readonly card: Card;
  readonly onAnswer: (answer: CardAnswer) => void;
  readonly onNext: () => void;
}

/** Explained first, then asked without the explanation, then told. */
function OneCard({ book, card, onAnswer, onNext }: OneCardProps) {
  const [isAsked, setAsked] = useState(false);
  return isAsked ? (
    <AskCard book={book} card={card} onAnswer={onAnswer} onNext={onNext} />
  ) : (
    <section>
      <h2>{card.place}</h2>
      <Explained book={book} check={card.check} drawn />
      <button type="button" className="button filled tall full" onClick={() => setAsked(true)}>
        Ask me
      </button>
    </section>
  );
}

interface HowItWentProps {
  readonly book: Book;
  readonly count: number;
  readonly missed: readonly Missed[];
  readonly score: Score;
  readonly open: OpenAircraft;
  readonly onAgain: () => void;
}

function HowItWent({ book, count, missed, score, open, onAgain }: HowItWentProps) {
  const passed = missed.filter((each) => each.passed);
  const false_ = missed.filter((each) => !each.passed);
  return (
    <section>
      <h2>
        {passed.length === 0
          ? `Nothing would have got past you in ${tally(count, "check")}`
          : `${tally(passed.length, "thing")} would have got past you in ${tally(count, "check")}`}
      </h2>
      {false_.length === 0 ? null : (
        <p>{tally(false_.length, "good thing")} you would have called not right.</p>
      )}
      <p>{scoreWords(score)}</p>
      {missed.length === 0 ? null : <p>They come first in the next round.</p>}
      {missed.map(({ card }) => (
        <article className="learn-missed" key={card.check.id}>
          <h3>{card.place}</h3>
          <Explained book={book} check={card.check} />
        </article>
      ))}
      <div className="row-of-buttons">
        <button type="button" className="button filled tall" onClick={onAgain}>
          Another round
        </button>
        <a className="button tall" href={href({ at: "study", registration: open.registration })}>
          Study sheets to print
        </a>
      </div>
    </section>
  );
}

function scoreWords({ asked, of, wrong, stillWrong }: Score): string {
  const sofar = `So far you were asked ${asked} of ${tally(of, "check")}`;
  if (wrong === 0) return `${sofar}, and were wrong on none.`;
  return `${sofar} and were wrong ${tally(wrong, "time")}; ${
    stillWrong === 0 ? "nothing" : tally(stillWrong, "check")
  } still to be got right.`;
}
