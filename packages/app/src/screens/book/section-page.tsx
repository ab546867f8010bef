import {
  type BookPath,
  idOf,
  itemName,
  missingFor,
  type Plain,
  type Section,
  valueAt,
} from "@witnessmark/book";
import { href } from "../../routes/route.ts";
import { go } from "../../routes/use-route.ts";
import { article } from "../../words/article.ts";
import { capital } from "../../words/capital.ts";
import { sectionBlank } from "./blanks.ts";
import { listIn } from "./book-toc.tsx";
import { EnvelopePreview } from "./envelope-preview.tsx";
import { countText } from "./fault-words.ts";
import { Fields } from "./fields.tsx";
import { ItemPage } from "./item-page.tsx";
import { PaperWays } from "./paper-ways.tsx";
import { PutInNote } from "./put-in-note.tsx";
import { indexOfPath, sectionOfPath } from "./section-of-path.ts";
import { useDesk } from "./use-desk.ts";

interface SectionPageProps {
  readonly section: Section;
  readonly item: string | undefined;
  readonly wide: boolean;
}

/** One page of the book: a thing, or a list of things and the one in hand. */
export function SectionPage({ section, item, wide }: SectionPageProps) {
  const desk = useDesk();
  const { plain, registration } = desk;
  const back = href({ at: "book", registration, page: section.id });
  if (section.one === undefined) {
    return (
      <article className="bk-page">
        <PageHead section={section} back={wide ? undefined : href({ at: "book", registration })} />
        <OneThing section={section} />
      </article>
    );
  }
  const items = listIn(plain, section.path.map(String));
  const index = indexOfItem(items, item);
  const ways =
    desk.draft !== null && item !== undefined && isOfPaper(section.id) ? (
      <PaperWays section={section.id} item={item} />
    ) : null;
  if (index !== undefined && !wide)
    return (
      <ItemPage
        section={section}
        index={index}
        back={back}
        first={ways}
        below={section.id === "envelopes" ? <EnvelopePreview index={index} /> : null}
      />
    );
  return (
    <article className={wide ? "bk-page bk-two" : "bk-page"}>
      <div>
        <PageHead section={section} back={wide ? undefined : href({ at: "book", registration })} />
        <ItemList section={section} items={items} index={index} />
      </div>
      {wide && index !== undefined ? (
        <ItemPage key={index} section={section} index={index} back={undefined} first={ways} />
      ) : null}
    </article>
  );
}

export const indexOfItem = (items: readonly Plain[], item: string | undefined): number | undefined => {
  if (item === undefined) return undefined;
  const found = items.findIndex((each) => idOf(each) === item);
  if (found >= 0) return found;
  const at = Number(/^at-(\d+)$/.exec(item)?.[1] ?? Number.NaN);
  return at < items.length ? at : undefined;
};

export function PageHead({
  section,
  back,
}: {
  readonly section: Section;
  readonly back: string | undefined;
}) {
  const { plain, registration } = useDesk();
  const missing = plain === null ? [] : missingFor(plain).filter((each) => each.section === section.id);
  return (
    <header className="bk-head">
      {back === undefined ? null : (
        <a className="back-row" href={back}>
          Back to {back === href({ at: "book", registration }) ? "the book" : section.title.toLowerCase()}
        </a>
      )}
      <h2>{section.title}</h2>
      {missing.map(({ says }) => (
        <p className="bk-missing" key={says}>
          {says}
        </p>
      ))}
    </header>
  );
}

export function OneThing({ section }: { readonly section: Section }) {
  const desk = useDesk();
  const value = valueAt(desk.plain ?? undefined, section.path);
  if (section.path.length > 0 && (value === undefined || value === null)) {
    return desk.draft === null || section.group === "aircraft" ? (
      <p className="bk-none">The book says nothing of it.</p>
    ) : (
      <button
        type="button"
        className="button tall full"
        onClick={() => desk.edit(sectionBlank(desk.plain ?? {}, section))}
      >
        Put it in
      </button>
    );
  }
  return (
    <>
      {section.id === "loading" ? <PutInNote /> : null}
      <Fields fields={section.fields} path={section.path} />
      {desk.draft !== null && section.path.length === 1 && section.group !== "aircraft" ? (
        <button type="button" className="quiet" onClick={() => desk.edit([{ remove: section.path }])}>
          Take all of it out
        </button>
      ) : null}
    </>
  );
}

interface ItemListProps {
  readonly section: Section;
  readonly items: readonly Plain[];
  readonly index: number | undefined;
}

function ItemList({ section, items, index }: ItemListProps) {
  const desk = useDesk();
  const { registration, plain, draft, faults } = desk;
  const itemKey = (item: Plain, at: number) => idOf(item) ?? `at-${at}`;
  const add = () => {
    desk.edit(sectionBlank(plain ?? {}, section));
    go({ at: "book", registration, page: section.id, item: `at-${items.length}` });
  };
  const wrong = (at: number) =>
    countText(
      faults.filter(({ path }) => sectionOfPath(path) === section.id && indexOfPath(path) === at),
      plain,
    );
  return (
    <>
      {items.length === 0 ? <p className="bk-none">None yet.</p> : null}
      <ul className="bk-list">
        {items.map((item, at) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: in a draft two may have the same id for a while
          <li key={`${itemKey(item, at)} ${at}`}>
            <a
              className="bk-row-link"
              href={href({ at: "book", registration, page: section.id, item: itemKey(item, at) })}
              aria-current={at === index ? "true" : undefined}
            >
              <b>{itemName(item, plain ?? {}) ?? `${capital(section.one ?? "")} ${at + 1}`}</b>
              <span>{wrong(at)}</span>
            </a>
          </li>
        ))}
      </ul>
      {draft === null ? null : isOfPaper(section.id) ? (
        <PaperWays section={section.id} onType={add} />
      ) : (
        <button type="button" className="button full" onClick={add}>
          Add {article(section.one ?? "")}
        </button>
      )}
      {section.id === "envelopes" ? <EnvelopePreview index={index ?? 0} /> : null}
    </>
  );
}

/** Whether its items stand on paper as charts or tables. */
const isOfPaper = (section: string): section is "tables" | "envelopes" =>
  section === "tables" || section === "envelopes";

/** The path of an item of a page. */
export const itemPath = (section: Section, index: number): BookPath => [...section.path, index];
