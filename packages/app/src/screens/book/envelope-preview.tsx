import { type Plain, valueAt } from "@witnessmark/book";
import { parseMeasure } from "@witnessmark/engine";
import { figure } from "../../words/figures.ts";
import { listIn } from "./book-toc.tsx";
import { useDesk } from "./use-desk.ts";

const [WIDE, HIGH] = [360, 220];

/** A corner in SI, where it can be read. */
function siOf(text: Plain | undefined, dimension: "length" | "mass"): number | undefined {
  if (typeof text !== "string") return undefined;
  try {
    return parseMeasure(text, dimension, dimension).valueSI;
  } catch {
    return undefined; // it is told as a fault at its field; here it is only not drawn
  }
}

/** The envelope in hand as it is drawn, as far as its corners can be read. */
export function EnvelopePreview({ index }: { readonly index: number }) {
  const { plain } = useDesk();
  const corners = listIn(valueAt(plain ?? undefined, ["loading", "envelopes", index]) ?? null, [
    "points",
  ]).flatMap((corner) => {
    const arm_m = siOf(valueAt(corner, ["arm"]), "length");
    const mass_kg = siOf(valueAt(corner, ["mass"]), "mass");
    return arm_m === undefined || mass_kg === undefined ? [] : [{ arm_m, mass_kg }];
  });
  if (corners.length < 3) return null;
  const arms = corners.map(({ arm_m }) => arm_m);
  const masses = corners.map(({ mass_kg }) => mass_kg);
  const [fore, aft, least, most] = [
    Math.min(...arms),
    Math.max(...arms),
    Math.min(...masses),
    Math.max(...masses),
  ];
  const x = (arm_m: number) => 44 + ((arm_m - fore) / (aft - fore || 1)) * (WIDE - 88);
  const y = (mass_kg: number) => HIGH - 34 - ((mass_kg - least) / (most - least || 1)) * (HIGH - 62);
  return (
    <svg
      className="bk-envelope"
      viewBox={`0 0 ${WIDE} ${HIGH}`}
      role="img"
      aria-label={`Envelope from ${figure(fore, 2)} to ${figure(aft, 2)} m and ${figure(least)} to ${figure(most)} kg`}
    >
      <polygon points={corners.map(({ arm_m, mass_kg }) => `${x(arm_m)},${y(mass_kg)}`).join(" ")} />
      <text x={x(fore)} y={HIGH - 10} textAnchor="middle">
        {figure(fore, 2)} m
      </text>
      <text x={x(aft)} y={HIGH - 10} textAnchor="middle">
        {figure(aft, 2)} m
      </text>
      <text x={WIDE / 2} y={16} textAnchor="middle">
        {figure(most)} kg
      </text>
    </svg>
  );
}
