import type { Verdict } from "@witnessmark/assess";
import type { Discrepancy } from "@witnessmark/ledger";
import type { OpenAircraft } from "../../frame/open-aircraft.ts";
import { Mark } from "../../marks/mark.tsx";
import { href } from "../../routes/route.ts";
import { Growth } from "./growth.tsx";
import { WhereItIs } from "./where-it-is.tsx";
import { whyNoRelief } from "./why-it-stops.ts";

interface DiscrepanciesProps {
  readonly open: OpenAircraft;
  readonly found: readonly Discrepancy[];
  /** False in the first frame: only as many as a screen shows. */
  readonly whole: boolean;
}

/** No screen shows more of them at once. */
const ON_A_SCREEN = 8;

/** Every open discrepancy: where it is, what is said of it, how it grew. */
export function Discrepancies({ open, found, whole }: DiscrepanciesProps) {
  const verdicts = new Map(open.assessment.verdicts.map((verdict) => [verdict.id, verdict]));
  const closed = open.state.discrepancies.size - found.length;
  return (
    <section aria-label="Discrepancies">
      {found.length === 0 ? (
        <p className="record-none">
          <Mark status="clear" size_px={28} />
          <span>
            {closed === 0
              ? "Nothing was ever written down as not right."
              : `Nothing is open. ${closed === 1 ? "One was" : `${closed} were`} closed; see Past.`}
          </span>
        </p>
      ) : (
        <ul className="discrepancies">
          {(whole ? found : found.slice(0, ON_A_SCREEN)).map((each) => (
            <Row
              key={each.id}
              open={open}
              discrepancy={each}
              verdict={verdicts.get(`discrepancy:${each.id}`)}
              repeat={verdicts.get(`repeat:${each.id}`)}
            />
          ))}
        </ul>
      )}
    </section>
  );
}

interface RowProps {
  readonly open: OpenAircraft;
  readonly discrepancy: Discrepancy;
  readonly verdict: Verdict | undefined;
  /** That it was not right before, within the days in which that is told. */
  readonly repeat: Verdict | undefined;
}

function Row({ open, discrepancy, verdict, repeat }: RowProps) {
  const status = verdict?.status ?? "stop";
  const why = whyNoRelief(discrepancy, verdict);
  return (
    <li className={`row-${status}`}>
      <a href={href({ at: "discrepancy", registration: open.registration, discrepancy: discrepancy.id })}>
        <WhereItIs open={open} discrepancy={discrepancy} status={status} />
        <span className="discrepancy-words">
          <span className="discrepancy-head">
            <Mark status={status} size_px={28} />
            <b>{verdict?.title ?? discrepancy.words}</b>
          </span>
          <span>{verdict?.says ?? discrepancy.words}</span>
          {why === undefined ? null : <span className="why-it-stops">{why}</span>}
          {repeat === undefined ? null : (
            <span className="came-back">
              {repeat.title}: {repeat.margin?.text}
            </span>
          )}
        </span>
      </a>
      <Growth book={open.book} discrepancy={discrepancy} />
    </li>
  );
}
