import { type DecisionSheetResult, sheetOfDecision } from "@witnessmark/sheet";
import { useEffect, useState } from "react";
import { AircraftFrame } from "../../frame/aircraft-frame.tsx";
import type { OpenAircraft } from "../../frame/open-aircraft.ts";
import { useKeep } from "../../keep/react.ts";
import { href } from "../../routes/route.ts";
import { PaperSheet } from "./paper-sheet.tsx";
import { PrintTools } from "./print-tools.tsx";
import "../walk/left.css";
import "./sheet-page.css";

interface DecisionSheetProps {
  readonly open: OpenAircraft;
  readonly decisionId: string;
}

type Found =
  | { readonly phase: "working" }
  | { readonly phase: "done"; readonly result: DecisionSheetResult }
  | { readonly phase: "failed"; readonly why: string };

/** The sheet of a decision, worked out again from the ledger as it stood when it was signed; printed with no net. */
export function DecisionSheet({ open, decisionId }: DecisionSheetProps) {
  const { registration, snapshot, entry } = open;
  const keep = useKeep();
  const [found, setFound] = useState<Found>({ phase: "working" });
  useEffect(() => {
    let left = false;
    const work = async (): Promise<Found> => {
      try {
        return { phase: "done", result: await sheetOfDecision(await keep.entries(registration), decisionId) };
      } catch (error) {
        return { phase: "failed", why: error instanceof Error ? error.message : String(error) };
      }
    };
    void work().then((next) => {
      if (!left) setFound(next);
    });
    return () => {
      left = true;
    };
  }, [keep, registration, decisionId]);
  const decision = open.state.decisions.find((each) => each.id === decisionId);
  const onServer = snapshot.status.server === "reached" && entry.toSend === 0;
  return (
    <AircraftFrame
      open={open}
      sheet="decide"
      title="Sheet"
      under={decision?.answer === "go" ? "Go" : "Not going yet"}
      className="sheet-page"
    >
      <main>
        <PrintTools back={href({ at: "decide", registration })} backTo="Back to Decide">
          {onServer ? (
            <a
              className="button"
              download={`${registration}-${decisionId.slice(0, 8)}.pdf`}
              href={`/api/aircraft/${encodeURIComponent(registration)}/decisions/${encodeURIComponent(decisionId)}/sheet.pdf`}
            >
              PDF
            </a>
          ) : null}
        </PrintTools>
        <Body found={found} />
      </main>
    </AircraftFrame>
  );
}

function Body({ found }: { readonly found: Found }) {
  if (found.phase === "working") {
    return (
      <p className="sheet-working" role="status">
        Working it out again from the ledger
      </p>
    );
  }
  if (found.phase === "failed" || !found.result.ok) {
    const why = found.phase === "failed" ? found.why : found.result.ok ? "" : found.result.says;
    return (
      <p className="trouble" role="alert">
        {why}. The decision itself is kept; its sheet cannot be made from what is here.
      </p>
    );
  }
  return <PaperSheet sheet={found.result.sheet} book={found.result.book} />;
}
