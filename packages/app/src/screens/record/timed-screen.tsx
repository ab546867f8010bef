import { dueForecast, leftText, type TimedFigure } from "@witnessmark/assess";
import { AircraftFrame } from "../../frame/aircraft-frame.tsx";
import type { OpenAircraft } from "../../frame/open-aircraft.ts";
import { Mark } from "../../marks/mark.tsx";
import { href } from "../../routes/route.ts";
import { dayMonth, dayOfDate } from "../../words/dates.ts";
import { figure, tally } from "../../words/figures.ts";
import { Working } from "../decide/working.tsx";
import { ComponentPart } from "./component-part.tsx";
import { DoneForm } from "./done-form.tsx";
import { ExperienceForm } from "./experience-form.tsx";
import { offeredItem } from "./pilot-offers.ts";
import { RunsOutRule } from "./runs-out-rule.tsx";
import { TakeBack } from "./take-back.tsx";
import { useTimed } from "./timed-now.ts";
import { FollowIt, NoLongerFollowed } from "./to-follow.tsx";
import { whyItStops } from "./why-it-stops.ts";
import "../decide/decide.css";
import "./record.css";

interface TimedScreenProps {
  readonly open: OpenAircraft;
  readonly id: string;
}

/** One thing that runs out: until when, why, what was done about it, and a form to write down that it was done. */
export function TimedScreen({ open, id }: TimedScreenProps) {
  const { registration } = open;
  const found = useTimed(open).figures.find(({ item }) => item.id === id);
  const offered = found === undefined ? offeredItem(id, open.book) : undefined;
  return (
    <AircraftFrame open={open} sheet="record" title="Record" under="What runs out" className="record">
      <main className="record-one">
        <a className="back-row" href={href({ at: "record", registration, part: "timed" })}>
          Back to what runs out
        </a>
        {found !== undefined ? (
          <Followed open={open} found={found} />
        ) : offered !== undefined ? (
          <FollowIt open={open} offered={offered} />
        ) : (
          <p className="record-none">Nothing of this name is followed for {registration}.</p>
        )}
      </main>
    </AircraftFrame>
  );
}

function Followed({ open, found }: { readonly open: OpenAircraft; readonly found: TimedFigure }) {
  const { item } = found;
  const verdict = open.assessment.verdicts.find((each) => each.id === `timed:${item.id}`);
  const why = whyItStops(verdict);
  return (
    <>
      <div className={`one-head timed-head row-${verdict?.status ?? "open"}`}>
        <div>
          <span className="discrepancy-head">
            <Mark status={verdict?.status ?? "open"} size_px={28} />
            <h2>{item.name}</h2>
            <b className={verdict?.status ?? "open"}>{verdict?.margin?.text ?? leftText(found.nearest)}</b>
          </span>
          <p>{verdict?.says}</p>
          {why === undefined ? null : (
            <p>
              <strong>{why}</strong>
            </p>
          )}
          <p className="record-small">{item.why}</p>
        </div>
      </div>
      <div className="timed-rule">
        <RunsOutRule figure={found} />
      </div>
      {found.nearest?.by === "unknown" && item.limits.some(({ by }) => by === "counter") ? (
        <a className="button timed-counters" href={href({ at: "after", registration: open.registration })}>
          Write down what the counters show
        </a>
      ) : null}
      <Forecast open={open} figure={found} />
      {verdict === undefined ? null : <Working verdict={verdict} />}
      {item.component === undefined ? null : (
        <ComponentPart open={open} component={item.component} item={item} />
      )}
      {item.counts === undefined ? <Done open={open} id={item.id} /> : null}
      {item.counts === undefined ? (
        <DoneForm key={item.id} open={open} followed={{ item }} />
      ) : (
        <ExperienceForm open={open} />
      )}
      {found.isInBook ? null : <NoLongerFollowed open={open} item={item} />}
    </>
  );
}

/** When what is left will be used up, by how the aircraft was used: for planning, and never the limit itself. */
function Forecast({
  open,
  figure: { nearest },
}: {
  readonly open: OpenAircraft;
  readonly figure: TimedFigure;
}) {
  const { now_ms, today } = useTimed(open);
  if (nearest?.by !== "counter") return null;
  const readings = open.state.counters.get(nearest.counter.id) ?? [];
  const forecast = dueForecast(nearest, readings, today, now_ms);
  if (forecast === undefined) return null;
  const { expected, earliest, latest, spans } = forecast;
  const range =
    earliest === latest
      ? ""
      : `, ${dayOfDate(earliest)} if as busy as at its busiest, ${latest === undefined ? "not for years" : dayOfDate(latest)} if as quiet as at its quietest`;
  return (
    <p className="record-small timed-forecast">
      Used as in the last {tally(spans, "month")}, about {dayOfDate(expected)}
      {range}. The figure above is what counts.
    </p>
  );
}

/** So many times at once. */
const TIMES_SHOWN = 6;

function Done({ open, id }: TimedScreenProps) {
  const done = (open.state.timedDone.get(id) ?? []).toReversed();
  return (
    <section className="one-section">
      <h3>Done before</h3>
      {done.length === 0 ? (
        <p className="record-none">
          Nobody has written down when it was last done. Until then its answer stays open.
        </p>
      ) : (
        <ol className="life">
          {done.slice(0, TIMES_SHOWN).map((each) => (
            <li key={each.event}>
              <b>{dayOfDate(each.on)}</b>
              <span>by {each.by}</span>
              <p>
                {[
                  ...Object.entries(each.counters).map(([counter, value]) => {
                    const known = open.book.counters.find((one) => one.id === counter);
                    return `${known?.name ?? counter} ${figure(value, 1)}${known?.unit === "h" ? " h" : ""}`;
                  }),
                  ...(each.until === undefined ? [] : [`good until ${dayOfDate(each.until)}`]),
                  ...(each.serial === undefined ? [] : [`to number ${each.serial}, by its own count`]),
                  ...(each.reference === undefined ? [] : [each.reference]),
                  `written down ${dayMonth(Date.parse(each.recordedAt))} by ${each.author.name}`,
                ].join(", ")}
              </p>
              <TakeBack
                registration={open.registration}
                event={each.event}
                what={`done ${dayOfDate(each.on)} by ${each.by}`}
              />
            </li>
          ))}
        </ol>
      )}
    </section>
  );
}
