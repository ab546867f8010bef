import { type Plain, sectionOf, valueAt } from "@witnessmark/book";
import type { ReactNode } from "react";
import { href } from "../../routes/route.ts";
import { go } from "../../routes/use-route.ts";
import { tally } from "../../words/figures.ts";
import { sectionBlank } from "./blanks.ts";
import { isAt, listIn, textOf } from "./book-toc.tsx";
import { CheckExtras } from "./check-extras.tsx";
import { CheckPhoto } from "./check-photo.tsx";
import { ItemPage, linkTo } from "./item-page.tsx";
import { mirrorOf } from "./place-input.tsx";
import { PointsDrawing } from "./points-drawing.tsx";
import { indexOfItem, SectionPage } from "./section-page.tsx";
import { type Desk, useDesk } from "./use-desk.ts";
import { mirrorPointEdits, newCheck } from "./walk-edits.ts";

interface WalkPageProps {
  readonly section: "points" | "checks" | "stances";
  readonly item: string | undefined;
  readonly wide: boolean;
  /** Stands in the right pane while no point is in hand. */
  readonly home?: ReactNode;
}

/** The points on the drawing, and beside it the one in hand with what is looked at there. */
export function WalkPage({ section: id, item, wide, home }: WalkPageProps) {
  const desk = useDesk();
  const { plain, registration } = desk;
  const section = sectionOf(id);
  if (section === undefined) return null;
  const index = indexOfItem(listIn(plain, [id]), item);
  const point = pointInHand(plain, id, index);
  const drawing = (
    <div className={wide ? "bk-draw" : "bk-draw bk-draw-phone"}>
      <PointsDrawing point={point} stance={id === "stances" ? item : undefined} small={!wide} />
    </div>
  );
  const page =
    index === undefined ? (
      (home ?? <SectionPage section={section} item={undefined} wide={false} />)
    ) : (
      <ItemPage
        key={`${id} ${index}`}
        section={section}
        index={index}
        back={wide ? undefined : href({ at: "book", registration, page: id })}
        above={<Above id={id} desk={desk} point={point} />}
        below={
          id === "points" && point !== undefined ? (
            <ChecksHere desk={desk} point={point} />
          ) : id === "checks" && item !== undefined ? (
            <CheckExtras id={item} />
          ) : null
        }
        first={id === "checks" ? <CheckPhoto index={index} /> : null}
        acts={id === "points" ? <MirrorAct desk={desk} index={index} /> : null}
      />
    );
  if (!wide) {
    return (
      <>
        {index === undefined && id !== "points" ? null : drawing}
        <section className="bk-pane">{page}</section>
      </>
    );
  }
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

function pointInHand(plain: Plain | null, id: string, index: number | undefined): string | undefined {
  if (index === undefined || plain === null) return undefined;
  if (id === "points") return textOf(valueAt(plain, ["points", index]), "id");
  if (id !== "checks") return undefined;
  const at = valueAt(plain, ["checks", index, "at"]);
  const first: Plain | undefined = Array.isArray(at) ? at[0] : at;
  return typeof first === "string" ? first : undefined;
}

/** "Point 34, Before the left wing": the number of a stance is the walk's, and a draft has none yet. */
function Above({
  id,
  desk,
  point,
}: {
  readonly id: string;
  readonly desk: Desk;
  readonly point: string | undefined;
}) {
  const { plain, registration } = desk;
  if (point === undefined) return null;
  const points = listIn(plain, ["points"]);
  const at = points.findIndex((each) => textOf(each, "id") === point);
  const stance = listIn(plain, ["stances"]).find(
    (each) => textOf(each, "id") === textOf(points[at], "stance"),
  );
  const name = textOf(stance, "name");
  const words = `${at + 1}${name === "" ? "" : `, ${name}`}`;
  if (id === "points") return <p className="where">Point {words}</p>;
  return (
    <p className="where">
      <a href={linkTo(registration, "points", point)}>{textOf(points[at], "name") || `Point ${at + 1}`}</a>,
      point {words}
    </p>
  );
}

function ChecksHere({ desk, point }: { readonly desk: Desk; readonly point: string }) {
  const { plain, registration, draft } = desk;
  const checks = listIn(plain, ["checks"]).filter((check) => isAt(check, point));
  const section = sectionOf("checks");
  const add = () => {
    if (plain === null || section === undefined) return;
    const { edits, id } = newCheck(plain, point, sectionBlank(plain, section));
    desk.edit(edits);
    go({ at: "book", registration, page: "checks", item: id });
  };
  return (
    <section className="bk-here">
      <h3>{tally(checks.length, "check")} here</h3>
      <ul className="bk-list">
        {checks.map((check) => (
          <li key={textOf(check, "id")}>
            <a className="bk-row-link" href={linkTo(registration, "checks", textOf(check, "id"))}>
              <b>{textOf(check, "title") || textOf(check, "id")}</b>
              <span>{textOf(check, "method")}</span>
            </a>
          </li>
        ))}
      </ul>
      {draft === null ? null : (
        <button type="button" className="button full" onClick={add}>
          Add a check here
        </button>
      )}
    </section>
  );
}

function MirrorAct({ desk, index }: { readonly desk: Desk; readonly index: number }) {
  const { plain } = desk;
  if (plain === null || mirrorOf(plain, index) !== undefined) return null;
  const y_m = valueAt(plain, ["points", index, "place", 1]);
  if (typeof y_m !== "number" || Math.abs(y_m) < 0.05) return null;
  return (
    <button type="button" className="button" onClick={() => desk.edit(mirrorPointEdits(plain, index))}>
      Mirror to the other side
    </button>
  );
}
