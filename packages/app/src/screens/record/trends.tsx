import { type Trend, valueText } from "@witnessmark/assess";
import type { OpenAircraft } from "../../frame/open-aircraft.ts";
import { Mark } from "../../marks/mark.tsx";
import { useMinute } from "../../preferences/clock.ts";
import { href } from "../../routes/route.ts";
import { capital } from "../../words/capital.ts";
import { tally } from "../../words/figures.ts";
import { addressOf, useTrends } from "./trend-hand.ts";
import { TrendLog } from "./trend-log.tsx";
import "./trends.css";

/** So many series stand with their stripes; those that move always do. */
const WITH_STRIPES = 4;

/** Whether anything has moved since it was last looked at: one block a series, those worth telling first. */
export function Trends({ open }: { readonly open: OpenAircraft }) {
  const trends = useTrends(open);
  const now_ms = useMinute() * 60_000;
  const told = trends?.filter(({ fit }) => fit.kind !== "too-few") ?? [];
  const moving = told.filter(({ fit }) => fit.kind !== "steady").length;
  const drawn = told.slice(0, Math.max(moving, WITH_STRIPES));
  const rest = trends?.filter((trend) => !drawn.includes(trend)) ?? [];
  return (
    <section id="record-trends" className="trends">
      <h2>
        Has it moved? <span>{trends === null ? "" : `${trends.length} followed`}</span>
      </h2>
      {trends === null ? (
        <p className="record-none">Comparing every reading with those before it.</p>
      ) : trends.length === 0 ? (
        <p className="record-none">
          No reading yet that could be compared. Pressures, levels and voltages read on a walk will stand
          here, each under the same conditions.
        </p>
      ) : null}
      {drawn.map((trend) => (
        <Block key={trend.id} open={open} trend={trend} now_ms={now_ms} />
      ))}
      {rest.length === 0 ? null : (
        <ul className="trend-rest">
          {rest.map((trend) => (
            <li key={trend.id}>
              <a href={pageOf(open, trend)}>
                <b>{trend.title}</b>
                <b>{lastText(trend)}</b>
                <span>
                  {capital(trend.quantity)}. {trend.sentence}
                </span>
              </a>
            </li>
          ))}
        </ul>
      )}
    </section>
  );
}

const pageOf = ({ registration }: OpenAircraft, trend: Trend): string =>
  href({ at: "trend", registration, trend: addressOf(trend) });

const lastText = ({ points, unit }: Trend): string => {
  const last = points.at(-1);
  return last === undefined ? "–" : valueText(last.shown, unit);
};

interface BlockProps {
  readonly open: OpenAircraft;
  readonly trend: Trend;
  readonly now_ms: number;
}

function Block({ open, trend, now_ms }: BlockProps) {
  return (
    <article className={`trend row-${trend.status}`}>
      <h3>
        <a
          href={pageOf(open, trend)}
          aria-label={`${trend.status === "caution" ? "Caution, " : ""}${trend.title}, ${trend.quantity}: chart and all readings`}
        >
          {trend.status === "caution" ? <Mark status={trend.status} size_px={24} /> : null}
          {trend.title}
        </a>
        <span>{trend.unit.symbol}</span>
      </h3>
      <TrendLog trend={trend} now_ms={now_ms} />
      <p>{trend.sentence}</p>
      <p className="record-small">
        {trend.quantity}, {tally(trend.total, "reading")}
      </p>
    </article>
  );
}
