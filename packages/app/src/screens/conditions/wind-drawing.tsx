import type { FieldFigures } from "@witnessmark/assess";
import { toSI, type UnitId } from "@witnessmark/engine";
import { Dimension } from "../../drawing/dimension.tsx";
import { Hatch } from "../../instruments/hatch.tsx";
import { useWidth } from "../../instruments/use-width.ts";
import { leftText, safeDifference, safeText, toLimitText } from "./conditions-units.ts";
import { Arrow, FromAnywhere, Sector } from "./wind-arrow.tsx";
import { type WindLayout, windLayout } from "./wind-layout.ts";

type RunwayWind = NonNullable<FieldFigures["wind"]["value"]>;
type WindMargin = NonNullable<FieldFigures["crosswind"]["value"]>;

interface WindDrawingProps {
  readonly wind: RunwayWind;
  readonly margin: WindMargin;
  readonly runway: string;
  readonly heading_deg: number;
  readonly unit: UnitId;
}

const LIMIT_WORDS: Readonly<Record<WindMargin["limit"]["kind"], string>> = {
  limit: "limit",
  demonstrated: "demonstrated",
  own: "your own",
  tailwind: "tailwind",
};

/** The wind resolved on the runway, landing direction up; the limit hatched, the margin a dimension. */
export function WindDrawing(props: WindDrawingProps) {
  const [ref, width_px] = useWidth<HTMLElement>("conditions-figure");
  return (
    <figure className="cond-figure" ref={ref}>
      {width_px === 0 ? null : <Drawing {...props} width_px={Math.min(width_px, 640)} />}
    </figure>
  );
}

function Drawing({
  wind,
  margin,
  runway,
  heading_deg,
  unit,
  width_px,
}: WindDrawingProps & { readonly width_px: number }) {
  const { direction, speed_mPerS, gust_mPerS } = wind.worst.wind;
  const from_rad =
    direction.kind === "from"
      ? direction.from_rad
      : direction.kind === "sector"
        ? direction.from_rad
        : undefined;
  const side = wind.crosswindFrom === "right" ? 1 : -1;
  const isFromAnywhere = from_rad === undefined;
  const at = windLayout({
    width_px,
    crosswind_mPerS: margin.value_mPerS,
    limit_mPerS: margin.limit.value_mPerS,
    side,
    speed_mPerS,
    ...(gust_mPerS === undefined ? {} : { gust_mPerS }),
    ...(isFromAnywhere ? {} : { angle_rad: from_rad - toSI(heading_deg, "deg") }),
  });
  const { touch_px: ty, height_px: H, limitX_px: lim, crossX_px: cross } = at;
  const crossText = safeText(margin.value_mPerS, unit, "up");
  const limitText = `${safeText(margin.limit.value_mPerS, unit, "down")} ${LIMIT_WORDS[margin.limit.kind]}`;
  const outer = side < 0 ? 0 : lim;
  return (
    <svg
      width={width_px}
      height={H}
      viewBox={`0 0 ${width_px} ${H}`}
      role="img"
      aria-label={labelOf({ wind, margin, runway, unit })}
    >
      <Hatch x={outer} y={22} width={side < 0 ? lim : width_px - lim} height={H - 50} gap={6} />
      <path className="cond-limit" d={`M${lim},14V${H - 22}`} />
      <text
        className="cond-limit-text halo"
        x={clampX(lim, limitText, width_px)}
        y={H - 6}
        textAnchor="middle"
      >
        {limitText}
      </text>
      <Runway at={at} name={runway} />
      {isFromAnywhere ? (
        <FromAnywhere at={at} speed_mPerS={speed_mPerS} gust_mPerS={gust_mPerS} />
      ) : (
        <Arrow at={at} />
      )}
      {direction.kind === "sector" && !isFromAnywhere ? (
        <Sector
          at={at}
          speed_mPerS={gust_mPerS ?? speed_mPerS}
          from_rad={direction.sector.from_rad - toSI(heading_deg, "deg")}
          to_rad={direction.sector.to_rad - toSI(heading_deg, "deg")}
        />
      ) : null}
      <Cross at={at} text={crossText} />
      <Along at={at} wind={wind} unit={unit} />
      {at.gust === undefined ? null : (
        <text
          className="cond-note halo"
          x={at.gust[0] + (side < 0 ? 9 : -9)}
          y={Math.max(13, at.gust[1] + (at.gust[1] > ty ? 12 : 2))}
          textAnchor={side < 0 ? "start" : "end"}
        >
          gust {safeText(gust_mPerS ?? 0, unit, "up")}
        </text>
      )}
      <Margin at={at} left_mPerS={margin.left_mPerS} status={margin.status} unit={unit} cross={cross} />
    </svg>
  );
}

/** Words that stand under a line near an edge are moved so that all of them are in the picture. */
const clampX = (x: number, text: string, width_px: number): number =>
  Math.min(width_px - text.length * 3.8, Math.max(text.length * 3.8, x));

