import { assess } from "@witnessmark/assess";
import type { Book, Check } from "@witnessmark/book";
import { type Author, emptyState, type Walk } from "@witnessmark/ledger";
import { useMemo } from "react";
import type { OpenAircraft } from "../../frame/open-aircraft.ts";
import { useKeepSnapshot } from "../../keep/react.ts";
import { planOf } from "../../walk/walk-plan.ts";
import { walkView } from "../../walk/walk-view.ts";
import { CheckCard } from "../walk/check-card.tsx";
import type { Sayer } from "../walk/sayer.ts";
import "../walk/walk.css";

/** Answers go nowhere: nothing of it is kept. */
const NOBODY_HEARS: Sayer = {
  busy: false,
  trouble: null,
  dismiss: () => {},
  say: async () => false,
  aside: async () => false,
};

const SOMEBODY: Author = { id: "preview", name: "Preview", role: "pilot" };

/** A check as the walk shows it, with an aircraft on which nothing was looked at yet. */
export function WalkPreview({ book, check }: { readonly book: Book; readonly check: Check }) {
  const snapshot = useKeepSnapshot();
  const made = useMemo(
    () => preview(book, check, snapshot.person ?? SOMEBODY),
    [book, check, snapshot.person],
  );
  if (made === null) return <p className="bk-none">On none of its walks is it met.</p>;
  const open: OpenAircraft = { ...made.open, snapshot };
  return (
    <div className="bk-preview">
      <CheckCard
        open={open}
        view={made.view}
        inHand={made.inHand}
        check={check}
        sayer={NOBODY_HEARS}
        wide={false}
      />
    </div>
  );
}

function preview(book: Book, check: Check, person: Author) {
  const kind = check.walks[0];
  if (kind === undefined) return null;
  const { registration } = book.aircraft;
  const now = new Date().toISOString();
  const walk: Walk = {
    id: `preview-${check.id}`,
    kind,
    bookSha256: book.sha256,
    interruptions: [],
    askedAgain: [],
    event: "preview",
    author: person,
    device: "preview",
    deviceSeq: 0,
    recordedAt: now,
    hlc: "",
  };
  const state = { ...emptyState(registration), walks: new Map([[walk.id, walk]]) };
  const assessment = assess(book, state, null, Date.now());
  const plan = planOf(book, kind, walk.id, state, assessment);
  const view = walkView(walk, plan, state, assessment);
  const inHand = view.byId.get(check.id);
  if (inHand === undefined) return null;
  const entry = { registration, state, book, bookFaults: [], toSend: 0, quarantined: [] };
  return {
    open: { registration, book, entry, state, flight: null, flightTrouble: null, assessment, person },
    view,
    inHand,
  };
}
