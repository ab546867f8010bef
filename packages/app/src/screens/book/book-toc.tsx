import { GROUP_NAMES, type Plain, SECTIONS, type Section, valueAt } from "@witnessmark/book";
import { useEffect, useRef } from "react";
import { href } from "../../routes/route.ts";
import { useDesk } from "./use-desk.ts";
import { pointsIn } from "./walk-points.ts";

const GROUPS = Object.keys(GROUP_NAMES) as Section["group"][]; // the keys of a const object

/** The stances in walking order with their points, and the other pages of the book. */
export function BookToc({
  page,
  item,
}: {
  readonly page: string | undefined;
  readonly item: string | undefined;
}) {
  const { registration, plain } = useDesk();
  const list = useRef<HTMLElement>(null);
  useEffect(() => {
    if (page === undefined && item === undefined) return;
    list.current?.querySelector('[aria-current="true"]')?.scrollIntoView({ block: "nearest" });
  }, [page, item]);
  const points = pointsIn(plain);
  const checks = listIn(plain, ["checks"]);
  const inHand = page === "checks" ? pointOfCheck(checks, item) : item;
  const stance = page === "stances" ? item : points.find(({ id }) => id === inHand)?.stance;
  return (
    <nav className="toc bk-toc" aria-label="Pages of the book" ref={list}>
      <a
        href={href({ at: "book", registration })}
        aria-current={page === undefined ? "true" : undefined}
        className="bk-toc-page"
      >
        <span>The book as a whole</span>
      </a>
      <h2>Stances, in the order of the book</h2>
      {listIn(plain, ["stances"]).map((each, index) => {
        const id = textOf(each, "id");
        const here = points.filter((point) => point.stance === id);
        return (
          // biome-ignore lint/suspicious/noArrayIndexKey: in a draft two may have the same id for a while
          <details key={`${id} ${index}`} open={id === stance}>
            <summary>
              <span>{textOf(each, "name") || id}</span>
              <small>{here.length}</small>
            </summary>
            <a
              href={href({ at: "book", registration, page: "stances", item: id })}
              aria-current={page === "stances" && item === id ? "true" : undefined}
            >
              <span>Where one stands</span>
              <small>stance</small>
            </a>
            {here.map((point) => (
              <a
                key={point.index}
                href={href({ at: "book", registration, page: "points", item: point.id })}
                aria-current={
                  (page === "points" || page === "checks") && inHand === point.id ? "true" : undefined
                }
              >
                <span>{point.name}</span>
                <small>{checks.filter((check) => isAt(check, point.id)).length}</small>
              </a>
            ))}
          </details>
        );
      })}
      {GROUPS.map((group) => (
        <div key={group}>
          <h2>{GROUP_NAMES[group]}</h2>
          {SECTIONS.filter((section) => section.group === group).map((section) => (
            <a
              key={section.id}
              className="bk-toc-page"
              href={href({ at: "book", registration, page: section.id })}
              aria-current={page === section.id && item === undefined ? "true" : undefined}
            >
              <span>{section.title}</span>
              <small>{countOf(section, plain)}</small>
            </a>
          ))}
        </div>
      ))}
    </nav>
  );
}

export const listIn = (plain: Plain | null, path: readonly string[]): readonly Plain[] => {
  const list = valueAt(plain ?? undefined, path);
  return Array.isArray(list) ? list : [];
};

export const textOf = (item: Plain | undefined, key: string): string => {
  const value = valueAt(item, [key]);
  return typeof value === "string" ? value : "";
};

export function isAt(check: Plain, point: string): boolean {
  const at = valueAt(check, ["at"]);
  return Array.isArray(at) ? at.includes(point) : at === point;
}

function pointOfCheck(checks: readonly Plain[], id: string | undefined): string | undefined {
  const at = valueAt(
    checks.find((check) => textOf(check, "id") === id),
    ["at"],
  );
  const first: Plain | undefined = Array.isArray(at) ? at[0] : at;
  return typeof first === "string" ? first : undefined;
}

/** How much of a page there is: "none", a count, or nothing for a page that is one thing and is there. */
export function countOf(section: Section, plain: Plain | null): string {
  const value = valueAt(plain ?? undefined, section.path.map(String));
  if (section.one === undefined) return section.path.length > 0 && value === undefined ? "none" : "";
  return Array.isArray(value) && value.length > 0 ? String(value.length) : "none";
}
