import type { PerformanceQuantity } from "@witnessmark/book";
import {
  curveOnPicture,
  FOLLOWED_FROM_1,
  fitError,
  followLine,
  type PicturePoint,
  snapToCrossing,
  snapToLine,
} from "@witnessmark/chart";
import { useEffect, useMemo, useState } from "react";
import { AxesPanel } from "./axes-panel.tsx";
import {
  type ChartWork,
  type Chosen,
  changeCurve,
  changePanel,
  type Follow,
  isChosen,
  moved,
  newCurve,
  newPanel,
  newWork,
  type PanelWork,
  panelInHand,
  pointsOf,
  removed,
  tapped,
  wholeCurve,
} from "./chart-work.ts";
import { CurvesPanel } from "./curves-panel.tsx";
import { Switch } from "./fields.tsx";
import { heldFor, hold } from "./held.ts";
import type { PaperPicture } from "./picture-file.ts";
import { type LineShown, PicturePane, type PointShown } from "./picture-pane.tsx";
import { readPanel } from "./read-work.ts";
import { TakeEnvelope } from "./take-envelope.tsx";
import { TakeTable } from "./take-table.tsx";
import { begunWith, said, stepped, undone } from "./tracing-steps.ts";
import { type FromPaper, QUANTITIES, type Wanted } from "./wanted.ts";

interface ChartMakerProps {
  readonly picture: PaperPicture;
  readonly kind: "table" | "envelope";
  readonly quantity: PerformanceQuantity;
  readonly wanted: Wanted | undefined;
  /** Under which name the work is kept while the page is open. */
  readonly heldAs: string;
  readonly onTaken: (made: FromPaper) => void;
}

