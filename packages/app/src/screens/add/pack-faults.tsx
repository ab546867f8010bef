import type { PackFault } from "@witnessmark/pack";
import { countOf } from "../../words/figures.ts";

interface PackFaultsProps {
  readonly fileName: string;
  readonly faults: readonly PackFault[];
}

/** Everything that is wrong with a book that came with its pictures. */
export function PackFaults({ fileName, faults }: PackFaultsProps) {
  return (
    <section className="book-faults" aria-label="What is wrong with the file">
      <p className="trouble" role="alert">
        {countOf(faults.length, "fault")} in {fileName}. Nothing of it was taken.
      </p>
      <ol>
        {faults.map(({ entry, says }) => (
          <li key={`${entry} ${says}`}>
            <p className="fault-place">{entry === "" ? "The file as a whole" : <code>{entry}</code>}</p>
            <p>{says}</p>
          </li>
        ))}
      </ol>
    </section>
  );
}
