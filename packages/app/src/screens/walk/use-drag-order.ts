import { type PointerEvent, type RefObject, useRef, useState } from "react";

interface DragOrder {
  /** The place of the row that is held; −1 when none is. */
  readonly held: number;
  /** What the grip of a row listens to. */
  grip(at: number): {
    readonly onPointerDown: (event: PointerEvent) => void;
    readonly onPointerMove: (event: PointerEvent) => void;
    readonly onPointerUp: () => void;
    readonly onPointerCancel: () => void;
  };
}

/** Takes a row of a list by its grip and puts it where it is let go: one change, so that one Undo takes it back. */
export function useDragOrder(
  list: RefObject<HTMLElement | null>,
  onMove: (from: number, to: number) => void,
): DragOrder {
  const [held, setHeld] = useState(-1);
  const target = useRef(-1);
  const rows = (): readonly HTMLElement[] =>
    [...(list.current?.children ?? [])].filter((row) => row instanceof HTMLElement);
  const show = (from: number, to: number): void => {
    for (const [at, row] of rows().entries()) {
      row.dataset["drop"] = at === to && to !== from ? (to < from ? "before" : "behind") : "";
    }
  };
  const letGo = (): void => {
    show(-1, -1);
    setHeld(-1);
    target.current = -1;
  };
  return {
    held,
    grip: (at) => ({
      onPointerDown: (event) => {
        event.currentTarget.setPointerCapture(event.pointerId);
        target.current = at;
        setHeld(at);
      },
      onPointerMove: (event) => {
        if (held !== at) return;
        const over = rows().findIndex((row) => {
          const { top, bottom } = row.getBoundingClientRect();
          return event.clientY >= top && event.clientY < bottom;
        });
        if (over >= 0) target.current = over;
        show(at, target.current);
      },
      onPointerUp: () => {
        const to = target.current;
        letGo();
        if (held === at && to >= 0 && to !== at) onMove(at, to);
      },
      onPointerCancel: letGo,
    }),
  };
}
