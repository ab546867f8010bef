import { quantities } from "@witnessmark/engine";
import { useState } from "react";
import { href } from "../../routes/route.ts";
import { tally } from "../../words/figures.ts";
import { IndexList } from "./index-list.tsx";
import { inList } from "./kept-typed.ts";
import { bySubject, found } from "./subjects.ts";

const GROUPS = bySubject(quantities.values());

/** Every quantity by its subject, with a search. */
export function QuantityList({ here }: { readonly here: string | undefined }) {
  const [looked, setLooked] = useState(inList.looked);
  return (
    <IndexList
      groups={found(GROUPS, looked).map(({ subject, quantities: all }) => ({
        subject,
        items: all.map(({ id, title, crossCheckOnly }) => ({
          id,
          title,
          address: href({ at: "calculators", quantity: id }),
          note: crossCheckOnly === true ? "cross-check only" : undefined,
        })),
      }))}
      here={here}
      looked={looked}
      onLooked={(text) => {
        inList.looked = text;
        setLooked(text);
      }}
      examples="density altitude, crosswind, oxygen"
      counted={(count) => tally(count, "quantity", "quantities")}
    />
  );
}
