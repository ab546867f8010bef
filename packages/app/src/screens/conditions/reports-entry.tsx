import type { FlightPlan } from "@witnessmark/ledger";
import { useId, useState } from "react";
import { isoWithOffset } from "../../words/dates.ts";
import { fetchReports } from "./fetch-reports.ts";
import { ROLES, type Role } from "./plan-field.ts";
import { sortReports, withReports } from "./sort-reports.ts";

export interface ToldOfReports {
  readonly says: readonly string[];
  /** Nothing of it could be taken. */
  readonly refused: boolean;
}

interface ReportsEntryProps {
  readonly plan: FlightPlan;
  readonly role: Role;
  /** What became of what was pasted or fetched last; kept by the screen, which may show this elsewhere by then. */
  readonly told: ToldOfReports;
  readonly onTold: (told: ToldOfReports) => void;
  /** The plan with what was pasted or fetched in its place. */
  readonly onPlan: (plan: FlightPlan) => void;
}

const listed = (words: readonly string[]): string =>
  words.length < 2 ? words.join("") : `${words.slice(0, -1).join(", ")} and ${words.at(-1) ?? ""}`;

/** METAR and TAF, pasted or typed in one box, or fetched through our server. */
export function ReportsEntry({ plan, role, told, onTold, onPlan }: ReportsEntryProps) {
  const id = useId();
  const [text, setText] = useState("");
  const [asking, setAsking] = useState(false);
  const codes = [...new Set(ROLES.flatMap((each) => plan[each]?.code ?? []))];
  const take = (given: string, more: readonly string[]): boolean => {
    const { taken, left } = sortReports(given, plan, role);
    if (taken.length > 0) onPlan(withReports(plan, taken, isoWithOffset(Date.now())));
    const names = taken.map(({ kind, roles }) => {
      const places = listed([...new Set(roles.flatMap((each) => plan[each]?.code ?? []))]);
      return `${kind === "metar" ? "METAR" : "TAF"} of ${places}`;
    });
    const says = [...(names.length === 0 ? [] : [`Taken: ${listed(names)}.`]), ...left, ...more];
    onTold({ says, refused: taken.length === 0 });
    return taken.length > 0;
  };
  const fetchAll = async () => {
    setAsking(true);
    const answer = await fetchReports(codes);
    setAsking(false);
    if (!answer.ok) {
      onTold({ says: [answer.why], refused: true });
      return;
    }
    const { from, missing } = answer;
    const lacks = missing.length === 0 ? [] : [`${from} has no report of ${listed(missing)}.`];
    if (answer.text === "") onTold({ says: lacks, refused: true });
    else take(answer.text, [`From ${from}.`, ...lacks]);
  };
  return (
    <section className="cond-part">
      <h2>Reports in</h2>
      <form
        onSubmit={(event) => {
          event.preventDefault();
          if (take(text, [])) setText("");
        }}
      >
        <label className="field" htmlFor={id}>
          <span>METAR and TAF, as they come; of any field of this flight</span>
        </label>
        <textarea
          id={id}
          className="cond-paste"
          rows={3}
          value={text}
          spellCheck={false}
          autoCapitalize="characters"
          autoComplete="off"
          onChange={({ target }) => setText(target.value)}
        />
        <div className="row-of-buttons">
          <button type="submit" className="button filled" disabled={text.trim() === ""}>
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
      <div role="status" className={told.refused ? "cond-fault" : "cond-told"}>
        {told.says.map((one) => (
          <p key={one}>{one}</p>
        ))}
      </div>
    </section>
  );
}
