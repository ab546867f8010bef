import { useState } from "react";
import { Popup } from "../../frame/popup.tsx";
import { BandChart } from "../aircraft/band-chart.tsx";
import { useDesk } from "./use-desk.ts";
import { WalkPreview } from "./walk-preview.tsx";

/** How the limit of a check moves, and the check as it is met on a walk. */
export function CheckExtras({ id }: { readonly id: string }) {
  const { book, isRead, faults } = useDesk();
  const [shown, setShown] = useState(false);
  const check = book?.checks.find((each) => each.id === id || each.id.startsWith(`${id}.`));
  if (book === null || check === undefined) return null;
  return (
    <section className="bk-here">
      {check.reading === undefined ? null : (
        <dl className="fields">
          <BandChart book={book} check={check} reading={check.reading} />
        </dl>
      )}
      <button type="button" className="button full" onClick={() => setShown(true)}>
        See it as on a walk
      </button>
      {isRead && faults.length > 0 ? (
        <p className="note">As it read last: the draft has faults now.</p>
      ) : null}
      {shown ? (
        <Popup title="As on a walk" onClose={() => setShown(false)}>
          <WalkPreview book={book} check={check} />
        </Popup>
      ) : null}
    </section>
  );
}
