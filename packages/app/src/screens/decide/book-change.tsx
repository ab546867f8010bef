import { useEffect, useState } from "react";
import type { OpenAircraft } from "../../frame/open-aircraft.ts";

/** What the book in force says otherwise than the one that the walk began with. Its reader comes when it is asked for. */
export function BookChange({ open }: { readonly open: OpenAircraft }) {
  const { state, assessment, book } = open;
  const began = state.walks.get(assessment.walk?.id ?? "")?.bookSha256;
  const textOf = (sha256: string | undefined) => state.books.findLast((each) => each.sha256 === sha256)?.text;
  const [before, after] = [textOf(began), textOf(book.sha256)];
  const [words, setWords] = useState<readonly string[] | undefined>([]);
  useEffect(() => {
    let left = false;
    void import("./book-change-words.ts").then(({ bookChangeWords }) => {
      if (!left) setWords(bookChangeWords(before, after));
    });
    return () => {
      left = true;
    };
  }, [before, after]);
  return (
    <div className="working">
      <p>
        What was looked at still counts, as far as the new revision has that check; decisions keep theirs.
      </p>
      {words === undefined ? (
        <p>The earlier book is not here: what changed is not known.</p>
      ) : (
        words.map((each) => <p key={each}>{each}</p>)
      )}
    </div>
  );
}
