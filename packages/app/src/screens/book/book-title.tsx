import { nextRevision, type Plain, valueAt } from "@witnessmark/book";
import { useEffect } from "react";
import { deviceWord } from "../../frame/device-word.ts";
import type { KeepSnapshot } from "../../keep/contract.ts";
import { useMinute } from "../../preferences/clock.ts";
import { href } from "../../routes/route.ts";
import { clockTime } from "../../words/dates.ts";
import { tally } from "../../words/figures.ts";
import { keptOfOne } from "../../words/keeping.ts";
import { useChanges } from "./use-changes.ts";
import { useDesk } from "./use-desk.ts";

const countIn = (plain: Plain | null, list: string): number => {
  const items = valueAt(plain ?? undefined, [list]);
  return Array.isArray(items) ? items.length : 0;
};

/** `44 checks`, and how many looks they are where one is asked on both sides: the aircraft's page counts those. */
function checksText(plain: Plain | null): string {
  const checks = valueAt(plain ?? undefined, ["checks"]);
  const written = countIn(plain, "checks");
  const looks = (Array.isArray(checks) ? checks : []).reduce<number>((sum, check) => {
    const at = valueAt(check, ["at"]);
    return sum + (Array.isArray(at) ? at.length : 1);
  }, 0);
  return `${tally(written, "check")}${looks === written ? "" : ` (${looks} with left and right)`}`;
}

/** Aircraft | book and revision | what it holds | what has changed | time and what is kept. */
export function BookTitle({ snapshot }: { readonly snapshot: KeepSnapshot }) {
  const { registration, plain, book, draft, isKept, entry } = useDesk();
  const minute = useMinute();
  const changes = useChanges();
  useEffect(() => {
    document.title = `Book, ${registration}, Witnessmark`;
  }, [registration]);
  const text = (...path: readonly string[]) => {
    const value = valueAt(plain ?? undefined, path);
    return typeof value === "string" ? value : "";
  };
  const revision =
    draft === null ? `Revision ${book?.revision ?? "?"}` : `Revision ${nextRevision(draft)}, draft`;
  const keptText = !isKept
    ? "Being kept"
    : draft === null && entry !== undefined
      ? keptOfOne(entry.toSend, deviceWord())
      : `Kept on this ${deviceWord()}`;
  return (
    <header className="title-block">
      <a href={entry === undefined ? href({ at: "add" }) : href({ at: "aircraft", registration })}>
        <b>{registration}</b>
        <span>{text("aircraft", "type")}</span>
        <span className="out-of-sight">Back to {entry === undefined ? "the books" : "the aircraft"}</span>
      </a>
      <div>
        <h1 tabIndex={-1}>Book</h1>
        <span>{revision}</span>
      </div>
      <div className="wide">
        <b>
          {checksText(plain)}, {tally(countIn(plain, "points"), "point")},{" "}
          {tally(countIn(plain, "stances"), "stance")}
        </b>
        <span className="bk-notice">{text("notice")}</span>
      </div>
      <div className="wide">
        {draft?.base == null ? (
          <>
            <b>{draft === null ? "In force" : "Never issued"}</b>
            <span>{draft === null ? text("issued", "by") : (snapshot.person?.name ?? "")}</span>
          </>
        ) : (
          <>
            <b>{tally(changes.length, "change")}</b>
            <span>since revision {draft.base.revision}</span>
          </>
        )}
      </div>
      <div className="when">
        <b>{clockTime(minute * 60_000)}</b>
        <span role="status">{keptText}</span>
      </div>
    </header>
  );
}
