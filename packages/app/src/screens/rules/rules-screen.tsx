import { ruleQuestions } from "@witnessmark/assess";
import type { KeepSnapshot } from "../../keep/contract.ts";
import { href } from "../../routes/route.ts";
import { ListAndPage } from "../calculators/list-and-page.tsx";
import { RuleList } from "./rule-list.tsx";
import { RulePage } from "./rule-page.tsx";
import { inRules } from "./rules-found.ts";

interface RulesScreenProps {
  readonly snapshot: KeepSnapshot;
  readonly question: string | undefined;
}

/** What the rules of the air say, one question after another; the address holds which. */
export function RulesScreen({ snapshot, question: id }: RulesScreenProps) {
  return (
    <ListAndPage
      snapshot={snapshot}
      title="What the rules say"
      list={<RuleList here={id} />}
      open={id === undefined ? undefined : { id, page: <PageOf id={id} /> }}
      invites="Choose a question. The rule asks what it wants to know, and every step of its answer stands with its text."
      all={{ words: "All questions", address: href({ at: "rules" }) }}
      inList={inRules}
    />
  );
}

function PageOf({ id }: { readonly id: string }) {
  const question = ruleQuestions.get(id);
  return question === undefined ? (
    <section className="calc-page">
      <h2>Not here</h2>
      <p>There is no question “{id}”. The list has all there are.</p>
    </section>
  ) : (
    <RulePage key={id} question={question} />
  );
}
