import type { FlightPlan } from "@witnessmark/ledger";
import { useId, useState } from "react";
import { isoWithOffset } from "../../words/dates.ts";
import { listed } from "../../words/listed.ts";
import { fetchReports } from "./fetch-reports.ts";
import { codeOf, ROLES, type Role } from "./plan-field.ts";
import { type Places, reportsText, sortReports, withReports } from "./sort-reports.ts";

/** The box for reports, and what became of what was pasted or fetched last. */
export interface ReportsBox {
  readonly text: string;
  readonly taken: readonly string[];
  /** Why something of it was not taken. */
  readonly left: readonly string[];
  /** The reports of the flight of which that is true: with others it is told no more. */
  readonly of: string;
}

export const EMPTY_BOX: ReportsBox = { text: "", taken: [], left: [], of: "" };

interface ReportsEntryProps {
  readonly places: Places;
  readonly plan: FlightPlan;
  readonly role: Role;
  /** Kept by the screen, which may show this elsewhere a moment later. */
  readonly box: ReportsBox;
  readonly onBox: (box: ReportsBox) => void;
  /** The plan with what was pasted or fetched in its place. */
  readonly onPlan: (plan: FlightPlan) => void;
}

/** METAR and TAF, pasted or typed in one box, or fetched through our server. */
export function ReportsEntry({ places, plan, role, box, onBox, onPlan }: ReportsEntryProps) {
  const id = useId();
  const [asking, setAsking] = useState(false);
  const codes = [...new Set(ROLES.flatMap((each) => codeOf(places, each) ?? []))];
  /** @param from who it was fetched from; else it was pasted, and what is left out stays in the box */
  const take = (given: string, from?: string, lacks: readonly string[] = []) => {
    const now_ms = Date.now();
    const { taken, left } = sortReports(given, places, role, now_ms);
    const next = withReports(plan, places, taken, isoWithOffset(now_ms));
    if (taken.length > 0) onPlan(next);
    const names = taken.map(({ kind, roles }) => {
      const of = listed([...new Set(roles.flatMap((each) => codeOf(places, each) ?? []))]);
      return `${kind === "metar" ? "METAR" : "TAF"} of ${of}`;
    });
    const stays = from === undefined && taken.length > 0 && left.length > 0;
    onBox({
      text:
        from !== undefined ? box.text : taken.length === 0 ? given : left.map(({ text }) => text).join("\n"),
      taken: [
        ...(names.length === 0 ? [] : [`Taken: ${listed([...new Set(names)])}.`]),
        ...(from === undefined ? [] : [`From ${from}.`]),
      ],
      left: [
        ...new Set([...left.map(({ says }) => says), ...lacks]),
        ...(stays ? ["What was left out stays in the box."] : []),
      ],
      of: reportsText({ ...places, plan: next }),
    });
  };
  const refuse = (why: string) => onBox({ ...box, taken: [], left: [why], of: reportsText(places) });
  const fetchAll = async () => {
    setAsking(true);
    const answer = await fetchReports(codes);
    setAsking(false);
    if (!answer.ok) return refuse(answer.why);
    const { from, missing, text } = answer;
    const lacks = missing.length === 0 ? [] : [`${from} has no report of ${listed(missing)}.`];
    if (text === "") refuse(lacks.join(" "));
    else take(text, from, lacks);
  };
  const isTrue = box.of === reportsText(places);
  return (
    <section className="cond-part">
      <h2>Reports in</h2>
      <form
        onSubmit={(event) => {
          event.preventDefault();
          take(box.text);
        }}
      >
        <label className="field" htmlFor={id}>
          <span>METAR and TAF, as they come; of any field of this flight</span>
        </label>
        <textarea
          id={id}
          className="cond-paste"
          rows={3}
          value={box.text}
          spellCheck={false}
          autoCapitalize="characters"
          autoComplete="off"
          onChange={({ target }) => onBox({ ...EMPTY_BOX, text: target.value })}
        />
        <div className="row-of-buttons">
          <button type="submit" className="button filled" disabled={box.text.trim() === ""}>
            Take them
          </button>
          <button
            type="button"
            className="button"
            aria-busy={asking}
            disabled={asking || codes.length === 0}
            onClick={() => void fetchAll()}
          >
            Fetch reports
          </button>
        </div>
      </form>
      <div role="status" className="cond-told">
        {isTrue ? (
          <>
            {box.taken.map((says) => (
              <p key={says}>{says}</p>
            ))}
            {box.left.map((says) => (
              <p key={says} className="cond-fault">
                {says}
              </p>
            ))}
          </>
        ) : null}
      </div>
    </section>
  );
}