/** From a picture to a table: the axes are marked, the curves traced, the table looked at, two points read by eye. */
export function ChartMaker({ picture, kind, quantity, wanted, heldAs, onTaken }: ChartMakerProps) {
  const [tracing, setTracing] = useState(() => {
    const { work: held, past } = heldFor(heldAs);
    const goesOn = held?.kind === kind && held.quantity === quantity;
    return goesOn ? begunWith(held, past) : begunWith(newWork(kind, quantity));
  });
  const { work, past } = tracing;
  useEffect(() => hold(heldAs, { work, past }), [heldAs, work, past]);
  const setWork = (next: ChartWork | ((before: ChartWork) => ChartWork)) =>
    setTracing((before) => said(before, typeof next === "function" ? next(before.work) : next));
  const step = (next: (before: ChartWork) => ChartWork, moving: Chosen | null = null) =>
    setTracing((before) => stepped(before, next(before.work), moving));
  const undo = () => setTracing(undone);
  const panel = panelInHand(work);
  const { ink } = picture;
  const reads = useMemo(() => work.panels.map(readPanel), [work.panels]);
  const read = reads[work.panel];
  const errors = useMemo(() => {
    const frame = read?.frame;
    if (frame === undefined || kind === "envelope") return new Map();
    return new Map(
      (read?.curves ?? []).map(({ id, curve }) => [id, fitError(ink, frame, curve, "x")] as const),
    );
  }, [ink, read, kind]);
  const isOnInk = (at: PicturePoint) => snapToLine(ink, at, ON_INK_px) !== undefined;
  const follow: Follow =
    work.follows && kind === "table"
      ? (from, to) => {
          // a point that was set beside the line is meant so
          if (!isOnInk(from) || !isOnInk(to)) return [];
          const { points, onLine_1 } = followLine(ink, from, to);
          return onLine_1 < FOLLOWED_FROM_1 ? [] : points.slice(1, -1);
        }
      : null;
  const snapped = (at: PicturePoint, isCrossing: boolean, reach_px: number | undefined): PicturePoint => {
    if (!work.snaps || reach_px === undefined || reach_px === 0) return at;
    return (isCrossing ? snapToCrossing(ink, at, reach_px) : snapToLine(ink, at, reach_px))?.point ?? at;
  };

  const points = pointsOf(work).map(
    ({ chosen, at }): PointShown => ({
      chosen,
      at,
      name: nameOfPoint(work, chosen),
      grips:
        chosen.on === "mark"
          ? work.tapping === "marks"
          : work.tapping === "curves" && chosen.curve === work.curve,
    }),
  );
  const lines = linesOf(work, kind, read);
  const isCrossing = (on: "mark" | "curve") => on === "mark" || kind === "envelope";
  const nudge = (dx: number, dy: number) => {
    const here = points.find((point) => isChosen(work.chosen, point.chosen));
    if (here === undefined) return;
    const at = { x_px: here.at.x_px + dx, y_px: here.at.y_px + dy };
    step((before) => moved(before, here.chosen, at, follow), here.chosen);
  };
  const remove = () =>
    step((before) => (before.chosen === null ? before : removed(before, before.chosen, follow)));
  const free = panel.marks.indexOf(null);
  const isGuide = work.panel > 0;
  const lacking = reads.findIndex(({ lack }) => lack !== undefined);
  return (
    <div className="chart-work">
      <div className="chart-sheet">
        <PicturePane
          picture={picture}
          points={points}
          lines={lines}
          chosen={work.chosen}
          says={
            work.tapping === "marks" && free >= 0
              ? `${free + 1} of ${panel.marks.length}: tap where ${placeOfMark(panel, free)}`
              : work.chosen === null
                ? kind === "envelope"
                  ? "Tap the corners, round the edge"
                  : "Tap along the curve"
                : nameOfPoint(work, work.chosen)
          }
          onTap={(at, reach_px) => {
            const on = work.tapping === "marks" ? "mark" : "curve";
            const place = snapped(at, isCrossing(on), reach_px);
            step((before) => {
              const next = tapped(before, place, follow);
              // four marks stand: what is tapped next is a curve
              const isMarked = on === "mark" && panelInHand(next).marks.every((mark) => mark !== null);
              return isMarked && free >= 0 ? { ...next, tapping: "curves" } : next;
            });
          }}
          onMove={(chosen, at, reach_px) => {
            const place = snapped(at, isCrossing(chosen.on), reach_px);
            step((before) => moved(before, chosen, place, reach_px === undefined ? null : follow), chosen);
          }}
          onChoose={(chosen) =>
            setWork((before) => ({
              ...before,
              chosen,
              ...(chosen.on === "curve"
                ? { curve: chosen.curve, tapping: "curves" as const }
                : { tapping: "marks" as const }),
            }))
          }
          onRemove={remove}
          onUndo={undo}
        />
        <div className="chart-nudge">
          {NUDGES.map(([sign, name, dx, dy]) => (
            <button
              key={name}
              type="button"
              className="button"
              aria-label={`One pixel ${name}`}
              disabled={work.chosen === null}
              onClick={() => nudge(dx, dy)}
            >
              {sign}
            </button>
          ))}
          <button type="button" className="button" disabled={work.chosen === null} onClick={remove}>
            Remove
          </button>
          <button type="button" className="button" disabled={past.length === 0} onClick={undo}>
            Undo
          </button>
        </div>
      </div>
      <div className="chart-side">
        {work.panels.length > 1 ? <Panels work={work} onWork={setWork} /> : null}
        <AxesPanel
          panel={panel}
          isGuide={isGuide}
          isEnvelope={kind === "envelope"}
          yName={kind === "envelope" ? "Mass" : QUANTITIES[quantity].name}
          lack={read?.lack}
          taps={work.tapping === "marks"}
          onTaps={() => setWork({ ...work, tapping: "marks", chosen: null })}
          unit={kind === "envelope" ? undefined : { of: QUANTITIES[quantity].dimension, is: work.unit }}
          onUnit={(unit) => setWork({ ...work, unit })}
          onChange={(change) => setWork(changePanel(work, change))}
        />
        {kind === "envelope" ? null : (
          <CurvesPanel
            panel={panel}
            isGuide={isGuide}
            inHand={work.tapping === "curves" ? work.curve : ""}
            errors={errors}
            lack={read?.lack}
            onChoose={(curve) => setWork({ ...work, curve, tapping: "curves", chosen: null })}
            onSay={(id, parameter) => setWork(changeCurve(work, id, (curve) => ({ ...curve, parameter })))}
            onAdd={() => {
              const id = `${panel.id}-${panel.curves.length + 1}`;
              const next = changePanel(work, { curves: [...panel.curves, newCurve(id)] });
              setWork({ ...next, curve: id, tapping: "curves", chosen: null });
            }}
            onClear={(id) =>
              step((before) => ({
                ...changeCurve(before, id, ({ parameter }) => ({ ...newCurve(id), parameter })),
                chosen: null,
              }))
            }
          />
        )}
        {kind === "envelope" ? (
          <TakeEnvelope
            work={work}
            frame={read?.frame}
            wanted={wanted}
            taps={work.tapping === "curves"}
            onTaps={() => setWork({ ...work, tapping: "curves", chosen: null })}
            onUnit={(unit) => setWork({ ...work, unit })}
            onTaken={onTaken}
          />
        ) : lacking < 0 ? (
          <TakeTable work={work} panels={reads} wanted={wanted} onTaken={onTaken} />
        ) : (
          <p className="chart-section chart-note">
            {lacking === work.panel
              ? "The table follows once the axes are marked and a curve is traced."
              : `The table follows once panel ${lacking + 1} is done: ${reads[lacking]?.lack?.says ?? ""}`}
          </p>
        )}
        <Helps work={work} onWork={setWork} />
      </div>
    </div>
  );
}

