import { type KeyboardEvent, memo, useState } from "react";
import { STATUS_NAME } from "../marks/mark.tsx";
import type { DrawingMark, MarkState } from "./drawing-props.ts";
import type { Place } from "./label-places.ts";

interface MarkButtonsProps {
  readonly marks: readonly DrawingMark[];
  /** Where each is drawn, pixels from the drawing's 0,0. */
  readonly at: ReadonlyMap<string, Place>;
  readonly selected: string | undefined;
  readonly onPoint: (id: string) => void;
  /** Brought into sight: it has the focus. */
  readonly onReach: (id: string) => void;
  readonly onNudge?: ((id: string, across: number, down: number) => void) | undefined;
}

const STATE_NAME: Readonly<Record<MarkState, string>> = {
  done: "done",
  left: "left",
  next: "next",
  here: "in hand",
};

const STEPS: Readonly<Record<string, number>> = { ArrowRight: 1, ArrowDown: 1, ArrowLeft: -1, ArrowUp: -1 };
const NUDGES: Readonly<Record<string, readonly [number, number]>> = {
  ArrowRight: [1, 0],
  ArrowLeft: [-1, 0],
  ArrowDown: [0, 1],
  ArrowUp: [0, -1],
};

export function nameOf({ name, status, state }: DrawingMark): string {
  return [
    name,
    status === undefined ? undefined : STATUS_NAME[status].toLowerCase(),
    state === undefined || state === "done" || (state === "left" && status !== undefined)
      ? undefined
      : STATE_NAME[state],
  ]
    .filter((part) => part !== undefined)
    .join(", ");
}

/**
 * The marks for a keyboard and a screen reader: one stop of the tab key, arrows in the order of the walk. A finger does
 * not touch them; it touches the drawing, which knows what lies too close together.
 */
export function MarkButtons({ marks, at, selected, onPoint, onReach, onNudge }: MarkButtonsProps) {
  const [reached, setReached] = useState<string | undefined>(undefined);
  const stop =
    marks.find(({ id }) => id === reached) ??
    marks.find(({ id }) => id === selected) ??
    marks.find(({ state }) => state === "here") ??
    marks[0];
  const go = (event: KeyboardEvent<HTMLElement>) => {
    const button = event.target instanceof HTMLElement ? event.target.closest("button") : null;
    const id = button?.dataset["mark"];
    const nudge = event.shiftKey ? NUDGES[event.key] : undefined;
    if (nudge !== undefined && onNudge !== undefined && id !== undefined) {
      onNudge(id, ...nudge);
      event.preventDefault();
      event.stopPropagation();
      return;
    }
    const here = marks.findIndex((mark) => mark.id === id);
    const step = STEPS[event.key];
    const to =
      event.key === "Home"
        ? 0
        : event.key === "End"
          ? marks.length - 1
          : step === undefined
            ? undefined
            : here + step;
    const next = to === undefined ? undefined : marks[(to + marks.length) % marks.length];
    if (next === undefined) return;
    event.preventDefault();
    event.stopPropagation();
    const buttons = event.currentTarget.querySelectorAll<HTMLElement>("button");
    for (const each of buttons) if (each.dataset["mark"] === next.id) each.focus({ preventScroll: true });
  };
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: the keys go from one of its buttons to the next
    <div
      className="mark-buttons"
      onKeyDown={go}
      onFocus={(event) => {
        const id = event.target instanceof HTMLElement ? event.target.dataset["mark"] : undefined;
        if (id === undefined) return;
        setReached(id);
        onReach(id);
      }}
      onClick={(event) => {
        const id = event.target instanceof HTMLElement ? event.target.dataset["mark"] : undefined;
        if (id !== undefined) onPoint(id);
      }}
    >
      {marks.map((mark) => {
        const place = at.get(mark.id);
        return (
          <MarkButton
            key={mark.id}
            id={mark.id}
            name={nameOf(mark)}
            isStop={mark.id === stop?.id}
            isHere={mark.state === "here" || mark.id === selected}
            x={place?.x ?? 0}
            y={place?.y ?? 0}
          />
        );
      })}
    </div>
  );
}

const MarkButton = memo(function MarkButton({
  id,
  name,
  isStop,
  isHere,
  x,
  y,
}: {
  readonly id: string;
  readonly name: string;
  readonly isStop: boolean;
  readonly isHere: boolean;
  readonly x: number;
  readonly y: number;
}) {
  return (
    <button
      type="button"
      data-mark={id}
      aria-label={name}
      aria-current={isHere ? "true" : undefined}
      tabIndex={isStop ? 0 : -1}
      style={{ left: x - 24, top: y - 24 }}
    />
  );
});
