import { useId } from "react";

interface HatchProps {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly gap?: number;
}

/** Hatching at 45 degrees over a rectangle: "not here". */
export function Hatch({ x, y, width, height, gap = 5 }: HatchProps) {
  const id = useId();
  if (!(width > 0)) return null;
  let strokes = "";
  for (let along = -height; along < width; along += gap) {
    strokes += `M${(x + along).toFixed(1)},${(y + height).toFixed(1)}l${height},${-height}`;
  }
  return (
    <>
      <clipPath id={id}>
        <rect x={x} y={y} width={width} height={height} />
      </clipPath>
      <path className="hatch" clipPath={`url(#${id})`} d={strokes} />
    </>
  );
}
