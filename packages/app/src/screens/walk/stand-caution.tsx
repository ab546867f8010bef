import { isInArc, type Stop } from "@witnessmark/planner";
import { useMemo } from "react";
import type { OpenAircraft } from "../../frame/open-aircraft.ts";

/** What one must know of the place where one stands: a propeller's arc, or no way that leads there. */
export function StandCaution({ open, stop }: { readonly open: OpenAircraft; readonly stop: Stop }) {
  const { book } = open;
  const { stance } = stop;
  const inArc = useMemo(() => stance.inArc !== undefined || isInArc(book, stance), [book, stance]);
  return (
    <>
      {inArc ? (
        <p className="where-caution">
          Caution: you stand in the propeller’s arc. {stance.inArc ?? "This cannot be done from elsewhere."}{" "}
          Switches off, key out, and out of it again.
        </p>
      ) : null}
      {stop.noWay === true ? (
        <p className="where-caution">
          On the drawing no way leads to this stance: something stands in the way, or the book is wrong there.
        </p>
      ) : null}
    </>
  );
}
