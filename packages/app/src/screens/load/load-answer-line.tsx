import { memo } from "react";
import { Mark } from "../../marks/mark.tsx";
import type { LoadAnswer } from "./envelope-words.ts";

interface LoadAnswerLineProps {
  readonly answer: LoadAnswer;
}

const sameWords = ({ answer: was }: LoadAnswerLineProps, { answer: now }: LoadAnswerLineProps): boolean =>
  was.status === now.status && was.headline === now.headline && was.more.join() === now.more.join();

/** The answer over the envelope: its letter, the worst in words, and what else there is. */
export const LoadAnswerLine = memo(function LoadAnswerLine({ answer }: LoadAnswerLineProps) {
  const { status, headline, more } = answer;
  return (
    <div className={`load-answer ${status}`}>
      <span className="load-letter-a" aria-hidden="true">
        A
      </span>
      <div>
        <h2>{headline}</h2>
        {more.length === 0 ? null : (
          <ul>
            {more.map((words) => (
              <li key={words}>{words}</li>
            ))}
          </ul>
        )}
      </div>
      <Mark status={status} size_px={28} />
    </div>
  );
}, sameWords);
