import { href } from "../../routes/route.ts";
import { type PaperPlace, paperAddress } from "./paper-place.ts";
import { useDesk } from "./use-desk.ts";

interface PaperWaysProps {
  readonly section: PaperPlace["section"];
  /** The one that is filled; absent for a new one. */
  readonly item?: string;
  /** Begins one that is typed; absent where it stands there to be typed into. */
  readonly onType?: () => void;
}

/** How a table or an envelope comes into the draft: from a picture of its paper, pasted, or typed. */
export function PaperWays({ section, item, onType }: PaperWaysProps) {
  const { registration } = useDesk();
  const one = section === "tables" ? "table" : "envelope";
  const to = (page: string) => href({ at: "book", registration, page, item: paperAddress(section, item) });
  return (
    <section
      className="bk-ways"
      aria-label={
        item === undefined ? `Add ${one === "table" ? "a table" : "an envelope"}` : `Fill this ${one}`
      }
    >
      <h3>
        {item === undefined ? `Add ${one === "table" ? "a table" : "an envelope"}` : "Fill it from paper"}
      </h3>
      <a className="button full" href={to("picture")}>
        From a picture of the {one === "table" ? "chart" : "envelope"}
      </a>
      {section === "tables" ? (
        <a className="button full" href={to("pasted")}>
          From a spreadsheet or a CSV file
        </a>
      ) : null}
      {onType === undefined ? null : (
        <button type="button" className="button full" onClick={onType}>
          Type it in
        </button>
      )}
    </section>
  );
}
