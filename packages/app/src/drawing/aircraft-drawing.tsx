import {
  type CSSProperties,
  type KeyboardEvent,
  useCallback,
  useLayoutEffect,
  useMemo,
  useRef,
  useState,
} from "react";
import { useSize } from "../instruments/use-width.ts";
import { type Camera, holding, type Px, toPlane, turnedTo, wholeCamera } from "./camera.ts";
import type { Seen } from "./dimension-places.ts";
import { KEYS } from "./drawing-keys.ts";
import type { AircraftDrawingProps, DrawingMark, PlaceOnView } from "./drawing-props.ts";
import { DrawingScene } from "./drawing-scene.tsx";
import { DrawingTools } from "./drawing-tools.tsx";
import { type Fingers, Gestures } from "./gestures.ts";
import { MarkButtons } from "./mark-buttons.tsx";
import { type Laid, markUnder, placedMarks } from "./placed-marks.ts";
import { useSettled } from "./use-settled.ts";
import { onPlaneOf, placeOf, viewBox, withDatum } from "./view-plane.ts";
import "./aircraft-drawing.css";

export type {
  AircraftDrawingProps,
  DrawingMark,
  DrawingRoute,
  DrawingView,
  MarkState,
  PlaceOnView,
  Up,
} from "./drawing-props.ts";

const MOST_pxPerMetre = 260;
const TARGET_px = 48;
/** About a walk there are numbers, about what is measured its measures; about an aircraft alone there is nothing. */
const MARGIN = {
  walk: { side_px: 30, top_px: 36, bottom_px: 36 },
  measured: { side_px: 46, top_px: 42, bottom_px: 42 },
  alone: { side_px: 14, top_px: 14, bottom_px: 14 },
} as const;
const FINGER_px = 24;
/** Beyond its square a mark can still be meant, when no other is nearer. */
const REACH_px = 34;
const NUDGE_m = 0.05;
const DOUBLE_ms = 350;
const NO_MARKS: readonly DrawingMark[] = [];

const sameLaid = (was: readonly Laid[], now: readonly Laid[]): boolean =>
  was.length === now.length &&
  was.every((mark, index) => {
    const other = now[index];
    return (
      mark.id === other?.id &&
      mark.size === other.size &&
      mark.label === other.label &&
      mark.place.every((value, axis) => value === other.place[axis])
    );
  });

const sameView = (was: Camera, now: Camera): boolean =>
  was.pxPerMetre === now.pxPerMetre &&
  was.originX_px === now.originX_px &&
  was.originY_px === now.originY_px &&
  was.turn_deg === now.turn_deg;

/**
 * The drawing of an aircraft, from its book's geometry, in the room of its parent: from above, from the left or from
 * ahead; marks at their places, none on another; the walk on the ground. It can be moved, zoomed and turned by finger,
 * wheel, buttons and keys, and read by a screen reader in the order of its marks.
 */
export function AircraftDrawing(props: AircraftDrawingProps) {
  const [ref, size] = useSize<HTMLDivElement>(props.room);
  return (
    <div className={props.print === true ? "drawing drawing-print" : "drawing"} ref={ref}>
      {size.width_px === 0 ? null : <InRoom {...props} {...size} />}
    </div>
  );
}

interface InRoomProps extends AircraftDrawingProps {
  readonly width_px: number;
  readonly height_px: number;
}

