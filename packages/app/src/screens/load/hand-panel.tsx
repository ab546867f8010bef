import type { LoadFigures } from "@witnessmark/assess";
import type { Loading } from "@witnessmark/book";
import { unitsOf, withSymbol } from "@witnessmark/engine";
import type { LoadedItem, PlannedLoad } from "@witnessmark/ledger";
import { type ReactNode, useState } from "react";
import { itemsAt, withoutItem } from "../../flight/plan-load.ts";
import type { FlightEditing } from "../../flight/use-flight-editing.ts";
import { figure } from "../../words/figures.ts";
import { FigurePopup } from "../walk/figure-popup.tsx";
import { understandFigure } from "../walk/understand-figure.ts";
import { type Amount, slideStep, stepped } from "./amount.ts";
import { AmountRule } from "./amount-rule.tsx";
import { faultsInHand } from "./faults-at.ts";
import { type LiveLoad, useFollowing } from "./follow/live-load.ts";
import { type Parts, useParts } from "./follow/parts.ts";
import type { InHand } from "./in-hand.ts";
import { ItemPopup } from "./item-popup.tsx";
import { type LoadUnits, symbolOf } from "./load-units.ts";

interface HandPanelProps {
  readonly loading: Loading;
  readonly load: PlannedLoad;
  readonly figures: LoadFigures;
  readonly units: LoadUnits;
  readonly hand: InHand;
  readonly amount: Amount;
  readonly editing: FlightEditing;
  /** Where it stands in the panel and not over the drawing. */
  readonly undo: ReactNode;
  readonly onHand: (hand: InHand) => void;
  readonly onLoad: (load: PlannedLoad) => void;
  readonly live: LiveLoad;
  /** A finger moves what is in hand to this. */
  readonly onDrag: (value: number) => void;
}

/** What is in hand: its name, less and more, its rule, and the way to everything else about it. */
export function HandPanel(props: HandPanelProps) {
  const { loading, load, figures, units, hand, amount, editing, undo, onHand, onLoad, live, onDrag } = props;
  const [asking, setAsking] = useState<"figure" | "item" | null>(null);
  const { value, unit } = amount;
  const decimals = decimalsOf(value);
  const text = wordsOf(amount);
  const set = (next: number) => onLoad(amount.put({ value: next, unit }));
  const stepText = withSymbol(String(amount.step), unit);
  const faults = faultsInHand(hand, amount, figures, units);
  const parts = useParts();
  useFollowing(
    live,
    ({ amount: now }) => ({
      figure: figureOf(now),
      follows: now.unit === unit && now.title === amount.title,
    }),
    (now) => {
      parts.say("figure", now.figure);
      return now.follows;
    },
  );
  useFollowing(
    live,
    (step) => {
      const { amount: now } = step;
      const [wrong] = faultsInHand(hand, now, step.figures, units);
      return {
        under: wrong ?? now.under,
        kind: wrong === undefined ? "" : "stop",
        typed: typeIt(now),
        thing: now.item === undefined ? null : ([`thing ${now.item.id}`, thingOf(now.item)] as const),
      };
    },
    (now) => {
      parts.say("under", now.under);
      parts.put("under", "class", now.kind);
      parts.say("typed", now.typed);
      if (now.thing !== null) parts.say(...now.thing);
      return true;
    },
    "rest",
  );
  const { item } = amount;
  const seat = hand.kind === "station" && loading.stations.find(({ id }) => id === hand.id)?.kind === "seat";
  return (
    <section className="hand" aria-label="In hand">
      <div className="hand-who">
        <h2>{amount.title}</h2>
        <p ref={parts.ref("under")} className={faults.length > 0 ? "stop" : ""}>
          {faults[0] ?? amount.under}
        </p>
      </div>
      <button
        type="button"
        className="step-button hand-less"
        aria-label={`${stepText} less`}
        onClick={() => set(stepped(amount, -1))}
      >
        −
      </button>
      <button type="button" className="hand-figure" onClick={() => setAsking("figure")}>
        <span className="hand-figure-box">
          <b ref={parts.ref("figure")}>{figureOf(amount)}</b> <span>{symbolOf(unit)}</span>
          <span ref={parts.ref("typed")} className="out-of-sight">
            {typeIt(amount)}
          </span>
        </span>
      </button>
      <button
        type="button"
        className="step-button hand-more"
        aria-label={`${stepText} more`}
        onClick={() => set(stepped(amount, 1))}
      >
        +
      </button>
      {undo}
      <div className="hand-acts">
        {hand.kind === "station" ? (
          <button
            type="button"
            className="button"
            disabled={item === undefined}
            onClick={() => setAsking("item")}
          >
            {seat ? "Who" : "What"}
          </button>
        ) : null}
        {hand.kind === "station" ? (
          <button
            type="button"
            className="button"
            disabled={item === undefined}
            onClick={() => {
              if (item !== undefined) onLoad(withoutItem(load, item.id));
              onHand({ kind: "station", id: hand.id });
            }}
          >
            {seat ? "Empty seat" : "Take out"}
          </button>
        ) : (
          <button
            type="button"
            className="button"
            onClick={() =>
              onHand(
                hand.kind === "tanks" ? { kind: "tank", id: loading.tanks[0]?.id ?? "" } : { kind: "tanks" },
              )
            }
          >
            {hand.kind === "tanks" ? "One tank" : "All tanks"}
          </button>
        )}
      </div>
      <div className="hand-rule">
        <AmountRule
          label={amount.title}
          valueText={text}
          value={value ?? 0}
          max={amount.max}
          limit={amount.limit}
          step={slideStep(amount)}
          live={live}
          textOf={wordsOf}
          onHold={editing.hold}
          onDrag={onDrag}
          onChange={set}
          onRelease={editing.release}
        />
      </div>
      <Things hand={hand} loading={loading} load={load} amount={amount} onHand={onHand} parts={parts} />
      {asking === "figure" ? (
        <FigurePopup
          title={amount.title}
          units={unitsOf(amount.dimension).filter((id) => LOADED_IN.includes(id))}
          unit={unit}
          value={value}
          decimals={decimals}
          step={amount.step}
          understand={(typed, chosen) =>
            understandFigure(typed, chosen, amount.dimension === "mass" ? "84" : "170", { least: 0 })
          }
          onSet={(read) => {
            onLoad(amount.put(read));
            setAsking(null);
          }}
          onClose={() => setAsking(null)}
        />
      ) : null}
      {asking === "item" && item !== undefined ? (
        <ItemPopup
          loading={loading}
          load={load}
          item={item}
          onLoad={onLoad}
          onHand={onHand}
          onClose={() => setAsking(null)}
        />
      ) : null}
    </section>
  );
}

