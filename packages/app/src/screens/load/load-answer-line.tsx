import { memo } from "react";
import { Mark } from "../../marks/mark.tsx";
import type { LoadAnswer } from "./envelope-words.ts";
import { type LiveLoad, useFollowing, useLive, useParts } from "./live-load.ts";

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

/** The answer over the envelope: its letter, the worst in words, and what else there is. */
export const LoadAnswerLine = memo(function LoadAnswerLine({ answer, live }: LoadAnswerLineProps) {
  const status = useLive(live, answer.status, (step) => step.answer.status);
  const lines = Number(useLive(live, linesOf(answer), (step) => linesOf(step.answer)));
  const parts = useParts();
  useFollowing(live, ({ answer: now }) => {
    parts.say("headline", now.headline);
    for (const [index, words] of now.more.entries()) parts.say(`line ${index}`, words);
    return true;
  });
  return (
    <div className={`load-answer ${status}`}>
      <span className="load-letter-a" aria-hidden="true">
        A
      </span>
      <div>
        <h2 ref={parts.ref("headline")}>{answer.headline}</h2>
        {lines === 0 ? null : (
          <ul>
            {Array.from({ length: lines }, (_, index) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: a line is what stands there, whatever it says
              <li key={index} ref={parts.ref(`line ${index}`)}>
                {answer.more[index]}
              </li>
            ))}
          </ul>
        )}
      </div>
      <Mark status={status} size_px={28} />
    </div>
  );
}, sameWords);
