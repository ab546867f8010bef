import { useEffect, useMemo } from "react";
import type { KeepSnapshot } from "../keep/contract.ts";
import { useKeep } from "../keep/react.ts";

/** After what a person waits for is on the screen. */
const AT_REST_ms = 4_000;
/** Between two pictures the screen has its turn. */
const BETWEEN_ms = 50;
/** So many that do not come, and there is no net: it is tried again when there is. */
const MOST_MISSING = 3;

const rest = (ms: number) => new Promise((done) => setTimeout(done, ms));

/** Pictures that are on this device for certain, since the page was opened. */
const here = new Set<string>();

/**
 * Brings the pictures of what right looks like onto this device while there is a net, so that they are there on a walk
 * where there is none.
 */
export function useBookPictures({ aircraft }: Pick<KeepSnapshot, "aircraft">): void {
  const keep = useKeep();
  const named = useMemo(() => {
    const all = [...aircraft.values()].flatMap(({ book }) =>
      (book?.checks ?? []).flatMap(({ photo }) => photo ?? []),
    );
    return [...new Set(all)].join(" ");
  }, [aircraft]);
  useEffect(() => {
    if (named === "") return;
    let left = false;
    const bring = async () => {
      let missing = 0;
      for (const sha256 of named.split(" ")) {
        if (here.has(sha256)) continue;
        if (left || !navigator.onLine || missing >= MOST_MISSING) return;
        if ((await keep.photo(sha256)) === null) missing += 1;
        else here.add(sha256);
        await rest(BETWEEN_ms);
      }
    };
    const begin = () => {
      bring().catch(() => {}); // the place of a picture says that it is not here; this only brings it sooner
    };
    const timer = setTimeout(begin, AT_REST_ms);
    addEventListener("online", begin);
    return () => {
      left = true;
      clearTimeout(timer);
      removeEventListener("online", begin);
    };
  }, [keep, named]);
}
