import type { Move, OtherWays } from "@witnessmark/fit";
import type { PlannedLoad } from "@witnessmark/ledger";
import { useState } from "react";
import type { KnownWays } from "../../fit/use-fit.ts";
import type { WhatFits } from "../../fit/what-fits.ts";
import { capital } from "../../words/capital.ts";
import type { LoadUnits } from "./load-units.ts";
import { type NamesOf, othersWords } from "./other-ways.ts";

interface PutRightProps {
  readonly fits: Extract<WhatFits, { kind: "broken" }>;
  readonly known: KnownWays;
  readonly load: PlannedLoad;
  readonly units: LoadUnits;
  readonly names: NamesOf;
  readonly onLoad: (load: PlannedLoad) => void;
  readonly onAnother: () => void;
}

/** What brings a load within its limits: moves, one way after the other, and the ways that move nothing. */
export function PutRight(props: PutRightProps) {
  const { fits, load } = props;
  const { arrangement, breaches } = fits;
  if (arrangement.status === "stopped") {
    return (
      <p>How to put it right took too long to work out. Move or take out something, and it is tried again.</p>
    );
  }
  if (arrangement.status === "found") {
    return (
      <>
        {/* another load has other ways: what was looked at of them begins anew */}
        <Moves key={JSON.stringify(load)} {...props} />
        <Others {...props} title="Without moving anything" others={fits.others} />
      </>
    );
  }
  const { conflicts } = arrangement;
  return (
    <>
      <h2>No seating or stowage puts it right</h2>
      <ul>
        {(conflicts.length > 0 ? conflicts : breaches).map(({ says }) => (
          <li key={says}>{capital(says)}</li>
        ))}
      </ul>
      <Others {...props} title="A last resort" others={fits.others} />
    </>
  );
}

/** The load with things carried to other places. */
const withMoves = (load: PlannedLoad, moves: readonly Move[]): PlannedLoad => {
  const to = new Map(moves.map((move) => [move.item, move.to]));
  return {
    ...load,
    items: load.items.map((item) => ({ ...item, station: to.get(item.id) ?? item.station })),
  };
};

function Moves({ known, load, names, onLoad, onAnother }: PutRightProps) {
  const { ways, more } = known;
  const [wanted, setWanted] = useState(0);
  // while the next is worked out the last one stands
  const shown = Math.min(wanted, ways.length - 1);
  const way = ways[shown];
  if (way === undefined) return null;
  const { moves } = way;
  const isLast = more === "none" && shown === ways.length - 1;
  const another = () => {
    if (isLast) {
      setWanted(0);
      return;
    }
    setWanted(shown + 1);
    if (shown === ways.length - 1) onAnother();
  };
  return (
    <>
      <h2>{shown === 0 ? "Put it right" : `Put it right, way ${shown + 1}`}</h2>
      <ul>
        {moves.map(({ item, from, to }) => (
          <li key={item}>
            <b>{names.thing(item)}</b> from {names.place(from)} to {names.place(to)}
          </li>
        ))}
      </ul>
      <div className="load-ways">
        <button type="button" className="button filled" onClick={() => onLoad(withMoves(load, moves))}>
          {moves.length === 1 ? "Plan this move" : `Plan these ${moves.length} moves`}
        </button>
        {isLast && ways.length === 1 ? null : (
          <button type="button" className="button" disabled={more === "asked"} onClick={another}>
            {more === "asked" ? "Looking for another" : isLast ? "The first way again" : "Another way"}
          </button>
        )}
      </div>
      <p>
        {shown === 0
          ? "The fewest moves that keep every limit from the ramp to dry tanks."
          : `The fewest moves without all those of ${shown === 1 ? "the way" : "a way"} before; every limit is kept from the ramp to dry tanks.`}{" "}
        {isLast ? "There is no other way by moving things. " : ""}Undo takes them back.
      </p>
    </>
  );
}

interface OthersProps extends PutRightProps {
  readonly title: string;
  readonly others: OtherWays;
}

/** Something left behind, less fuel, ballast: each with a button that plans it. */
function Others({ title, others, load, units, names, onLoad }: OthersProps) {
  const ways = othersWords(others, load, units, names);
  if (ways.length === 0) return null;
  return (
    <>
      <h3>{title}</h3>
      <ul className="load-others">
        {ways.map(({ says, act, planned }) => (
          <li key={act}>
            <span>{says}</span>
            <button
              type="button"
              className="button"
              onClick={() => onLoad(withMoves(planned.load, planned.moves))}
            >
              {act}
            </button>
          </li>
        ))}
      </ul>
    </>
  );
}
