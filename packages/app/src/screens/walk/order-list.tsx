import type { OrderedStop, OrderFaults, Step, WalkPlan } from "@witnessmark/planner";
import { stepsOf } from "@witnessmark/planner";
import { type KeyboardEvent, useMemo, useRef, useState } from "react";
import type { OpenAircraft } from "../../frame/open-aircraft.ts";
import { stepName } from "../../walk/walk-view.ts";
import { tally } from "../../words/figures.ts";
import { useDragOrder } from "./use-drag-order.ts";

interface OrderListProps {
  readonly open: OpenAircraft;
  readonly plan: WalkPlan;
  readonly stops: readonly OrderedStop[];
  readonly faults: OrderFaults;
  readonly onStop: (from: number, to: number) => void;
  readonly onStep: (id: string, way: 1 | -1) => void;
}

/** The stops in order; each is moved by its buttons, by its grip, or with Alt and an arrow key, and opens on its steps. */
export function OrderList({ open, plan, stops, faults, onStop, onStep }: OrderListProps) {
  const list = useRef<HTMLOListElement>(null);
  const [shown, setShown] = useState<ReadonlySet<string>>(new Set());
  const drag = useDragOrder(list, onStop);
  const steps = useMemo(() => new Map(stepsOf(plan).map((step) => [step.id, step])), [plan]);
  const faultOf = useMemo(() => faultsById(faults, steps, open), [faults, steps, open]);
  const byKey = (event: KeyboardEvent, move: (way: 1 | -1) => void): void => {
    if (!event.altKey || (event.key !== "ArrowUp" && event.key !== "ArrowDown")) return;
    event.preventDefault();
    move(event.key === "ArrowUp" ? -1 : 1);
  };
  return (
    <ol className="order-stops" ref={list}>
      {stops.map((stop, at) => {
        const name = open.book.stancesById.get(stop.stance)?.name ?? stop.stance;
        const key = `${stop.stance} ${stop.steps[0]}`;
        const isFaulty = stop.steps.some((id) => faultOf.has(id));
        const isShown = isFaulty || shown.has(key);
        return (
          <li key={key} className={drag.held === at ? "held" : undefined}>
            {/* biome-ignore lint/a11y/noStaticElementInteractions: the keys are heard from the buttons in it */}
            <div className="order-row" onKeyDown={(event) => byKey(event, (way) => onStop(at, at + way))}>
              <span className="order-grip" aria-hidden="true" {...drag.grip(at)} />
              <b>{at + 1}</b>
              <button
                type="button"
                className="order-name"
                aria-expanded={isShown}
                onClick={() => setShown(toggled(shown, key))}
              >
                {name}
                <small>
                  {tally(stop.steps.length, "step")}
                  {isFaulty ? ", not in order" : ""}
                </small>
              </button>
              <MoveButtons
                name={`${at + 1}, ${name}`}
                isFirst={at === 0}
                isLast={at === stops.length - 1}
                onMove={(way) => onStop(at, at + way)}
              />
            </div>
            {isShown ? (
              <ol>
                {stop.steps.map((id, place) => {
                  const step = steps.get(id);
                  const said = step === undefined ? id : stepName(step, open.book.points);
                  const fault = faultOf.get(id);
                  return (
                    <li
                      key={id}
                      className={fault === undefined ? "order-row" : "order-row wrong"}
                      onKeyDown={(event) => byKey(event, (way) => onStep(id, way))}
                    >
                      <span className="order-name">
                        {said}
                        <small>{fault ?? (step?.kind === "check" ? step.check.title : "Ground gear")}</small>
                      </span>
                      <MoveButtons
                        name={said}
                        isFirst={at === 0 && place === 0}
                        isLast={at === stops.length - 1 && place === stop.steps.length - 1}
                        onMove={(way) => onStep(id, way)}
                      />
                    </li>
                  );
                })}
              </ol>
            ) : null}
          </li>
        );
      })}
    </ol>
  );
}

function toggled(shown: ReadonlySet<string>, key: string): ReadonlySet<string> {
  const next = new Set(shown);
  if (!next.delete(key)) next.add(key);
  return next;
}

interface MoveButtonsProps {
  readonly name: string;
  readonly isFirst: boolean;
  readonly isLast: boolean;
  readonly onMove: (way: 1 | -1) => void;
}

function MoveButtons({ name, isFirst, isLast, onMove }: MoveButtonsProps) {
  return (
    <span className="order-move">
      <button
        type="button"
        className="up"
        aria-label={`Up: ${name}`}
        disabled={isFirst}
        onClick={() => onMove(-1)}
      />
      <button
        type="button"
        className="down"
        aria-label={`Down: ${name}`}
        disabled={isLast}
        onClick={() => onMove(1)}
      />
    </span>
  );
}

/** What is wrong with a step's place, in words. */
function faultsById(
  { tooEarly, afterLast, twice }: OrderFaults,
  steps: ReadonlyMap<string, Step>,
  { book }: OpenAircraft,
): ReadonlyMap<string, string> {
  const titleOf = (id: string): string => {
    const step = steps.get(id);
    if (step === undefined) return id;
    const name = stepName(step, book.points);
    return step.kind === "check" ? `${name}: ${step.check.title}` : name;
  };
  return new Map([
    ...afterLast.map((id) => [id, "Comes after what the book wants last"] as const),
    ...twice.map((id) => [id, "Walked twice"] as const),
    ...tooEarly.map(({ id, after }) => [id, `Too early: first ${titleOf(after)}`] as const),
  ]);
}
