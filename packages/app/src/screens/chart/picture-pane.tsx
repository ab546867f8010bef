import type { PicturePoint } from "@witnessmark/chart";
import { type KeyboardEvent, type PointerEvent, useEffect, useRef, useState } from "react";
import { type Chosen, isChosen } from "./chart-work.ts";
import type { PaperPicture } from "./picture-file.ts";
import { fitted, type Size, shifted, toPicture, type View, zoomed } from "./view.ts";

export interface PointShown {
  readonly chosen: Chosen;
  readonly at: PicturePoint;
  readonly name: string;
  /** Whether a finger takes hold of it: where curves begin at a mark or run together, only what is in hand is meant. */
  readonly grips: boolean;
}

export interface LineShown {
  readonly key: string;
  readonly points: readonly PicturePoint[];
  readonly look: "traced" | "fitted";
}

interface PicturePaneProps {
  readonly picture: PaperPicture;
  readonly points: readonly PointShown[];
  readonly lines: readonly LineShown[];
  readonly chosen: Chosen | null;
  /** `reach_px`: how far in the picture what the finger meant may lie from it. */
  readonly onTap: (at: PicturePoint, reach_px: number) => void;
  /** Without a reach the finger is still on it; with a reach of 0 it was moved by keys and stands where it is. */
  readonly onMove: (chosen: Chosen, at: PicturePoint, reach_px?: number) => void;
  readonly onChoose: (chosen: Chosen) => void;
  readonly onRemove: () => void;
  readonly onUndo: () => void;
  /** What the next tap does, or what is chosen. */
  readonly says: string;
}

/** A finger is so wide. */
const NEAR_px = 24;
/** A finger that moves less than this has tapped. */
const TAP_px = 8;
const LOUPE_px = 132;
const LOUPE_SCALE = 3;

type Gesture =
  | { readonly kind: "point"; readonly chosen: Chosen; readonly offX: number; readonly offY: number }
  | { readonly kind: "pan"; readonly lastX: number; readonly lastY: number; readonly moved: number }
  | { readonly kind: "pinch"; readonly apart: number; readonly midX: number; readonly midY: number };

/**
 * The picture with what is marked on it. A tap sets a point, a drag on a point moves it under a loupe, a drag elsewhere
 * moves the picture, two fingers or the wheel make it larger. By keyboard: arrows move the chosen point by one pixel (ten
 * with Shift), Page Up and Page Down choose another, Delete takes it away, plus and minus zoom.
 */
