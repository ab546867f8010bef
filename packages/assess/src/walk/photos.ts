import type { AircraftState, Origin } from "@witnessmark/ledger";
import { type Heads, isSeen } from "./looks.ts";

type Photos = AircraftState["photos"];

/** A fold keeps the list until there is a new photo, so it is gone through once, not with every look. */
const latest = new WeakMap<Photos, ReadonlyMap<string, Origin>>();

function makeLatest(photos: Photos, heads: Heads | undefined): ReadonlyMap<string, Origin> {
  const byCheck = new Map<string, Origin>();
  for (const photo of photos) {
    if (photo.subject.kind === "check" && isSeen(photo, heads)) byCheck.set(photo.subject.id, photo);
  }
  return byCheck;
}

/** The latest photo of each check. */
export function latestPhotos(photos: Photos, heads: Heads | undefined): ReadonlyMap<string, Origin> {
  if (heads !== undefined) return makeLatest(photos, heads);
  const known = latest.get(photos);
  if (known !== undefined) return known;
  const made = makeLatest(photos, heads);
  latest.set(photos, made);
  return made;
}
