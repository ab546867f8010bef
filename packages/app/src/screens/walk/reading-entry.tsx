import { checkReading } from "@witnessmark/assess";
import type { Book } from "@witnessmark/book";
import { UNITS, unitsOf, withSymbol } from "@witnessmark/engine";
import { useState } from "react";
import { TwoPartRule } from "../../instruments/two-part-rule.tsx";
import { preferences } from "../../preferences/preferences.ts";
import { temperatureText } from "../../walk/reading-view.ts";
import { capital } from "../../words/capital.ts";
import { figure, figureSaid } from "../../words/figures.ts";
import { FigurePopup } from "./figure-popup.tsx";
import { understandFigure } from "./understand-figure.ts";
import type { ReadingInHand } from "./use-reading.ts";

/** The rule, and − value + with the temperature that moves the limit. */
export function ReadingEntry({
  book,
  inHand,
  wide,
}: {
  readonly book: Book;
  readonly inHand: ReadingInHand;
  readonly wide: boolean;
}) {
  const { reading, gauge, entry, view, read, verdict, temperature } = inHand;
  const [typing, setTyping] = useState<"value" | "temperature" | null>(null);
  const now = view.values.now;
  const start = now ?? view.values.last ?? middleOf(view.values);
  const text = now === null ? "not read" : withSymbol(figureSaid(now, entry.decimals), entry.unit);
  const step = (way: 1 | -1) => inHand.setValue(start + way * entry.step);
  const stepText = withSymbol(figure(entry.step, entry.decimals), entry.unit);
  const { symbol } = UNITS[entry.unit];
  const code = wide ? /\b[A-Z]{1,4}-?\d+\b/.exec(gauge.name)?.[0] : undefined;
  const gaugeText = `gauge${code === undefined ? "" : ` ${code}`} ±${view.doubtText}`;
  return (
    <div className="instrument">
      <div className="scale">
        <TwoPartRule
          values={view.values}
          texts={view.texts}
          step={entry.step}
          outside={isOutside(verdict)}
          label={reading.quantity}
          valueText={text}
          nut_px={wide ? 21 : 20}
          onChange={inHand.setValue}
        />
      </div>
      <p className="reading-odd" role="status">
        {inHand.odd}
      </p>
      <div className={inHand.needsTemperature ? "entry" : "entry entry-plain"}>
        <button
          type="button"
          className="step-button"
          aria-label={`${stepText} less`}
          onClick={() => step(-1)}
        >
          −
        </button>
        <button type="button" className="read" onClick={() => setTyping("value")}>
          <b className={now === null ? "unread" : undefined}>
            {now === null ? "–" : figureSaid(now, entry.decimals)}
          </b>
          <span>{symbol === "" ? gaugeText : `${symbol}, ${gaugeText}`}</span>
          <span className="out-of-sight">
            {reading.quantity}, {text}: type it
          </span>
        </button>
        <button type="button" className="step-button" aria-label={`${stepText} more`} onClick={() => step(1)}>
          +
        </button>
        {inHand.needsTemperature ? (
          <button type="button" className="temp" onClick={() => setTyping("temperature")}>
            {ofWhat(reading.temperatureOf)} at
            <b>
              {temperature === undefined
                ? `– ${UNITS[temperatureUnit()].symbol}`
                : temperatureText(temperature)}
            </b>
          </button>
        ) : null}
      </div>
      {typing === "value" ? (
        <FigurePopup
          title={capital(reading.quantity)}
          units={unitsOf(reading.dimension)}
          unit={entry.unit}
          value={read === null ? null : now}
          decimals={entry.decimals}
          step={entry.step}
          understand={(typed, unit) => checkReading(inHand.check, book, typed, unit)}
          onSet={(next) => {
            inHand.setRead(next);
            setTyping(null);
          }}
          onClose={() => setTyping(null)}
        />
      ) : null}
      {typing === "temperature" ? <TemperaturePopup inHand={inHand} onClose={() => setTyping(null)} /> : null}
    </div>
  );
}

/** Past a limit, whatever the book makes of that. */
export const isOutside = (verdict: ReadingInHand["verdict"]): boolean =>
  verdict?.margin !== undefined && verdict.margin.value < 0;

const temperatureUnit = () => preferences.get().units.temperature ?? "degC";

function TemperaturePopup({
  inHand,
  onClose,
}: {
  readonly inHand: ReadingInHand;
  readonly onClose: () => void;
}) {
  const unit = inHand.temperature?.unit ?? temperatureUnit();
  return (
    <FigurePopup
      title={`${capital(inHand.reading.temperatureOf ?? "its")} temperature`}
      units={unitsOf("temperature").filter((id) => id === "degC" || id === "degF")}
      unit={unit}
      value={inHand.temperature?.value ?? null}
      decimals={0}
      step={1}
      understand={(typed, chosen) => understandFigure(typed, chosen, "4")}
      hint="As the thing itself is, not the air: parked for three hours or more, it is as warm as the air around it."
      onSet={(next) => {
        inHand.setTemperature(next);
        onClose();
      }}
      onClose={onClose}
    />
  );
}

/** "Tyre": in the room of a small button; a longer word than fits is "It is". */
const ofWhat = (word: string | undefined) =>
  word === undefined || word.length > 8 ? "It is" : capital(word);

function middleOf({ min, max, low = min, high = max }: ReadingInHand["view"]["values"]): number {
  return (low + high) / 2;
}