function Runway({ at, name }: { readonly at: WindLayout; readonly name: string }) {
  const { runwayX_px: rx, height_px: H } = at;
  const half = 23;
  const keys = [-17, -11, -5, 5, 11, 17].map((x) => `M${rx + x},${H - 4}v-16`).join("");
  return (
    <>
      <path className="cond-runway" d={`M${rx - half},4V${H}M${rx + half},4V${H}`} />
      <path className="cond-runway-middle" d={`M${rx},8V${H - 62}`} />
      <path className="cond-runway-keys" d={keys} />
      <text className="cond-runway-name halo" x={rx} y={H - 30} textAnchor="middle">
        {name}
      </text>
    </>
  );
}

function Cross({ at, text }: { readonly at: WindLayout; readonly text: string }) {
  const { runwayX_px: rx, touch_px: ty, crossX_px: cross, height_px: H, gust, steady } = at;
  const y = H - 64;
  const top = (gust ?? steady)?.[1] ?? ty;
  if (Math.abs(cross - rx) < 2) return null;
  const isShort = Math.abs(cross - rx) < 70;
  return (
    <>
      <path className="cond-ext" d={`M${cross},${top}V${y + 6}M${rx},${ty}V${y + 6}`} />
      <Dimension from={[Math.min(cross, rx), y]} to={[Math.max(cross, rx), y]} />
      <text
        className="cond-figure-text halo"
        x={isShort ? cross + at.side * 6 : (cross + rx + at.side * 23) / 2}
        y={y - 6}
        textAnchor={isShort ? (at.side < 0 ? "end" : "start") : "middle"}
      >
        {text}
      </text>
    </>
  );
}

function Along({
  at,
  wind,
  unit,
}: {
  readonly at: WindLayout;
  readonly wind: RunwayWind;
  readonly unit: UnitId;
}) {
  const { runwayX_px: rx, touch_px: ty, steady, side, width_px } = at;
  const isTail = wind.tailwind_mPerS > wind.headwind_mPerS;
  const value = isTail
    ? safeText(wind.tailwind_mPerS, unit, "up")
    : safeText(wind.headwind_mPerS, unit, "down");
  const x = rx - side * 60;
  const end = steady === undefined ? ty : steady[1];
  const middle = (end + ty) / 2;
  const drawn = Math.abs(end - ty) > 8;
  const textX = side < 0 ? Math.min(x + 8, width_px - 72) : Math.max(x - 8, 72);
  const anchor = side < 0 ? "start" : "end";
  return (
    <>
      {drawn && steady !== undefined ? (
        <>
          <path className="cond-ext" d={`M${steady[0]},${end}H${x - side * 6}M${rx},${ty}H${x - side * 6}`} />
          <Dimension from={[x, Math.min(end, ty)]} to={[x, Math.max(end, ty)]} />
        </>
      ) : null}
      <text className="cond-figure-text halo" x={textX} y={middle + 4} textAnchor={anchor}>
        {value}
      </text>
      <text className="cond-note halo" x={textX} y={middle + 21} textAnchor={anchor}>
        {isTail ? "tailwind" : "headwind"}
      </text>
    </>
  );
}

interface MarginProps {
  readonly at: WindLayout;
  readonly left_mPerS: number;
  readonly status: WindMargin["status"];
  readonly unit: UnitId;
  readonly cross: number;
}

function Margin({ at, left_mPerS, status, unit, cross }: MarginProps) {
  const { limitX_px: lim, side, height_px: H } = at;
  const y = H - 100;
  const text = left_mPerS < 0 ? leftText(left_mPerS, unit) : safeDifference(left_mPerS, unit, "down");
  const wide = 12 + text.length * 8.8;
  const x = lim + side * 21;
  return (
    <>
      <rect
        className="cond-blank"
        x={side < 0 ? x - wide : x - 20}
        y={y - 13}
        width={wide + 20}
        height={26}
      />
      <Dimension from={[Math.min(lim, cross), y]} to={[Math.max(lim, cross), y]} />
      <text
        className={`cond-figure-text cond-${status}`}
        x={x}
        y={y + 6}
        textAnchor={side < 0 ? "end" : "start"}
      >
        {text}
      </text>
    </>
  );
}

function labelOf({
  wind,
  margin,
  runway,
  unit,
}: Pick<WindDrawingProps, "wind" | "margin" | "runway" | "unit">): string {
  const isTail = wind.tailwind_mPerS > wind.headwind_mPerS;
  const along = isTail
    ? `${safeText(wind.tailwind_mPerS, unit, "up")} tailwind`
    : `${safeText(wind.headwind_mPerS, unit, "down")} headwind`;
  const from =
    wind.crosswindFrom === "none"
      ? ""
      : ` from ${wind.crosswindFrom === "either side" ? "either side" : `the ${wind.crosswindFrom}`}`;
  const limit = `${safeText(margin.limit.value_mPerS, unit, "down")} ${LIMIT_WORDS[margin.limit.kind]}`;
  return `Wind on runway ${runway}: crosswind ${safeText(margin.value_mPerS, unit, "up")}${from}, ${along}, ${limit}, ${toLimitText(margin.left_mPerS, unit)}`;
}