export function PicturePane(props: PicturePaneProps) {
  const { picture, points, lines, chosen } = props;
  const ref = useRef<HTMLDivElement>(null);
  const [size, setSize] = useState<Size>({ width: 0, height: 0 });
  const [view, setView] = useState<View>({ scale: 1, x: 0, y: 0 });
  const [loupe, setLoupe] = useState<PicturePoint | null>(null);
  const fingers = useRef(new Map<number, { readonly x: number; readonly y: number }>());
  const gesture = useRef<Gesture | null>(null);
  useEffect(() => {
    const element = ref.current;
    if (element === null) return;
    const observer = new ResizeObserver(() => {
      const next = { width: element.clientWidth, height: element.clientHeight };
      setSize(next);
      setView(fitted(picture, next));
    });
    observer.observe(element);
    // React listens to the wheel passively, and would scroll the page too
    const wheel = (event: WheelEvent) => {
      event.preventDefault();
      const box = element.getBoundingClientRect();
      const room = { width: element.clientWidth, height: element.clientHeight };
      const about = { width: event.clientX - box.left, height: event.clientY - box.top };
      setView((before) => zoomed(before, Math.exp(-event.deltaY / 400), about, picture, room));
    };
    element.addEventListener("wheel", wheel, { passive: false });
    return () => {
      observer.disconnect();
      element.removeEventListener("wheel", wheel);
    };
  }, [picture]);
  const zoom = (by: number) =>
    setView((before) =>
      zoomed(before, by, { width: size.width / 2, height: size.height / 2 }, picture, size),
    );

  const place = (event: PointerEvent) => {
    const box = event.currentTarget.getBoundingClientRect();
    return { x: event.clientX - box.left, y: event.clientY - box.top };
  };
  const down = (event: PointerEvent<HTMLDivElement>) => {
    const { x, y } = place(event);
    event.currentTarget.setPointerCapture(event.pointerId);
    fingers.current.set(event.pointerId, { x, y });
    if (fingers.current.size === 2) {
      gesture.current = pinchOf([...fingers.current.values()]);
      setLoupe(null);
      return;
    }
    const near = nearest(points, view, x, y);
    if (near === undefined) {
      gesture.current = { kind: "pan", lastX: x, lastY: y, moved: 0 };
      return;
    }
    props.onChoose(near.chosen);
    setLoupe(near.at);
    gesture.current = {
      kind: "point",
      chosen: near.chosen,
      offX: near.at.x_px * view.scale + view.x - x,
      offY: near.at.y_px * view.scale + view.y - y,
    };
  };
  const move = (event: PointerEvent<HTMLDivElement>) => {
    if (!fingers.current.has(event.pointerId)) return;
    const { x, y } = place(event);
    fingers.current.set(event.pointerId, { x, y });
    const now = gesture.current;
    if (now?.kind === "point") {
      const at = inside(toPicture(view, x + now.offX, y + now.offY), picture);
      setLoupe(at);
      props.onMove(now.chosen, at);
    } else if (now?.kind === "pan") {
      const [dx, dy] = [x - now.lastX, y - now.lastY];
      gesture.current = { kind: "pan", lastX: x, lastY: y, moved: now.moved + Math.hypot(dx, dy) };
      if (now.moved > TAP_px) setView((before) => shifted(before, dx, dy, picture, size));
    } else if (now?.kind === "pinch" && fingers.current.size === 2) {
      const next = pinchOf([...fingers.current.values()]);
      setView((before) => {
        const about = { width: next.midX, height: next.midY };
        const near = zoomed(before, next.apart / Math.max(1, now.apart), about, picture, size);
        return shifted(near, next.midX - now.midX, next.midY - now.midY, picture, size);
      });
      gesture.current = next;
    }
  };
  const up = (event: PointerEvent<HTMLDivElement>) => {
    if (!fingers.current.delete(event.pointerId)) return;
    const { x, y } = place(event);
    const now = gesture.current;
    gesture.current = null;
    setLoupe(null);
    if (event.type === "pointercancel" || now === null) return;
    if (now.kind === "point") {
      props.onMove(now.chosen, inside(toPicture(view, x + now.offX, y + now.offY), picture), reachOf(view));
    } else if (now.kind === "pan" && now.moved <= TAP_px) {
      const at = toPicture(view, x, y);
      if (at.x_px >= 0 && at.y_px >= 0 && at.x_px < picture.width && at.y_px < picture.height)
        props.onTap(at, reachOf(view));
    }
  };
  const index = points.findIndex((point) => isChosen(chosen, point.chosen));
  const here = points[index];
  const choose = (by: number) => {
    const next = points[(index + by + points.length) % Math.max(1, points.length)] ?? points[0];
    if (next !== undefined) props.onChoose(next.chosen);
  };
  const nudge = ([dx, dy]: readonly [number, number], step: number) => {
    if (here === undefined) return;
    const at = { x_px: here.at.x_px + step * dx, y_px: here.at.y_px + step * dy };
    props.onMove(here.chosen, inside(at, picture), 0);
  };
  const keys = new Map<string, () => void>([
    ["PageDown", () => choose(1)],
    ["PageUp", () => choose(-1)],
    ["Delete", props.onRemove],
    ["Enter", () => props.onTap(toPicture(view, size.width / 2, size.height / 2), reachOf(view))],
    ["+", () => zoom(1.5)],
    ["=", () => zoom(1.5)],
    ["-", () => zoom(1 / 1.5)],
  ]);
  const press = (event: KeyboardEvent) => {
    const arrow = ARROWS[event.key];
    const does = keys.get(event.key);
    if (event.key === "z" && (event.ctrlKey || event.metaKey)) props.onUndo();
    else if (arrow !== undefined) nudge(arrow, event.shiftKey ? 10 : 1);
    else if (does !== undefined) does();
    else return;
    event.preventDefault();
  };
  return (
    <div className="chart-picture">
      {/* biome-ignore lint/a11y/useSemanticElements: no element stands for a surface on which points are set */}
      <div
        ref={ref}
        className="chart-surface"
        role="group"
        aria-label="The picture. Arrow keys move the chosen point by one pixel, Page Down chooses the next, Delete takes it away, Enter sets one in the middle."
        // biome-ignore lint/a11y/noNoninteractiveTabindex: it is worked by the keyboard, as its description says
        tabIndex={0}
        onPointerDown={down}
        onPointerMove={move}
        onPointerUp={up}
        onPointerCancel={up}
        onKeyDown={press}
      >
        <img
          src={picture.address}
          alt="The paper"
          draggable={false}
          style={{
            width: picture.width * view.scale,
            height: picture.height * view.scale,
            transform: `translate(${view.x}px, ${view.y}px)`,
          }}
        />
        <svg aria-hidden="true" width={size.width} height={size.height}>
          <g transform={`translate(${view.x} ${view.y}) scale(${view.scale})`}>
            {lines.map(({ key, points: along, look }) => (
              <polyline
                key={key}
                className={`chart-line ${look}`}
                points={along.map(({ x_px, y_px }) => `${x_px},${y_px}`).join(" ")}
              />
            ))}
          </g>
          {points.map((point) => (
            <Cross
              key={`${point.name}`}
              x={point.at.x_px * view.scale + view.x}
              y={point.at.y_px * view.scale + view.y}
              isMark={point.chosen.on === "mark"}
              isChosen={isChosen(chosen, point.chosen)}
            />
          ))}
        </svg>
        {loupe === null ? null : <Loupe picture={picture} at={loupe} view={view} size={size} />}
      </div>
      <div className="chart-bar">
        <p role="status">{props.says}</p>
        <button type="button" className="button" aria-label="Smaller" onClick={() => zoom(1 / 1.5)}>
          −
        </button>
        <button type="button" className="button" aria-label="Larger" onClick={() => zoom(1.5)}>
          +
        </button>
      </div>
    </div>
  );
}

