import { band } from "@witnessmark/assess";
import type { Check, Reading } from "@witnessmark/book";
import { fromSI, type Measure, toSI, UNITS, withSymbol } from "@witnessmark/engine";
import type { OpenAircraft } from "../../frame/open-aircraft.ts";
import { StripeLog } from "../../instruments/stripe-log.tsx";
import { WALK_NAMES } from "../../walk/open-walk.ts";
import { useWalkPlan } from "../../walk/order/use-walk-plan.ts";
import { carriedValue, entryUnit } from "../../walk/reading-view.ts";
import { dayMonth, isSameDay } from "../../words/dates.ts";
import { figure } from "../../words/figures.ts";
import { HAPPENING_NAMES, HAPPENINGS } from "../../words/happenings.ts";
import { BandChart } from "./band-chart.tsx";

const METHODS = ["look", "touch", "move", "measure", "count", "drain", "listen"] as const;

/** One check as the book has it: place, method, what right looks like, limits, and what makes it untrue. */
export function CheckPage({ open, check }: { readonly open: OpenAircraft; readonly check: Check }) {
  const { book } = open;
  const point = book.points.get(check.point);
  const stop = useWalkPlan(open, "first-of-day").stops.find(({ steps }) =>
    steps.some(({ kind, id }) => kind === "check" && id === check.id),
  );
  const { reading } = check;
  return (
    <article className="check-page">
      <p className="where">
        {point?.name ?? check.point},{" "}
        {stop === undefined ? book.stancesById.get(check.stance)?.name : `stance ${stop.number}`}
      </p>
      <h2>{check.title}</h2>
      <dl className="fields">
        {point === undefined ? null : (
          <Field label="Place">
            <span className="boxes">
              {(["aft", "right", "up"] as const).map((way, axis) => (
                <span className="box" key={way}>
                  {figure(point.place[axis] ?? 0, 2)}
                  <small>m {way}</small>
                </span>
              ))}
            </span>
          </Field>
        )}
        <Field label="Method">
          <ul className="pick">
            {METHODS.map((method) => (
              <li key={method} aria-current={method === check.method ? "true" : undefined}>
                {method}
              </li>
            ))}
          </ul>
        </Field>
        {check.how === undefined ? null : <Field label="Do">{check.how}</Field>}
        <Field label="Should be">{check.shouldBe}</Field>
        <Field label="Why">{check.why}</Field>
        <Field label="If missed">{check.hazard.ifMissed}</Field>
        {check.faults.length === 0 ? null : (
          <Field label="Faults">{check.faults.map((fault) => fault.name).join(", ")}</Field>
        )}
        {reading === undefined ? null : (
          <>
            <Field label="Gauge">{book.gauges.get(reading.gauge)?.name ?? reading.gauge}</Field>
            <Field label="Limit">
              <LimitBoxes reading={reading} resolution={book.gauges.get(reading.gauge)?.resolution} />
            </Field>
            <BandChart book={book} check={check} reading={reading} />
          </>
        )}
        <Field label="Untrue after">
          <ul className="pick pick-happenings">
            {HAPPENINGS.map((kind) => (
              <li key={kind} aria-current={check.holds.until.includes(kind) ? "true" : undefined}>
                {HAPPENING_NAMES[kind].toLowerCase()}
              </li>
            ))}
          </ul>
        </Field>
        {check.holds.atMost === undefined ? null : (
          <Field label="At most">
            {withSymbol(figure(check.holds.atMost.value), check.holds.atMost.unit)} old
          </Field>
        )}
        <Field label="Walks">{check.walks.map((kind) => WALK_NAMES[kind].toLowerCase()).join(", ")}</Field>
        {check.jasc === undefined ? null : <Field label="JASC">{check.jasc}</Field>}
      </dl>
      {reading === undefined ? null : <Moved open={open} check={check} reading={reading} />}
    </article>
  );
}

