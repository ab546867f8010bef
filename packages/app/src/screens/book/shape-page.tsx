import { type BookEdit, editDraft, type Followed, followShape, type Section } from "@witnessmark/book";
import { useMemo, useState } from "react";
import { AircraftDrawing, type DrawingMark, type PlaceOnView } from "../../drawing/aircraft-drawing.tsx";
import { metres, overallDimensions, zonesOf } from "../../drawing/dimensions.ts";
import { href } from "../../routes/route.ts";
import { tally } from "../../words/figures.ts";
import { FiguresPage } from "./figures-page.tsx";
import { handlesOf, type OutlineHandle } from "./outline-handles.ts";
import { NOSE_LEFT } from "./points-drawing.tsx";
import { OneThing, PageHead, SectionPage } from "./section-page.tsx";
import { type Desk, DeskProvider, useDesk } from "./use-desk.ts";

interface ShapePageProps {
  readonly section: Section;
  readonly item: string | undefined;
  readonly wide: boolean;
}

/** A page of the shape, with the drawing beside it: it changes as the figures do. */
export function ShapePage(props: ShapePageProps) {
  const { desk, told } = useFollowing();
  return (
    <DeskProvider value={desk}>
      <OnTheDesk {...props} told={told} />
    </DeskProvider>
  );
}

/** The desk on which points and stances follow the shape, each change one step; and what was said of the last one. */
function useFollowing(): { readonly desk: Desk; readonly told: string } {
  const desk = useDesk();
  const [told, setTold] = useState("");
  const { plain, geometry, change } = desk;
  return useMemo(() => {
    const edit = (edits: readonly BookEdit[]) =>
      change((draft) => {
        if (plain === null) return editDraft(draft, edits);
        const followed = followShape(plain, edits, geometry);
        setTold(followedWords(followed));
        return editDraft(draft, followed.edits);
      });
    return { desk: { ...desk, edit }, told };
  }, [desk, plain, geometry, change, told]);
}

function followedWords({ hasPair, count, stays }: Followed): string {
  const pair = hasPair ? ["Its mirror image goes with it."] : [];
  const follow =
    count === 0
      ? []
      : [`${tally(count, "point or stance", "points and stances")} ${count === 1 ? "follows" : "follow"}.`];
  const stay =
    stays.length === 0
      ? []
      : [
          `Moved by hand before, so left where ${stays.length === 1 ? "it is" : "they are"}: ${stays.join(", ")}.`,
        ];
  return [...pair, ...follow, ...stay].join(" ");
}

/** What the figures of a page are counted from. */
const COUNTED: Readonly<Record<string, string>> = {
  outline:
    "A station is a cut across the fuselage: where it is, half its width, and how high its top and its underside are. All in metres: aft of the datum, out from the centre line, up from the ground.",
  "gear-and-propellers":
    "All in metres: aft of the datum (with a minus ahead of it), right of the centre line (with a minus left of it), up from the ground.",
  openings: "All in metres: aft of the datum (with a minus ahead of it), up from the ground.",
};

function OnTheDesk({ section, item, wide, told }: ShapePageProps & { readonly told: string }) {
  const { registration } = useDesk();
  const counted = COUNTED[section.id];
  const drawing = (
    <div className={wide ? "bk-draw" : "bk-draw bk-draw-phone bk-shape-phone"}>
      <ShapeDrawing page={section.id} wide={wide} />
      <div className="bk-draw-acts bk-followed">
        <p role="status">{told}</p>
      </div>
    </div>
  );
  const page =
    section.one === undefined ? (
      <article className="bk-page">
        <PageHead section={section} back={wide ? undefined : href({ at: "book", registration })} />
        {counted === undefined ? null : <p className="bk-says">{counted}</p>}
        {section.id === "figures" ? <FiguresPage section={section} /> : <OneThing section={section} />}
      </article>
    ) : (
      <>
        <SectionPage section={section} item={item} wide={false} />
        {item === undefined ? (
          <p className="bk-keep-outs">
            One walks round a chock or a step, and never stands before an inlet, an exhaust or an antenna. The
            arc of each propeller, dashed on the drawing, is kept from without a word here.
          </p>
        ) : null}
      </>
    );
  return (
    <>
      {drawing}
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: it scrolls, and may hold nothing else to focus */}
      <section className="bk-pane" tabIndex={0} aria-label="What the book says">
        {page}
      </section>
    </>
  );
}

