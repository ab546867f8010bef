import { quantities } from "@witnessmark/engine";
import type { KeepSnapshot } from "../../keep/contract.ts";
import { href } from "../../routes/route.ts";
import { inList } from "./kept-typed.ts";
import { ListAndPage } from "./list-and-page.tsx";
import { QuantityList } from "./quantity-list.tsx";
import { QuantityPage } from "./quantity-page.tsx";

interface CalculatorsProps {
  readonly snapshot: KeepSnapshot;
  readonly quantity: string | undefined;
}

/** Every quantity that the program works out, to be used by itself; the address holds which. */
export function Calculators({ snapshot, quantity: id }: CalculatorsProps) {
  return (
    <ListAndPage
      snapshot={snapshot}
      title="Calculators"
      list={<QuantityList here={id} />}
      open={id === undefined ? undefined : { id, page: <PageOf id={id} /> }}
      invites="Choose a quantity. Its figures go in and come out in any unit, with the working and its sources."
      all={{ words: "All calculators", address: href({ at: "calculators" }) }}
      inList={inList}
    />
  );
}

function PageOf({ id }: { readonly id: string }) {
  const quantity = quantities.get(id);
  return quantity === undefined ? (
    <section className="calc-page">
      <h2>Not here</h2>
      <p>There is no quantity “{id}”. The list has all there are.</p>
    </section>
  ) : (
    <QuantityPage key={id} quantity={quantity} />
  );
}