function Field({ label, children }: { readonly label: string; readonly children: React.ReactNode }) {
  return (
    <>
      <dt>{label}</dt>
      <dd>{children}</dd>
    </>
  );
}

function LimitBoxes({
  reading,
  resolution,
}: {
  readonly reading: Reading;
  readonly resolution: Measure | undefined;
}) {
  const { limit } = reading;
  const places = (value: number) => String(value).split(".")[1]?.length ?? 0;
  const text = ({ value, unit }: Measure) =>
    figure(
      value,
      unit === resolution?.unit ? Math.max(places(value), places(resolution.value)) : places(value),
    );
  if (limit.by === "table") {
    return <>{limit.rows.length} rows against temperature, joined by straight lines</>;
  }
  const boxes =
    limit.by === "tyre"
      ? [{ key: "service", measure: limit.service, note: "service" }]
      : [
          ...(limit.low === undefined ? [] : [{ key: "low", measure: limit.low, note: "least" }]),
          ...(limit.high === undefined ? [] : [{ key: "high", measure: limit.high, note: "most" }]),
        ];
  const at = "at" in limit ? limit.at : undefined;
  return (
    <span className="boxes">
      {boxes.map(({ key, measure, note }) => (
        <span className="box" key={key}>
          {text(measure)}
          <small>
            {UNITS[measure.unit].symbol} {note}
          </small>
        </span>
      ))}
      {at === undefined ? null : (
        <span className="box">
          {text(at)}
          <small>{UNITS[at.unit].symbol}</small>
        </span>
      )}
    </span>
  );
}

/** The last looks as stripes: straight while nothing moves. Compared at the temperature the book writes its limit for. */
function Moved({
  open,
  check,
  reading,
}: {
  readonly open: OpenAircraft;
  readonly check: Check;
  readonly reading: Reading;
}) {
  const { book, state } = open;
  const gauge = book.gauges.get(reading.gauge);
  const readings = (state.checks.get(check.id)?.readings ?? []).slice(-8);
  if (gauge === undefined || readings.length < 2) return null;
  const entry = entryUnit(reading, gauge, undefined);
  const at =
    "at" in reading.limit ? { value: reading.limit.at.value, unit: reading.limit.at.unit } : undefined;
  const rows = readings.flatMap((each) => {
    const carried =
      at === undefined ? toSI(each.read.value, each.read.unit) : carriedValue(reading, each, at);
    if (carried === undefined) return [];
    const value = fromSI(carried, entry.unit);
    const at_ms = Date.parse(each.recordedAt);
    return [
      {
        key: each.event,
        when: isSameDay(at_ms, Date.now()) ? "Today" : dayMonth(at_ms),
        value,
        text: figure(value, entry.decimals),
      },
    ];
  });
  const limits = band(check, book, at);
  const low = limits?.low === undefined ? undefined : fromSI(limits.low, entry.unit);
  const high = limits?.high === undefined ? undefined : fromSI(limits.high, entry.unit);
  const ends = [
    ...rows.map((row) => row.value),
    ...(low === undefined ? [] : [low]),
    ...(high === undefined ? [] : [high]),
  ];
  const span = Math.max(...ends) - Math.min(...ends) || entry.step * 10;
  return (
    <section className="moved">
      <h3>
        Has it moved?{" "}
        <span>{`${UNITS[entry.unit].symbol}${at === undefined ? "" : ` at ${withSymbol(figure(at.value), at.unit)}`}`}</span>
      </h3>
      <StripeLog
        rows={rows}
        min={Math.min(...ends) - span * 0.25}
        max={Math.max(...ends) + span * 0.25}
        {...(low === undefined ? {} : { low: { value: low, text: figure(low, entry.decimals) } })}
        {...(high === undefined ? {} : { high: { value: high, text: figure(high, entry.decimals) } })}
        label={`${reading.quantity}, the last looks`}
      />
    </section>
  );
}