/** Units in which anything that is loaded is told. */
const LOADED_IN: readonly string[] = ["kg", "lb", "g", "oz", "L", "USgal", "impgal"];

/** As many as were typed, two at most. */
const decimalsOf = (value: number | null) =>
  value === null ? 0 : Math.min(2, String(value).split(".")[1]?.length ?? 0);

const figureOf = ({ value }: Amount) => (value === null ? "–" : figure(value, decimalsOf(value)));

const wordsOf = (amount: Amount) =>
  amount.value === null ? "nothing said" : withSymbol(figureOf(amount), amount.unit);

const typeIt = (amount: Amount) => `${amount.title}, ${wordsOf(amount)}: type it`;

const thingOf = ({ mass }: LoadedItem) =>
  withSymbol(figure(mass.value, Number.isInteger(mass.value) ? 0 : 1), mass.unit);

/** Several things lie in one bay: which one is in hand, and one more. */
function Things({
  hand,
  loading,
  load,
  amount,
  onHand,
  parts,
}: Pick<HandPanelProps, "hand" | "loading" | "load" | "amount" | "onHand"> & { readonly parts: Parts }) {
  if (hand.kind !== "station") return null;
  const station = loading.stations.find(({ id }) => id === hand.id);
  const items = itemsAt(load, hand.id);
  if (station === undefined || (station.kind === "seat" && items.length < 2) || items.length === 0)
    return null;
  const adding = amount.item === undefined;
  return (
    <ul className="hand-things" aria-label={`In ${station.name}`}>
      {items.map((item, index) => (
        <li key={item.id}>
          <button
            type="button"
            aria-pressed={item.id === amount.item?.id}
            onClick={() => onHand({ kind: "station", id: hand.id, item: item.id })}
          >
            {item.what.trim() === ""
              ? `${station.kind === "bay" ? "Bag" : "Person"} ${index + 1}`
              : item.what}{" "}
            <span ref={parts.ref(`thing ${item.id}`)}>{thingOf(item)}</span>
          </button>
        </li>
      ))}
      <li>
        <button
          type="button"
          aria-pressed={adding}
          onClick={() => onHand({ kind: "station", id: hand.id, item: "" })}
        >
          {station.kind === "bay" ? "One more bag" : "One more"}
        </button>
      </li>
    </ul>
  );
}
