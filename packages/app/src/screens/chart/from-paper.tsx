import { PERFORMANCE_QUANTITIES, type PerformanceQuantity } from "@witnessmark/book";
import { type ChangeEvent, useEffect, useState } from "react";
import { Trouble } from "../../frame/trouble.tsx";
import { useKeeping } from "../../frame/use-keeping.ts";
import { PhotoButton } from "../walk/photo-button.tsx";
import { ChartMaker } from "./chart-maker.tsx";
import { Choose } from "./fields.tsx";
import { PasteMaker } from "./paste-maker.tsx";
import { type PaperPicture, readPicture } from "./picture-file.ts";
import { type FromPaper, QUANTITIES, type Wanted } from "./wanted.ts";
import "../add/add.css";
import "./chart.css";

interface FromPaperProps {
  /** What the page of a book wants; without it, the person says. */
  readonly wanted?: Wanted;
  readonly onTable: (made: FromPaper) => void;
}

const KINDS = [
  ["table", "A performance table"],
  ["envelope", "An envelope"],
] as const;
const NAMES = PERFORMANCE_QUANTITIES.map((quantity) => [quantity, QUANTITIES[quantity].name] as const);

/** A table or an envelope from a picture of paper, or a table that is pasted. */
export function FromPaperPage({ wanted, onTable }: FromPaperProps) {
  const keeping = useKeeping();
  const [kind, setKind] = useState<"table" | "envelope">(wanted?.kind ?? "table");
  const [quantity, setQuantity] = useState<PerformanceQuantity>(
    (wanted?.kind === "table" ? wanted.quantity : undefined) ?? "take-off-ground-roll",
  );
  const [picture, setPicture] = useState<PaperPicture | null>(null);
  const [pastes, setPastes] = useState(false);
  useEffect(() => {
    if (picture === null) return;
    return () => URL.revokeObjectURL(picture.address);
  }, [picture]);
  const take = (file: Blob) =>
    keeping.keep(async () => {
      setPicture(await readPicture(file));
      setPastes(false);
    });
  const choose = (event: ChangeEvent<HTMLInputElement>) => {
    const file = event.currentTarget.files?.[0];
    if (file !== undefined) void take(file);
    event.currentTarget.value = "";
  };
  return (
    <div className="chart">
      {picture === null && !pastes ? (
        <section className="chart-section">
          {wanted === undefined ? (
            <>
              <Choose label="To be made" value={kind} options={KINDS} onChange={setKind} />
              {kind === "table" ? (
                <Choose label="It gives" value={quantity} options={NAMES} onChange={setQuantity} />
              ) : null}
            </>
          ) : null}
          <PhotoButton
            label={keeping.busy ? "Opening" : "Photograph the chart"}
            className="button filled tall full"
            onPhoto={(file) => void take(file)}
          />
          <label className="button full file-button" aria-busy={keeping.busy}>
            Choose a picture
            <input type="file" accept="image/*" onChange={choose} />
          </label>
          {kind === "table" ? (
            <button type="button" className="button full" onClick={() => setPastes(true)}>
              Paste a table
            </button>
          ) : null}
          <Trouble words={keeping.trouble} onDismiss={keeping.dismiss} />
          <p className="chart-note">
            Lay the paper flat, in even light, and fill the picture with the chart. It need not be taken
            straight on. The approved manual stays what counts: what is made here is a copy of it, and as good
            as its two check points.
          </p>
        </section>
      ) : (
        <button
          type="button"
          className="button full chart-again"
          onClick={() => {
            setPicture(null);
            setPastes(false);
          }}
        >
          {kind === "table" ? `${QUANTITIES[quantity].name}: begin again` : "Envelope: begin again"}
        </button>
      )}
      {picture === null ? null : (
        <ChartMaker
          key={`${picture.address} ${kind} ${quantity}`}
          picture={picture}
          kind={kind}
          quantity={quantity}
          wanted={wanted}
          onTaken={onTable}
        />
      )}
      {pastes && kind === "table" ? (
        <PasteMaker key={quantity} quantity={quantity} wanted={wanted} onTaken={onTable} />
      ) : null}
    </div>
  );
}