function InRoom(props: InRoomProps) {
  const {
    geometry,
    view = "plan",
    marks = NO_MARKS,
    route,
    width_px,
    height_px,
    heading_deg,
    up = "nose",
  } = props;
  const { mark_px = 16, apart_px = TARGET_px, onPoint, onPlace, onMove, print = false } = props;
  const isStill = print || props.still === true;
  const { home: askedHome, zero = CORNER } = props;
  const isAboutAPlace = zero !== CORNER;
  const stances = useSettled(
    useMemo(() => (route?.stops ?? []).map(({ stance }) => stance), [route]),
    (was, now) => was.length === now.length && was.every((stance, index) => stance === now[index]),
  );
  const { dimensions, datum = false } = props;
  const box = useMemo(() => {
    const places = stances.filter(({ posture }) => posture !== "inside").map(({ place }) => place);
    const drawn = viewBox(view, geometry, places);
    return datum ? withDatum(view, drawn) : drawn;
  }, [view, geometry, stances, datum]);
  const [standing, setStanding] = useState(up !== "nose");
  const turn_deg = view !== "plan" || !standing ? 0 : -(heading_deg ?? (up === "nose" ? 0 : up.heading_deg));
  const zeroAt: Px = [width_px * zero.x_1, height_px * zero.y_1 + zero.y_px];
  const middle: Px = [width_px / 2 - zeroAt[0], height_px / 2 - zeroAt[1]];
  const about = dimensions !== undefined || datum ? "measured" : stances.length === 0 ? "alone" : "walk";
  const whole = useMemo(
    () => wholeCamera(box, { width_px, height_px }, MARGIN[about], turn_deg),
    [box, about, width_px, height_px, turn_deg],
  );
  const home = useSettled(
    useMemo((): Camera => {
      if (askedHome === undefined) return whole;
      const asked = askedHome({ width_px, height_px });
      if (turn_deg === 0) return asked;
      // a view about a place is turned about it; one of the whole is fitted anew
      return isAboutAPlace ? turnedTo(asked, turn_deg, [0, 0]) : whole;
    }, [askedHome, isAboutAPlace, whole, width_px, height_px, turn_deg]),
    sameView,
  );
  const [moved, setMoved] = useState<{ readonly from: Camera; readonly camera: Camera } | null>(null);
  const camera = moved !== null && moved.from === home ? moved.camera : home;
  const isHome = camera === home;
  const bounds = {
    least_pxPerMetre: Math.min(home.pxPerMetre, whole.pxPerMetre) * 0.9,
    most_pxPerMetre: Math.max(MOST_pxPerMetre, home.pxPerMetre),
  };
  const isNearest = camera.pxPerMetre >= bounds.most_pxPerMetre * 0.99;
  const laid = useSettled<readonly Laid[]>(marks, sameLaid);
  const turned_deg = camera.turn_deg ?? 0;
  const { pxPerMetre } = camera;
  const [zeroX_px, zeroY_px] = zeroAt;
  const seen = useMemo((): Seen | undefined => {
    if (dimensions === undefined) return undefined;
    const nearer_1 = pxPerMetre / home.pxPerMetre;
    const [left, top] = [-zeroX_px - home.originX_px, -zeroY_px - home.originY_px];
    return {
      left: left * nearer_1,
      right: (left + width_px) * nearer_1,
      top: top * nearer_1,
      bottom: (top + height_px) * nearer_1,
    };
  }, [dimensions, pxPerMetre, home, zeroX_px, zeroY_px, width_px, height_px]);
  const placed = useMemo(
    () =>
      placedMarks(
        view,
        { pxPerMetre, originX_px: 0, originY_px: 0, turn_deg: turned_deg },
        laid,
        {
          stops: stances.map((stance, index) => ({
            stance,
            number: route?.stops[index]?.number ?? index + 1,
            state: "ahead",
          })),
          start: route?.start,
        },
        { mark_px, apart_px, isNearest },
        { dimensions, datumOf: datum ? geometry : undefined, seen },
        { struts: geometry.wing.struts, isNumberedInside: print },
      ),
    [
      view,
      pxPerMetre,
      turned_deg,
      laid,
      stances,
      mark_px,
      apart_px,
      isNearest,
      route?.stops,
      route?.start,
      print,
      dimensions,
      datum,
      geometry,
      seen,
    ],
  );
  const at = useMemo(() => {
    const places = new Map<string, { readonly x: number; readonly y: number }>();
    for (const stood of placed.marks) for (const id of stood.ids) places.set(id, stood);
    return places;
  }, [placed]);

  const surface = useRef<HTMLDivElement>(null);
  const layer = useRef<SVGSVGElement>(null);
  const buttons = useRef<HTMLDivElement>(null);
  const gestures = useRef<Gestures | null>(null);
  const lastTap = useRef<{ readonly at: Px; readonly when_ms: number } | null>(null);
  const [dragged, setDragged] = useState<{ readonly id: string; readonly at: PlaceOnView } | null>(null);

  const rest = useCallback((seen: Camera) => setMoved({ from: home, camera: seen }), [home]);
  const under = ([x, y]: Px, finger_px: number) =>
    markUnder(placed.marks, [x - camera.originX_px, y - camera.originY_px], finger_px);
  /** So near that these come apart. */
  const open = (ids: readonly string[], about: Px) => {
    const places = marks.filter(({ id }) => ids.includes(id)).map(({ place }) => onPlaneOf(view, place));
    let least_m = Number.POSITIVE_INFINITY;
    for (const [index, a] of places.entries())
      for (const b of places.slice(index + 1))
        least_m = Math.min(
          least_m,
          Math.max(Math.abs(a[0] - b[0]), Math.abs(a[1] - b[1])) || Number.POSITIVE_INFINITY,
        );
    const wanted = Number.isFinite(least_m) ? (TARGET_px / least_m) * 1.1 : bounds.most_pxPerMetre;
    const scale = Math.min(Math.max(wanted, pxPerMetre * 1.8), bounds.most_pxPerMetre);
    const [across, down] = [
      places.reduce((sum, [u]) => sum + u, 0) / places.length,
      places.reduce((sum, [, v]) => sum + v, 0) / places.length,
    ];
    const to: Px = [(about[0] + middle[0]) / 2, (about[1] + middle[1]) / 2];
    rest(holding([across, down], to, scale, turned_deg));
  };
  const tap = (where: Px, coarse: boolean) => {
    const finger_px = coarse ? FINGER_px : Math.max(apart_px / 2, mark_px * 0.7);
    const found = onPoint === undefined ? null : (under(where, finger_px) ?? under(where, REACH_px));
    if (found !== null && onPoint !== undefined) {
      const ids = (coarse ? found.several : [found.nearest]).flatMap((each) => each.ids);
      if (ids.length > 1 && !isNearest) open(ids, where);
      else onPoint(found.nearest.ids[0]);
      return;
    }
    if (onPlace !== undefined) {
      onPlace(placeOf(view, toPlane(camera, where)));
      return;
    }
    const now_ms = performance.now();
    const last = lastTap.current;
    const isDouble =
      last !== null &&
      now_ms - last.when_ms < DOUBLE_ms &&
      Math.hypot(where[0] - last.at[0], where[1] - last.at[1]) < REACH_px;
    lastTap.current = isDouble ? null : { at: where, when_ms: now_ms };
    if (isDouble) gestures.current?.zoom(2, where);
  };
  const fingers: Fingers = {
    home,
    bounds,
    box,
    zero: zeroAt,
    middle,
    turns: view === "plan",
    onRest: rest,
    onTap: tap,
    // a finger that moves the picture must not move a point: it takes hold of the selected one only
    hold: (where, coarse) => {
      if (onMove === undefined) return null;
      const found = under(where, coarse ? FINGER_px : mark_px * 0.7);
      if (!coarse) return found?.nearest.ids[0] ?? null;
      const { selected } = props;
      const isIt = found?.within.some(({ ids }) => selected !== undefined && ids.includes(selected));
      return isIt === true ? (selected ?? null) : null;
    },
    onDrag: (id, where, done) => {
      const place = placeOf(view, toPlane(camera, where));
      setDragged(done ? null : { id, at: place });
      onMove?.(id, place, done);
    },
  };
  const latest = useRef(fingers);
  useLayoutEffect(() => {
    latest.current = fingers;
    gestures.current?.ask(fingers, camera);
  });
  // biome-ignore lint/correctness/useExhaustiveDependencies: it listens once; what it is asked comes with every drawing
  useLayoutEffect(() => {
    const element = surface.current;
    if (element === null || isStill) return;
    const layers = () => [layer.current, buttons.current].filter((each) => each !== null);
    const made = new Gestures(element, layers, latest.current, camera);
    gestures.current = made;
    const end = made.listen();
    return () => {
      end();
      gestures.current = null;
    };
  }, [isStill]);

  const key = (event: KeyboardEvent) => {
    if (event.altKey || event.ctrlKey || event.metaKey) return;
    const does = KEYS[event.key];
    if (does === undefined || gestures.current === null) return;
    event.preventDefault();
    if (does === "home") setMoved(null);
    else does(gestures.current, view === "plan");
  };
  const reach = (id: string) => {
    const place = at.get(id);
    if (place === undefined) return;
    const [x, y] = [place.x + camera.originX_px + zeroAt[0], place.y + camera.originY_px + zeroAt[1]];
    const isSeen = x > FINGER_px && y > FINGER_px && x < width_px - FINGER_px && y < height_px - FINGER_px;
    if (!isSeen) gestures.current?.pan(width_px / 2 - x, height_px / 2 - y);
  };
  const nudge =
    onMove === undefined
      ? undefined
      : (id: string, across: number, down: number) => {
          const place = marks.find((mark) => mark.id === id)?.place;
          if (place === undefined) return;
          const [u, v] = onPlaneOf(view, place);
          onMove(id, placeOf(view, [u + across * NUDGE_m, v + down * NUDGE_m]), true);
        };
  const zeroStyle: CSSProperties = { left: zeroAt[0], top: zeroAt[1] };
  const scene = (
    <svg className="drawing-layer" ref={layer} width="1" height="1" style={zeroStyle} aria-hidden="true">
      <DrawingScene
        {...props}
        view={view}
        marks={marks}
        camera={camera}
        placed={placed}
        mark_px={mark_px}
        dragged={dragged}
      />
    </svg>
  );
  if (isStill)
    return (
      <div className="drawing-surface" role="img" aria-label={props.label}>
        {scene}
      </div>
    );
  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset is for the fields of a form
    <div
      role="group"
      aria-label={props.label}
      data-moved={isHome && turn_deg === 0 ? undefined : true}
      className="drawing-group"
    >
      {/* biome-ignore lint/a11y/useSemanticElements: a picture that is moved by keys and holds buttons */}
      <div
        className="drawing-surface"
        ref={surface}
        role="group"
        aria-label="Arrows move it, plus and minus bring it nearer or further"
        // biome-ignore lint/a11y/noNoninteractiveTabindex: it is moved by the keys
        tabIndex={0}
        onKeyDown={key}
        style={{ touchAction: isHome ? "pan-x pan-y" : "none" }}
      >
        {scene}
        {onPoint === undefined ? null : (
          <div className="mark-buttons-at" ref={buttons} style={zeroStyle}>
            <div style={{ translate: `${camera.originX_px.toFixed(1)}px ${camera.originY_px.toFixed(1)}px` }}>
              <MarkButtons
                marks={marks}
                at={at}
                selected={props.selected}
                onPoint={onPoint}
                onReach={reach}
                onNudge={nudge}
              />
            </div>
          </div>
        )}
      </div>
      {props.tools === "none" ? null : (
        <DrawingTools
          folded={props.tools === "folded"}
          turns={view === "plan"}
          asIStand={view === "plan" && (heading_deg !== undefined || up !== "nose") ? standing : undefined}
          isHome={isHome}
          onZoom={(factor_1) => gestures.current?.zoom(factor_1)}
          onTurn={(by_deg) => gestures.current?.turn(by_deg)}
          onUp={setStanding}
          onHome={() => setMoved(null)}
        />
      )}
    </div>
  );
}

const CORNER = { x_1: 0, y_1: 0, y_px: 0 } as const;
