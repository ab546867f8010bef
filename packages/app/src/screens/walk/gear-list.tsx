import type { OpenAircraft } from "../../frame/open-aircraft.ts";
import { Mark } from "../../marks/mark.tsx";
import { href } from "../../routes/route.ts";
import { piecesOffCount, type WalkView } from "../../walk/walk-view.ts";
import { clockTime } from "../../words/dates.ts";

/** Every piece that must not fly: what is off, when, and where it went. */
export function GearList({ open, view }: { readonly open: OpenAircraft; readonly view: WalkView }) {
  const { book, state, registration } = open;
  const rows = book.groundGear.map((item) => {
    const off = Math.min(item.count, piecesOffCount(state, view.walk, item.id));
    const last = state.groundGear.get(item.id)?.removals.at(-1);
    return { item, off, last, open: off < item.count };
  });
  const pieces = rows.reduce((sum, row) => sum + row.item.count, 0);
  const off = rows.reduce((sum, row) => sum + row.off, 0);
  return (
    <section className="gear" aria-label="Ground gear">
      <h2>
        {off} of {pieces} off
      </h2>
      <ul>
        {[...rows.filter((row) => row.open), ...rows.filter((row) => !row.open)].map(
          ({ item, last, open: left }) => (
            <li key={item.id}>
              <a href={href({ at: "walk", registration, step: { kind: "ground-gear", id: item.id } })}>
                <Mark status={left ? "open" : "clear"} size_px={24} />
                <b>{item.count > 1 ? `${item.name}, ${item.count}` : item.name}</b>
                <span>
                  {left || last === undefined
                    ? (book.points.get(item.point)?.name ?? "")
                    : `${clockTime(Date.parse(last.recordedAt))}, ${last.stowedIn}`}
                </span>
              </a>
            </li>
          ),
        )}
      </ul>
    </section>
  );
}
