import { valueAt } from "@witnessmark/book";
import { figure } from "../../words/figures.ts";
import { axisLabels, cornersOf, type DrawnCorner } from "./envelope-corners.ts";
import { useDesk } from "./use-desk.ts";

const [WIDE, HIGH] = [360, 260];
const LEFT = 74;
const [RIGHT, TOP, BOTTOM] = [24, 16, 34];
/** The room that a figure needs, along and up. */
const [ALONG_px, UP_px] = [62, 15];

/** The envelope in hand, from the corners there are: a line until all can be read, then closed. */
export function EnvelopePreview({ index }: { readonly index: number }) {
  const { plain } = useDesk();
  const { corners, isWhole } = cornersOf(valueAt(plain ?? undefined, ["loading", "envelopes", index]));
  if (corners.length === 0) return null;
  const { x, y } = scales(corners);
  const points = corners.map((corner) => `${x(corner.arm_m)},${y(corner.mass_kg)}`).join(" ");
  const masses = axisLabels(
    corners.map(({ mass_kg, massText }) => ({ at_px: y(mass_kg), text: massText })),
    UP_px,
  );
  const arms = axisLabels(
    corners.map(({ arm_m, armText }) => ({ at_px: x(arm_m), text: armText })),
    ALONG_px,
  );
  return (
    <svg className="bk-envelope" viewBox={`0 0 ${WIDE} ${HIGH}`} role="img" aria-label={labelOf(corners)}>
      {masses.map(({ at_px, text }) => (
        <g key={at_px}>
          <path className="bk-envelope-guide" d={`M${LEFT - 4},${at_px}H${WIDE - RIGHT}`} />
          <text x={LEFT - 8} y={at_px + 4} textAnchor="end">
            {text}
          </text>
        </g>
      ))}
      {arms.map(({ at_px, text }) => (
        <g key={at_px}>
          <path className="bk-envelope-guide" d={`M${at_px},${TOP}V${HIGH - BOTTOM + 4}`} />
          <text x={at_px} y={HIGH - BOTTOM + 20} textAnchor="middle">
            {text}
          </text>
        </g>
      ))}
      {isWhole ? <polygon points={points} /> : <polyline points={points} />}
      {corners.map(({ arm_m, mass_kg }, at) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: two corners may be the same while they are typed
        <circle key={at} cx={x(arm_m)} cy={y(mass_kg)} r={3.5} />
      ))}
    </svg>
  );
}

function scales(corners: readonly DrawnCorner[]) {
  const arms = corners.map(({ arm_m }) => arm_m);
  const masses = corners.map(({ mass_kg }) => mass_kg);
  const [fore, aft, least, most] = [
    Math.min(...arms),
    Math.max(...arms),
    Math.min(...masses),
    Math.max(...masses),
  ];
  // a single value lies in the middle of its axis
  const share = (value: number, from: number, to: number) => (to > from ? (value - from) / (to - from) : 0.5);
  return {
    x: (arm_m: number) => LEFT + 14 + share(arm_m, fore, aft) * (WIDE - LEFT - RIGHT - 28),
    y: (mass_kg: number) => HIGH - BOTTOM - share(mass_kg, least, most) * (HIGH - TOP - BOTTOM),
  };
}

function labelOf(corners: readonly DrawnCorner[]): string {
  const arms = corners.map(({ arm_m }) => arm_m);
  const masses = corners.map(({ mass_kg }) => mass_kg);
  return `Envelope, ${corners.length} corners: ${figure(Math.min(...arms), 2)} to ${figure(Math.max(...arms), 2)} m and ${figure(Math.min(...masses))} to ${figure(Math.max(...masses))} kg`;
}