const ARROWS: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};

interface CrossProps {
  readonly x: number;
  readonly y: number;
  readonly isMark: boolean;
  readonly isChosen: boolean;
}

/** A mark of the axes is a square, a point of a curve a ring; what is chosen is filled. */
function Cross({ x, y, isMark, isChosen: filled }: CrossProps) {
  const className = filled ? "chart-point chosen" : "chart-point";
  return (
    <g transform={`translate(${x} ${y})`} className={className}>
      {isMark ? <rect x={-8} y={-8} width={16} height={16} /> : <circle r={7} />}
      <path d="M-13 0H-3M3 0H13M0 -13V-3M0 3V13" />
    </g>
  );
}

interface LoupeProps {
  readonly picture: PaperPicture;
  readonly at: PicturePoint;
  readonly view: View;
  readonly size: Size;
}

/** What lies under the finger, larger, beside it. */
function Loupe({ picture, at, view, size }: LoupeProps) {
  const scale = Math.max(LOUPE_SCALE, view.scale * 2);
  const x = at.x_px * view.scale + view.x;
  const y = at.y_px * view.scale + view.y;
  const top = y > LOUPE_px + 50 ? y - LOUPE_px - 44 : Math.min(y + 60, size.height - LOUPE_px);
  const left = Math.min(Math.max(x - LOUPE_px / 2, 4), size.width - LOUPE_px - 4);
  return (
    <div className="chart-loupe" aria-hidden="true" style={{ left, top, width: LOUPE_px, height: LOUPE_px }}>
      <img
        src={picture.address}
        alt=""
        style={{
          width: picture.width * scale,
          height: picture.height * scale,
          transform: `translate(${LOUPE_px / 2 - at.x_px * scale}px, ${LOUPE_px / 2 - at.y_px * scale}px)`,
        }}
      />
    </div>
  );
}

/** Eight pixels of the screen, and not so many of the picture that another line is meant. */
const reachOf = ({ scale }: View): number => Math.min(16, Math.max(6, 8 / scale));

function nearest(points: readonly PointShown[], view: View, x: number, y: number): PointShown | undefined {
  let found: PointShown | undefined;
  let least = NEAR_px;
  for (const point of points) {
    const away = Math.hypot(point.at.x_px * view.scale + view.x - x, point.at.y_px * view.scale + view.y - y);
    if (point.grips && away < least) {
      least = away;
      found = point;
    }
  }
  return found;
}

function pinchOf([one, other]: readonly { readonly x: number; readonly y: number }[]): Gesture & {
  readonly kind: "pinch";
} {
  const [x1, y1, x2, y2] = [one?.x ?? 0, one?.y ?? 0, other?.x ?? 0, other?.y ?? 0];
  return { kind: "pinch", apart: Math.hypot(x2 - x1, y2 - y1), midX: (x1 + x2) / 2, midY: (y1 + y2) / 2 };
}

const inside = ({ x_px, y_px }: PicturePoint, { width, height }: Size): PicturePoint => ({
  x_px: Math.min(Math.max(x_px, 0), width - 1),
  y_px: Math.min(Math.max(y_px, 0), height - 1),
});
