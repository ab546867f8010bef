import { type BookEdit, type BookPath, gaugeProposal, type Plain, valueAt } from "@witnessmark/book";
import { cm } from "../../drawing/centimetre.ts";
import { siOf } from "./measure-in.ts";

/**
 * What else changes with a value that is typed: a gauge in another unit starts from what is common there, one whose
 * accuracy was put in is its own, and a seat whose arm was put in is drawn where it acts.
 */
export function companionEdits(plain: Plain | null, path: BookPath, to: Plain): readonly BookEdit[] {
  if (plain === null) return [];
  const [list, index, key] = path;
  if (list === "gauges" && typeof index === "number") return ofGauge(plain, ["gauges", index], key, to);
  if (list === "loading" && path[1] === "stations" && path[3] === "arm")
    return ofStation(plain, path.slice(0, 3), to);
  return [];
}

function ofGauge(
  plain: Plain,
  gauge: BookPath,
  key: string | number | undefined,
  to: Plain,
): readonly BookEdit[] {
  const at = (name: string) => valueAt(plain, [...gauge, name]);
  const isAssumed = at("assumed") === true;
  if (key === "accuracy") return isAssumed ? [{ remove: [...gauge, "assumed"] }] : [];
  if (key !== "unit" || typeof to !== "string") return [];
  const proposal = gaugeProposal(to);
  const isOwn = !isAssumed && typeof at("accuracy") === "string" && at("accuracy") !== "";
  if (isOwn) return [];
  if (proposal === undefined) {
    return [
      { set: [...gauge, "accuracy"], to: "" },
      { set: [...gauge, "resolution"], to: "" },
      ...(isAssumed ? [{ remove: [...gauge, "assumed"] }] : []),
    ];
  }
  return [
    { set: [...gauge, "accuracy"], to: proposal.accuracy },
    { set: [...gauge, "resolution"], to: proposal.resolution },
    { set: [...gauge, "assumed"], to: true },
  ];
}

/** Where it was drawn before anybody knew, or where it had acted until now. */
const SAME_m = 0.005;

function ofStation(plain: Plain, station: BookPath, to: Plain): readonly BookEdit[] {
  const arm_m = siOf(to, "length");
  const before_m = siOf(valueAt(plain, [...station, "arm"]), "length");
  const drawn_m = valueAt(plain, [...station, "place", 0]);
  if (arm_m === undefined || typeof drawn_m !== "number") return [];
  if (before_m !== undefined && Math.abs(before_m - drawn_m) > SAME_m) return []; // somebody has put it elsewhere
  const x_m = cm(arm_m);
  return x_m === drawn_m ? [] : [{ set: [...station, "place", 0], to: x_m }];
}
