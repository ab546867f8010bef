import { quantities } from "@witnessmark/engine";
import { PlainTitle } from "../../frame/title-block.tsx";
import type { KeepSnapshot } from "../../keep/contract.ts";
import { href } from "../../routes/route.ts";
import { keptOfAll } from "../../words/keeping.ts";

/** Every quantity that the program works out, by name. */
export function Calculators({
  snapshot,
}: {
  readonly snapshot: KeepSnapshot;
  readonly quantity: string | undefined;
}) {
  return (
    <div className="frame">
      <PlainTitle title="Calculators" kept={keptOfAll(snapshot.status)} back={href({ at: "apron" })} />
      <main className="page">
        <ul>
          {[...quantities.values()].map(({ id, title }) => (
            <li key={id}>
              <a href={href({ at: "calculators", quantity: id })}>{title}</a>
            </li>
          ))}
        </ul>
      </main>
    </div>
  );
}