/** So near to the middle of a line a point lies on it. */
const ON_INK_px = 3;
const NUDGES = [
  ["←", "left", -1, 0],
  ["→", "right", 1, 0],
  ["↑", "up", 0, -1],
  ["↓", "down", 0, 1],
] as const;

/** "x is 0 and y is 200": with the values as far as they are typed. */
function placeOfMark({ view, values }: PanelWork, index: number): string {
  const x = (high: boolean) =>
    `x is ${(high ? values.xHigh : values.xLow).trim() || (high ? "high" : "low")}`;
  const y = (high: boolean) =>
    `y is ${(high ? values.yHigh : values.yLow).trim() || (high ? "high" : "low")}`;
  const slanted = [
    [false, false],
    [true, false],
    [true, true],
    [false, true],
  ] as const;
  const [isHighX, isHighY] = slanted[index] ?? [false, false];
  const straight = [x(false), x(true), y(false), y(true)];
  return view === "slanted" ? `${x(isHighX)} and ${y(isHighY)}` : (straight[index] ?? "");
}

interface PanelsProps {
  readonly work: ChartWork;
  readonly onWork: (work: ChartWork) => void;
}

/** What helps in tapping, and what few charts need. */
function Helps({ work, onWork }: PanelsProps) {
  return (
    <details className="chart-section chart-more">
      <summary>
        {work.kind === "envelope" ? "Help in tapping" : "Help in tapping, and charts of several panels"}
      </summary>
      <Switch
        label="Snap to the dark line near the tap"
        on={work.snaps}
        onChange={(snaps) => onWork({ ...work, snaps })}
      />
      {work.kind === "envelope" ? null : (
        <>
          <Switch
            label="Follow the line from tap to tap"
            on={work.follows}
            onChange={(follows) => onWork({ ...work, follows })}
          />
          {work.panels.length > 1 ? null : <Panels work={work} onWork={onWork} />}
        </>
      )}
    </details>
  );
}

/** The panels of a chart that is read from one to the next. */
function Panels({ work, onWork }: PanelsProps) {
  const choose = (panel: number, panels = work.panels) =>
    onWork({
      ...work,
      panels,
      panel,
      chosen: null,
      tapping: "marks",
      curve: panels[panel]?.curves[0]?.id ?? "",
    });
  return (
    <section className="chart-section">
      <fieldset>
        <legend className="legend">Panel of the chart</legend>
        <div className="row-of-buttons chart-panels">
          {work.panels.map(({ id }, i) => (
            <button
              key={id}
              type="button"
              className="button"
              aria-pressed={i === work.panel}
              onClick={() => choose(i)}
            >
              Panel {i + 1}
            </button>
          ))}
          {work.panels.length < 3 ? (
            <button
              type="button"
              className="button"
              onClick={() => {
                const panels = [...work.panels, newPanel(`p${work.panels.length + 1}`, false)];
                choose(panels.length - 1, panels);
              }}
            >
              One more panel
            </button>
          ) : (
            <button type="button" className="button" onClick={() => choose(0, work.panels.slice(0, -1))}>
              Without the last
            </button>
          )}
        </div>
      </fieldset>
      <p className="chart-note">
        A chart whose line goes on into further panels: trace each panel by itself; in those after the first,
        the guide lines.
      </p>
    </section>
  );
}

function nameOfPoint(work: ChartWork, chosen: Chosen): string {
  const panel = panelInHand(work);
  if (chosen.on === "mark") {
    return `Mark ${chosen.index + 1}: ${placeOfMark(panel, chosen.index)}`;
  }
  const index = panel.curves.findIndex(({ id }) => id === chosen.curve);
  const curve = panel.curves[index];
  const what = work.kind === "envelope" ? "Corner" : `Curve ${index + 1}, point`;
  return `${what} ${chosen.index + 1} of ${curve?.knots.length ?? 0}`;
}

/** What was traced, and the smooth curves laid through it. */
function linesOf(
  work: ChartWork,
  kind: "table" | "envelope",
  read: ReturnType<typeof readPanel> | undefined,
) {
  const panel = panelInHand(work);
  const traced = panel.curves
    .filter(({ knots }) => knots.length > 1)
    .map((curve): LineShown => {
      const along = wholeCurve(curve);
      const [first] = along;
      const isRound = kind === "envelope" && first !== undefined && along.length > 2;
      return { key: `traced ${curve.id}`, points: isRound ? [...along, first] : along, look: "traced" };
    });
  const frame = read?.frame;
  if (frame === undefined || kind === "envelope") return traced;
  const fittedLines = read?.curves.map(
    ({ id, curve }): LineShown => ({
      key: `fitted ${id}`,
      points: curveOnPicture(frame, curve, "x"),
      look: "fitted",
    }),
  );
  return [...traced, ...(fittedLines ?? [])];
}
