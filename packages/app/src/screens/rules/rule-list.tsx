import { useState } from "react";
import { href } from "../../routes/route.ts";
import { tally } from "../../words/figures.ts";
import { IndexList } from "../calculators/index-list.tsx";
import { inRules, packTitle, questionsFound } from "./rules-found.ts";

/** Every question by its subject, with a search. */
export function RuleList({ here }: { readonly here: string | undefined }) {
  const [looked, setLooked] = useState(inRules.looked);
  return (
    <IndexList
      groups={questionsFound(looked).map(({ subject, questions }) => ({
        subject,
        items: questions.map((question) => ({
          id: question.id,
          title: question.title,
          address: href({ at: "rules", question: question.id }),
          note: packTitle(question),
        })),
      }))}
      here={here}
      looked={looked}
      onLooked={(text) => {
        inRules.looked = text;
        setLooked(text);
      }}
      examples="locator, papers, 91.407, frost"
      counted={(count) => tally(count, "question")}
    />
  );
}
