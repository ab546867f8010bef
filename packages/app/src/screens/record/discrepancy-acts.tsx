import type { Discrepancy } from "@witnessmark/ledger";
import { useState } from "react";
import type { OpenAircraft } from "../../frame/open-aircraft.ts";
import { Trouble } from "../../frame/trouble.tsx";
import { useKeeping } from "../../frame/use-keeping.ts";
import { useKeep } from "../../keep/react.ts";
import { PutRight } from "../decide/put-right.tsx";
import { PhotoButton } from "../walk/photo-button.tsx";
import { MeasureAgain } from "./measure-again.tsx";
import { Relief } from "./relief-form.tsx";
import { SayOfIt } from "./say-of-it.tsx";

interface ActsProps {
  readonly open: OpenAircraft;
  readonly discrepancy: Discrepancy;
}

/** What can be done about a discrepancy now: each becomes an entry of the ledger, and none erases another. */
export function DiscrepancyActs({ open, discrepancy }: ActsProps) {
  const keep = useKeep();
  const keeping = useKeeping();
  const [photographed, setPhotographed] = useState(false);
  const { id } = discrepancy;
  const addPhoto = async (file: File) => {
    const kept = await keeping.keep(() =>
      keep.attachPhoto(open.registration, { kind: "discrepancy", id }, file),
    );
    if (kept) setPhotographed(true);
  };
  return (
    <section className="one-section what-to-do">
      <h3>{discrepancy.isOpen ? "What to do about it" : "If it is there again"}</h3>
      <div className="ways">
        {discrepancy.isOpen ? (
          <>
            <PutRight
              open={open}
              discrepancy={discrepancy}
              wayOut="Put it right: and have it released by whom the rules ask for"
            />
            <Relief open={open} discrepancy={discrepancy} />
            <MeasureAgain open={open} discrepancy={discrepancy} />
            <SayOfIt open={open} discrepancy={discrepancy} what="assessed" />
          </>
        ) : (
          <SayOfIt open={open} discrepancy={discrepancy} what="reopened" />
        )}
      </div>
      <Trouble words={keeping.trouble} onDismiss={keeping.dismiss} />
      <PhotoButton
        label={photographed ? "Another photo" : "Add a photo"}
        className="button"
        onPhoto={(file) => void addPhoto(file)}
      />
      <p className="record-caution">
        What a fault means for flight is for the approved manual, the rules where you fly and licensed
        mechanics.
      </p>
    </section>
  );
}