type Seen = "plan" | "side" | "front";
const VIEWS: Readonly<Record<Seen, string>> = {
  plan: "From above",
  side: "From the left",
  front: "From ahead",
};

function ShapeDrawing({ page, wide }: { readonly page: string; readonly wide: boolean }) {
  const { geometry, book, registration } = useDesk();
  const [view, setView] = useState<Seen>("plan");
  const zones = useMemo(
    () =>
      geometry === null
        ? []
        : zonesOf({ geometry, ...(book?.hazards === undefined ? {} : { hazards: book.hazards }) }),
    [geometry, book],
  );
  if (geometry === null) return <p className="bk-none">The shape cannot be drawn: mend it in the text.</p>;
  const one = (seen: Seen) => (
    <OneView
      key={seen}
      page={page}
      view={seen}
      label={`${book?.aircraft.type ?? registration}, ${VIEWS[seen].toLowerCase()}`}
      zones={zones}
      small={!wide}
    />
  );
  if (wide)
    return (
      <>
        <div className="bk-plan">{one("plan")}</div>
        <div className="bk-side">{one("side")}</div>
      </>
    );
  return (
    <>
      <div className="bk-plan">{one(view)}</div>
      <fieldset className="bk-pick bk-views">
        <legend className="out-of-sight">Seen</legend>
        {(Object.keys(VIEWS) as Seen[]).map((seen) => (
          <button key={seen} type="button" aria-pressed={seen === view} onClick={() => setView(seen)}>
            {VIEWS[seen]}
          </button>
        ))}
      </fieldset>
    </>
  );
}

const NO_HANDLES: readonly OutlineHandle[] = [];

interface OneViewProps {
  readonly page: string;
  readonly view: Seen;
  readonly label: string;
  readonly zones: ReturnType<typeof zonesOf>;
  readonly small: boolean;
}

/** One view with its measures; on the page of the outline with handles, dragged to where an edge runs. */
function OneView({ page, view, label, zones, small }: OneViewProps) {
  const desk = useDesk();
  const { plain, draft, geometry } = desk;
  const [chosen, setChosen] = useState<string | undefined>(undefined);
  const handles = useMemo(
    () => (page !== "outline" || draft === null || plain === null ? NO_HANDLES : handlesOf(plain, view)),
    [page, draft, plain, view],
  );
  const dimensions = useMemo(
    () => (geometry === null ? [] : overallDimensions(view, geometry, metres)),
    [view, geometry],
  );
  const marks = useMemo(
    (): readonly DrawingMark[] =>
      handles.map(({ id, name, place }) => ({
        id,
        name,
        place,
        size: "small",
        ...(id === chosen ? { state: "here" as const, label: name } : {}),
      })),
    [handles, chosen],
  );
  if (geometry === null) return null;
  const move = (id: string, at: PlaceOnView, done: boolean) => {
    setChosen(id);
    const handle = handles.find((each) => each.id === id);
    if (done && handle !== undefined) desk.edit(handle.edits(at));
  };
  return (
    <AircraftDrawing
      geometry={geometry}
      view={view}
      label={label}
      marks={marks}
      dimensions={dimensions}
      datum
      squares
      tools={view === "plan" ? "folded" : "none"}
      apart_px={small ? 10 : 16}
      mark_px={small ? 10 : 13}
      {...(view === "plan" ? { up: NOSE_LEFT, zones } : {})}
      {...(chosen === undefined ? {} : { selected: chosen })}
      {...(handles.length === 0 ? {} : { onPoint: setChosen, onMove: move })}
    />
  );
}
