import { quantities } from "@witnessmark/engine";
import { useState } from "react";
import { href } from "../../routes/route.ts";
import { tally } from "../../words/figures.ts";
import { inList } from "./kept-typed.ts";
import { bySubject, found } from "./subjects.ts";

const GROUPS = bySubject(quantities.values());

/** Every quantity by its subject, with a search. */
export function QuantityList({ here }: { readonly here: string | undefined }) {
  const [looked, setLooked] = useState(inList.looked);
  const groups = found(GROUPS, looked);
  const count = groups.reduce((sum, group) => sum + group.quantities.length, 0);
  return (
    <div className="calc-index">
      <search className="calc-search">
        <label className="field">
          <span>Look for</span>
          <input
            type="search"
            value={looked}
            placeholder="density altitude, crosswind, oxygen"
            onChange={({ target }) => {
              inList.looked = target.value;
              setLooked(target.value);
            }}
          />
        </label>
        <p role="status">
          {looked.trim() === ""
            ? tally(count, "quantity", "quantities")
            : `${tally(count, "quantity", "quantities")} found`}
        </p>
      </search>
      {groups.map(({ subject, quantities: all }) => (
        <section key={subject} className="calc-subject">
          <h2>{subject}</h2>
          <ul>
            {all.map(({ id, title, crossCheckOnly }) => (
              <li key={id}>
                <a
                  href={href({ at: "calculators", quantity: id })}
                  aria-current={id === here ? "page" : undefined}
                >
                  <span>{title}</span>
                  {crossCheckOnly === true ? <small>cross-check only</small> : null}
                </a>
              </li>
            ))}
          </ul>
        </section>
      ))}
      {count === 0 ? <p className="calc-none">Nothing of that name. Try one word, or part of one.</p> : null}
    </div>
  );
}
