import type { Sheet } from "./sheet.ts";

/** One cell of the half that stays on the ground. */
export interface SlipCell {
  readonly label: string;
  readonly value: string;
  /** Said after the value, lighter. */
  readonly after?: string;
}

const NOT_SAID = "not said";

/** Of a planned flight, what those on the ground must know to miss it; else who decided what. */
export function slipOf({
  registration,
  type,
  flight,
  signature,
}: Pick<Sheet, "registration" | "type" | "flight" | "signature">): readonly SlipCell[] {
  // `09:10, 08:10 UTC`, or `08:10 UTC` where that is local time
  const [off = NOT_SAID, utc] = flight?.offBlocks.split(", ") ?? [];
  const zone = flight === null ? "" : utc === undefined ? ", UTC" : ", local";
  const offCell: SlipCell = { label: `Off${zone}`, value: off.replace(" UTC", "") };
  const aircraft: SlipCell = { label: "Aircraft", value: registration, after: type };
  const to: SlipCell = { label: "To", value: flight?.to ?? NOT_SAID };
  const figures = flight?.figures ?? null;
  if (figures === null) {
    return [
      aircraft,
      to,
      offCell,
      { label: "Signed by", value: signature?.by ?? "not signed" },
      { label: "Decision", value: signature?.hash.slice(0, 9) ?? "not signed" },
    ];
  }
  return [
    aircraft,
    to,
    offCell,
    { label: `Due${zone}`, value: figures.due ?? NOT_SAID },
    { label: "Aboard", value: figures.aboard === 0 ? NOT_SAID : String(figures.aboard) },
    { label: "Fuel for", value: figures.fuelFor ?? NOT_SAID },
  ];
}
