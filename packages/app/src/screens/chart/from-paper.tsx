import { PERFORMANCE_QUANTITIES, type PerformanceQuantity } from "@witnessmark/book";
import { useState } from "react";
import { useKeeping } from "../../frame/use-keeping.ts";
import { ChartMaker } from "./chart-maker.tsx";
import { Choose } from "./fields.tsx";
import { heldFor, hold, letGo } from "./held.ts";
import { PasteMaker } from "./paste-maker.tsx";
import { type PaperPicture, readPicture } from "./picture-file.ts";
import { PictureWanted } from "./picture-wanted.tsx";
import { type FromPaper, type PaperWay, QUANTITIES, type Wanted } from "./wanted.ts";
import "../add/add.css";
import "./chart.css";

interface FromPaperProps {
  /** What the page of a book wants; without it, the person says. */
  readonly wanted?: Wanted;
  /** How the person has chosen to bring it; without it, the person chooses here. */
  readonly way?: PaperWay;
  /** Under which name the work is kept while the page is open. */
  readonly heldAs: string;
  readonly onTable: (made: FromPaper) => void;
}

const KINDS = [
  ["table", "A performance table"],
  ["envelope", "An envelope"],
] as const;
const NAMES = PERFORMANCE_QUANTITIES.map((quantity) => [quantity, QUANTITIES[quantity].name] as const);

/** A table or an envelope from a picture of paper, or a table that is pasted. */
export function FromPaperPage({ wanted, way, heldAs, onTable }: FromPaperProps) {
  const keeping = useKeeping();
  const [held] = useState(() => heldFor(heldAs));
  const [kind, setKind] = useState(wanted?.kind ?? held.work?.kind ?? "table");
  const known = quantityOf(wanted);
  const [quantity, setQuantity] = useState<PerformanceQuantity>(
    known ?? held.work?.quantity ?? "take-off-ground-roll",
  );
  const [picture, setPicture] = useState<PaperPicture | null>(
    way === "pasted" ? null : (held.picture ?? null),
  );
  const [pastes, setPastes] = useState(way === "pasted" || held.pasted !== undefined);
  const take = (file: Blob) =>
    keeping.keep(async () => {
      const read = await readPicture(file);
      letGo(heldAs);
      hold(heldAs, { picture: read });
      setPicture(read);
      setPastes(false);
    });
  const begins = picture === null && !pastes;
  const asksQuantity = kind === "table" && known === undefined;
  const again = () => {
    letGo(heldAs);
    setPicture(null);
    setPastes(false);
  };
  return (
    <div className="chart">
      {begins || (pastes && asksQuantity) ? (
        <section className="chart-section">
          {wanted === undefined && begins ? (
            <Choose label="To be made" value={kind} options={KINDS} onChange={setKind} />
          ) : null}
          {asksQuantity ? (
            <Choose label="It gives" value={quantity} options={NAMES} onChange={setQuantity} />
          ) : null}
          {begins ? (
            <PictureWanted
              kind={kind}
              keeping={keeping}
              onPicture={(file) => void take(file)}
              onPaste={kind === "table" && way === undefined ? () => setPastes(true) : undefined}
            />
          ) : null}
        </section>
      ) : null}
      <Maker
        picture={picture}
        pastes={pastes}
        kind={kind}
        quantity={quantity}
        wanted={wanted}
        heldAs={heldAs}
        onTaken={onTable}
      />
      {begins || way === "pasted" ? null : (
        <button type="button" className="button full chart-again" onClick={again}>
          {picture === null ? "Begin again" : "Begin again with another picture"}
        </button>
      )}
    </div>
  );
}

const quantityOf = (wanted: Wanted | undefined): PerformanceQuantity | undefined =>
  wanted?.kind === "table" ? wanted.quantity : undefined;

interface MakerProps extends Omit<Parameters<typeof ChartMaker>[0], "picture"> {
  readonly picture: PaperPicture | null;
  readonly pastes: boolean;
}

function Maker({ picture, pastes, ...given }: MakerProps) {
  const { kind, quantity } = given;
  if (picture !== null)
    return <ChartMaker key={`${picture.address} ${kind} ${quantity}`} picture={picture} {...given} />;
  return pastes && kind === "table" ? <PasteMaker key={quantity} {...given} /> : null;
}
