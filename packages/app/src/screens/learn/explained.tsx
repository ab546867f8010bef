import type { Book, Check, Fault } from "@witnessmark/book";
import { AircraftDrawing } from "../../drawing/aircraft-drawing.tsx";
import { lower } from "../../words/capital.ts";
import { RightLooks } from "../walk/right-looks.tsx";

interface ExplainedProps {
  readonly book: Book;
  readonly check: Check;
  /** With the place on the drawing. */
  readonly drawn?: boolean;
}

/** The faults of a check in one sentence: "Too heavy; a bag not weighed". */
export const faultWords = ({ faults }: { readonly faults: readonly Pick<Fault, "name">[] }): string =>
  faults.map(({ name }, i) => (i === 0 ? name : lower(name))).join("; ");

/** All that the book says of a check: where, what to do, what right looks like, why, and what goes wrong there. */
export function Explained({ book, check, drawn = false }: ExplainedProps) {
  const point = book.points.get(check.point);
  return (
    <>
      {drawn && point !== undefined ? (
        <div className="learn-drawing">
          <AircraftDrawing
            geometry={book.geometry}
            label={`${book.aircraft.type} from above; ${point.name} is marked`}
            marks={[{ id: point.id, name: point.name, place: point.place, state: "here", label: point.name }]}
            selected={point.id}
            still
          />
        </div>
      ) : null}
      <dl className="parts">
        <dt>Do</dt>
        <dd>
          {check.title}. {check.how}
        </dd>
        <dt>Should be</dt>
        <dd>{check.shouldBe}</dd>
        <RightLooks check={check} />
        <dt>Why</dt>
        <dd>{check.why}</dd>
        <dt>If missed</dt>
        <dd>{check.hazard.ifMissed}</dd>
        {check.faults.length === 0 ? null : (
          <>
            <dt>Look for</dt>
            <dd>{faultWords(check)}</dd>
          </>
        )}
      </dl>
    </>
  );
}
