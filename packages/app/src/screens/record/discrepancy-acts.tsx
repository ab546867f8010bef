import { packOf } from "@witnessmark/assess";
import type { Discrepancy } from "@witnessmark/ledger";
import { useState } from "react";
import type { OpenAircraft } from "../../frame/open-aircraft.ts";
import { Trouble } from "../../frame/trouble.tsx";
import { useKeeping } from "../../frame/use-keeping.ts";
import { useKeep } from "../../keep/react.ts";
import { href } from "../../routes/route.ts";
import { PutRight } from "../decide/put-right.tsx";
import { PhotoButton } from "../walk/photo-button.tsx";
import { ForTheMechanic } from "./for-the-mechanic.tsx";
import { MeasureAgain } from "./measure-again.tsx";
import { Relief } from "./relief-form.tsx";
import { SayOfIt } from "./say-of-it.tsx";
import { SayRelease } from "./say-release.tsx";

interface RuleBeside {
  readonly question: string;
  readonly title: string;
  readonly words: string;
}

/** What a rule has to say of mending it, beside relief, where the flight is under those rules. */
const RULES_BESIDE: Readonly<Record<string, readonly RuleBeside[]>> = {
  "us-part-91": [
    {
      question: "preventive-maintenance",
      title: "Who may do the work?",
      words: "What the rules say: the pilot, or a mechanic (14 CFR 43.3)",
    },
    {
      question: "after-maintenance",
      title: "May it fly after the work?",
      words: "What the rules say: release, entry, check flight (14 CFR 91.407)",
    },
    {
      question: "special-permit",
      title: "Is a special permit to be had?",
      words: "What the rules say: a flight to where it is mended (14 CFR 21.197)",
    },
  ],
  "eu-part-nco": [
    {
      question: "nco-put-off",
      title: "Who may put it off?",
      words: "What the rules say: the pilot, or certifying staff (ML.A.403, M.A.403)",
    },
    {
      question: "nco-pilot-owner",
      title: "May the pilot-owner release it?",
      words: "What the rules say: limited maintenance that they have done (ML.A.803, appendix II)",
    },
    {
      question: "nco-list-entry",
      title: "May the list have it?",
      words: "What the rules say: the minimum equipment list and its master (NCO.GEN.155)",
    },
  ],
};

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
  const beside = RULES_BESIDE[packOf(open.flight).id] ?? [];
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
            {beside.map(({ question, title, words }) => (
              <a key={question} href={href({ at: "rules", question })}>
                <b>{title}</b>
                <span>{words}</span>
              </a>
            ))}
            <MeasureAgain open={open} discrepancy={discrepancy} />
            <SayOfIt open={open} discrepancy={discrepancy} what="assessed" />
            <ForTheMechanic open={open} discrepancy={discrepancy} />
          </>
        ) : (
          <>
            <SayRelease open={open} discrepancy={discrepancy} />
            <SayOfIt open={open} discrepancy={discrepancy} what="reopened" />
          </>
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
