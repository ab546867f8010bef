import { Trouble } from "../../frame/trouble.tsx";
import { href } from "../../routes/route.ts";
import { shortDay } from "../../words/dates.ts";
import { useDrafts } from "../begin/use-drafts.ts";

/** Books that are not finished, each with the way to go on; nothing where there is none. */
export function ApronDrafts() {
  const { drafts, trouble } = useDrafts();
  if (drafts.length === 0) return <Trouble words={trouble} />;
  return (
    <section className="apron-drafts" aria-label="Books in the making">
      <h2>Books in the making</h2>
      <ul>
        {drafts.map(({ registration, type, changedAt_ms, from }) => (
          <li key={registration}>
            <p>
              <b>{registration}</b>
              <span>
                {type === "" ? "" : `${type}, `}
                {from === null ? "never issued" : `changes revision ${from}`}, last changed{" "}
                {shortDay(changedAt_ms)}
              </span>
            </p>
            <a
              className="button"
              href={href({ at: "book", registration })}
              aria-label={`Go on with the book of ${registration}`}
            >
              Go on
            </a>
          </li>
        ))}
      </ul>
    </section>
  );
}
