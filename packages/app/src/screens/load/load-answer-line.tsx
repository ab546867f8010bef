import type { Status } from "@witnessmark/ledger";
import { memo } from "react";
import type { LoadAnswer } from "./envelope-words.ts";
import { type LiveLoad, useFollowing, useLive } from "./follow/live-load.ts";
import { useParts } from "./follow/parts.ts";
import { StatusMark, sayStatus } from "./follow/status-mark.tsx";

interface LoadAnswerLineProps {
  readonly answer: LoadAnswer;
  readonly live: LiveLoad;
}

const sameWords = (was: LoadAnswerLineProps, now: LoadAnswerLineProps): boolean =>
  was.answer.status === now.answer.status &&
  was.answer.headline === now.answer.headline &&
  inOne(was.answer) === inOne(now.answer) &&
  was.live === now.live;

const inOne = ({ more }: LoadAnswer): string => more.join("\n");

const linesOf = ({ more }: LoadAnswer): string => String(more.length);

const classOf = (status: Status): string => `load-answer ${status}`;

/** The answer over the envelope: its letter and the worst in words, which stay in sight, and what else there is. */
export const LoadAnswerLine = memo(function LoadAnswerLine({ answer, live }: LoadAnswerLineProps) {
  const { status } = answer;
  const lines = Number(useLive(live, linesOf(answer), (step) => linesOf(step.answer)));
  const parts = useParts();
  useFollowing(
    live,
    ({ answer: now }) => now,
    (now) => {
      parts.say("headline", now.headline);
      for (const [index, words] of now.more.entries()) parts.say(`line ${index}`, words);
      parts.put("answer", "class", classOf(now.status));
      sayStatus(parts, "mark", now.status);
      return true;
    },
  );
  return (
    <>
      <div ref={parts.ref("answer")} className={classOf(status)}>
        <span className="load-letter-a" aria-hidden="true">
          A
        </span>
        <h2 ref={parts.ref("headline")}>{answer.headline}</h2>
        <StatusMark status={status} size_px={28} part={parts.ref("mark")} />
      </div>
      {lines === 0 ? null : (
        <ul className="load-answer-more">
          {Array.from({ length: lines }, (_, index) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: a line is what stands there, whatever it says
            <li key={index} ref={parts.ref(`line ${index}`)}>
              {answer.more[index]}
            </li>
          ))}
        </ul>
      )}
    </>
  );
}, sameWords);
