import { stepName } from "../../walk/walk-view.ts";
import type { CheckCardProps } from "./check-card-props.ts";
import { useHeadingFocus } from "./use-heading-focus.ts";

/** The head of a question that follows an answer: which thing it is about, and the way back. */
export function PanelHead({
  open,
  inHand,
  title,
  onBack,
}: Pick<CheckCardProps, "open" | "inHand"> & { readonly title: string; readonly onBack: () => void }) {
  const heading = useHeadingFocus();
  return (
    <header className="what">
      <p className="where">
        <b>{stepName(inHand.step, open.book.points)}</b>, stance {inHand.stop.number}
      </p>
      <h2 ref={heading} tabIndex={-1}>
        {title}
      </h2>
      <button type="button" className="why" onClick={onBack}>
        Back
      </button>
    </header>
  );
}
