import type { LoadFigures } from "@witnessmark/assess";
import type { Loading } from "@witnessmark/book";
import { unitsOf, withSymbol } from "@witnessmark/engine";
import type { PlannedLoad } from "@witnessmark/ledger";
import { type ReactNode, useState } from "react";
import { itemsAt, withoutItem } from "../../flight/plan-load.ts";
import type { FlightEditing } from "../../flight/use-flight-editing.ts";
import { figure } from "../../words/figures.ts";
import { FigurePopup } from "../walk/figure-popup.tsx";
import { understandFigure } from "../walk/understand-figure.ts";
import { type Amount, stepped } from "./amount.ts";
import { AmountRule } from "./amount-rule.tsx";
import { faultsInHand } from "./faults-at.ts";
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
}

/** What is in hand: its name, less and more, its rule, and the way to everything else about it. */
export function HandPanel(props: HandPanelProps) {
  const { loading, load, figures, units, hand, amount, editing, undo, onHand, onLoad } = props;
  const [asking, setAsking] = useState<"figure" | "item" | null>(null);
  const { value, unit } = amount;
  const decimals = value === null || Number.isInteger(value) ? 0 : Math.min(2, decimalsOf(value));
  const text = value === null ? "nothing said" : withSymbol(figure(value, decimals), unit);
  const set = (next: number) => onLoad(amount.put({ value: next, unit }));
  const stepText = withSymbol(String(amount.step), unit);
  const faults = faultsInHand(hand, amount, figures, units);
  const { item } = amount;
  const seat = hand.kind === "station" && loading.stations.find(({ id }) => id === hand.id)?.kind === "seat";
  return (
    <section className="hand" aria-label="In hand">
      <div className="hand-who">
        <h2>{amount.title}</h2>
        <p className={faults.length > 0 ? "stop" : undefined}>{faults[0] ?? amount.under}</p>
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
        <b>{value === null ? "–" : figure(value, decimals)}</b> <span>{symbolOf(unit)}</span>
        <span className="out-of-sight">
          {amount.title}, {text}: type it
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
          step={amount.dimension === "mass" ? 1 : amount.step}
          onHold={editing.hold}
          onChange={set}
          onRelease={editing.release}
        />
      </div>
      <Things hand={hand} loading={loading} load={load} amount={amount} onHand={onHand} />
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

const decimalsOf = (value: number) => String(value).split(".")[1]?.length ?? 0;

/** Several things lie in one bay: which one is in hand, and one more. */
function Things({
  hand,
  loading,
  load,
  amount,
  onHand,
}: Pick<HandPanelProps, "hand" | "loading" | "load" | "amount" | "onHand">) {
  if (hand.kind !== "station") return null;
  const station = loading.stations.find(({ id }) => id === hand.id);
  const items = itemsAt(load, hand.id);
  if (station === undefined || (station.kind === "seat" && items.length < 2) || items.length === 0)
    return null;
  const adding = amount.item === undefined;
  return (
    <ul className="hand-things" aria-label={`In ${station.name}`}>
      {items.map(({ id, what, mass }, index) => (
        <li key={id}>
          <button
            type="button"
            aria-pressed={id === amount.item?.id}
            onClick={() => onHand({ kind: "station", id: hand.id, item: id })}
          >
            {what.trim() === "" ? `${station.kind === "bay" ? "Bag" : "Person"} ${index + 1}` : what}{" "}
            {withSymbol(figure(mass.value, Number.isInteger(mass.value) ? 0 : 1), mass.unit)}
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
