import type { Book, WalkKind } from "@witnessmark/book";
import type { OrderedStop, WalkOrder } from "@witnessmark/planner";
import type { MyOrder } from "../../walk/order/my-orders.ts";
import type { ProofTold } from "../../walk/order/use-proof.ts";

interface OrderHeadProps {
  readonly book: Book;
  readonly kind: WalkKind;
  readonly counts: WalkOrder | undefined;
  readonly isByHand: boolean;
  readonly walked: MyOrder | null;
  readonly proof: ProofTold | null;
  readonly onTake: (stops: readonly OrderedStop[]) => void;
}

/** Below this, another order is not worth a change of habit. */
const WORTH_s = 2;

/** Whose order it is, what it costs in walking, and what another would save. */
export function OrderHead({ book, counts, isByHand, walked, proof, onTake }: OrderHeadProps) {
  const saves_s = proof?.isDone === true && walked !== null ? walked.walking_s - proof.best_s : 0;
  return (
    <section className="order-head">
      <dl className="parts">
        <dt>Follows</dt>
        <dd>{followsWords(book, counts, isByHand)}</dd>
        <dt>Walking</dt>
        <dd>
          {walked === null
            ? "–"
            : `${Math.ceil(walked.walking_m)} m and ${walked.stops.length} stops, ${Math.ceil(walked.walking_s)} s besides the looks`}
        </dd>
        <dt>Another order</dt>
        <dd>
          <span role="status">{anotherWords(walked, proof)}</span>
        </dd>
      </dl>
      {saves_s >= WORTH_s && proof !== null ? (
        <button type="button" className="button full" onClick={() => onTake(proof.stops)}>
          Show the order that saves {Math.floor(saves_s)} s
        </button>
      ) : null}
    </section>
  );
}

function followsWords(book: Book, counts: WalkOrder | undefined, isByHand: boolean): string {
  if (isByHand) return "Your own order, kept on this phone. Nobody else’s walk changes with it.";
  if (counts?.follows === "manual") return `The manual: ${book.order?.source ?? "as the book has it"}`;
  if (counts === undefined) return "The order of the book";
  return counts.saves_s >= 1
    ? `Planned: ${Math.floor(counts.saves_s)} s less walking than in the book’s order`
    : "Planned";
}

function anotherWords(walked: MyOrder | null, proof: ProofTold | null): string {
  if (proof === null || walked === null) return "Looked for while this screen rests";
  const { best_s, bound_s, isDone } = proof;
  const gap_1 = best_s > 0 ? Math.max(0, 1 - bound_s / best_s) : 0;
  const sure =
    gap_1 < 0.0005
      ? "none is shorter than that"
      : `none saves more than ${Math.ceil(walked.walking_s - bound_s)} s`;
  if (!isDone) return bound_s > 0 ? `Still looking; ${sure}` : "Still looking";
  const saves_s = walked.walking_s - best_s;
  return saves_s >= WORTH_s
    ? `Would save ${Math.floor(saves_s)} s; ${sure}`
    : `Saves nothing to speak of; ${sure}`;
}
