import type { Book } from "@witnessmark/book";
import type { WalkPlan } from "@witnessmark/planner";
import type { PaperLine, PaperStop, WalkPaper } from "@witnessmark/sheet";
import { useMemo } from "react";
import { AircraftDrawing } from "../../drawing/aircraft-drawing.tsx";
import { walkRoute } from "../../drawing/walk-marks.ts";
import { walkScene } from "../../drawing/walk-scene.ts";
import { temperatureText } from "../../walk/reading-view.ts";
import { longDay } from "../../words/dates.ts";
import { tally } from "../../words/figures.ts";
import { usePageMargins } from "./use-page-margins.ts";

interface PaperWalkProps {
  readonly paper: WalkPaper;
  readonly book: Book;
  readonly plan: WalkPlan;
}

/** The walk as it prints: drawing, way, a box for every answer, a line for every figure, and who decided what. */
export function PaperWalk({ paper, book, plan }: PaperWalkProps) {
  const { temperature } = paper;
  const printed = `printed ${longDay(Date.now())}`;
  usePageMargins(
    `${paper.registration} ${paper.type}, book revision ${paper.revision}`,
    `${paper.walk}, ${printed}`,
  );
  const route = useMemo(
    () =>
      walkRoute(
        book,
        walkScene(book, plan, () => "open", undefined),
      ),
    [book, plan],
  );
  return (
    <article className="paper walk-paper" aria-label="The walk on paper">
      <div className="paper-frame">
        <header className="walk-paper-head">
          <h1>{paper.walk}</h1>
          <p>
            <b>{paper.registration}</b> {paper.type}, book revision {paper.revision};{" "}
            {tally(paper.lineCount, "step").toLowerCase()} at{" "}
            {tally(paper.stops.length, "stance").toLowerCase()}; {printed}
          </p>
          <Blanks of={["Day", "Begun at", "Ended at", "Walked by", "Temperature outside"]} />
        </header>
        <div className="walk-paper-brief">
          <div className="walk-paper-plan">
            <div>
              <AircraftDrawing
                geometry={book.geometry}
                label={`${paper.type} from above, with the way round it from stance to stance`}
                route={route}
                print
              />
            </div>
          </div>
          <div>
            <p className="paper-warn">{paper.caution}</p>
            <p>
              One box for each step: <b>as it should be</b>, <b>not right</b> (say what, on the lines at the
              end), <b>could not check</b>.
            </p>
            <p>
              {temperature === undefined
                ? "Limits that move with temperature are given for four days; between them take the stricter."
                : `Limits are those at ${temperatureText(temperature)}; on another day print it anew.`}
            </p>
            {paper.known.length === 0 ? null : (
              <>
                <h2>Known to be not right</h2>
                <ul>
                  {paper.known.map((words) => (
                    <li key={words}>{words}</li>
                  ))}
                </ul>
              </>
            )}
          </div>
        </div>
        <div className="walk-paper-stops">
          {paper.stops.map((stop) => (
            <Stop key={stop.stance.id} stop={stop} />
          ))}
          {/* in the columns too: what room the last stance leaves is theirs */}
          <section className="walk-paper-found">
            <h2>What was not right: which step, what, how large</h2>
            {[1, 2, 3, 4, 5, 6].map((row) => (
              <i key={row} />
            ))}
          </section>
          <Decided paper={paper} />
        </div>
      </div>
    </article>
  );
}

function Blanks({ of }: { readonly of: readonly string[] }) {
  return (
    <dl>
      {of.map((blank) => (
        <div key={blank}>
          <dt>{blank}</dt>
          <dd />
        </div>
      ))}
    </dl>
  );
}

/** Who answers for it. What is signed here is a paper: the decision of the program is made on its own sheet. */
function Decided({ paper }: { readonly paper: WalkPaper }) {
  return (
    <section className="walk-paper-decided">
      <h2>{paper.isBeforeFlight ? "The pilot in command’s decision" : "Walked and written by"}</h2>
      {paper.isBeforeFlight ? (
        <p className="walk-paper-answers">
          <span>
            <i className="walk-box" /> Go
          </span>
          <span>
            <i className="walk-box" /> Not going yet
          </span>
        </p>
      ) : null}
      <Blanks of={["Name", "Signature", "Day and time"]} />
      <p className="paper-warn">{paper.caution}</p>
      <p className="paper-notice">{paper.notice}</p>
    </section>
  );
}

function Stop({ stop }: { readonly stop: PaperStop }) {
  return (
    <section>
      {/* the heading is part of the table, so that it is printed again where a stop goes on in the next column */}
      <table>
        <thead>
          <tr>
            <th colSpan={4}>
              <h2>
                <b>{stop.number}</b> {stop.stance.name}
                {stop.stance.posture === "stand" ? null : <small>{stop.stance.posture}</small>}
              </h2>
            </th>
          </tr>
          <tr className="out-of-sight">
            <th scope="col">As it should be</th>
            <th scope="col">Not right</th>
            <th scope="col">Could not check</th>
            <th scope="col">Step</th>
          </tr>
        </thead>
        <tbody>
          {stop.lines.map((line) => (
            <Line key={`${line.kind} ${line.id}`} line={line} />
          ))}
        </tbody>
      </table>
    </section>
  );
}

function Line({ line }: { readonly line: PaperLine }) {
  const { reading } = line;
  return (
    <tr>
      <td>
        <i className="walk-box" />
      </td>
      <td>
        <i className="walk-box cross" />
      </td>
      <td>
        <i className="walk-box dash" />
      </td>
      <th scope="row">
        <b>{line.place}.</b> {line.title}.{line.asksPhoto ? " Photo." : null}
        <span>
          {line.shouldBe}
          {line.stowedIn.map((place) => (
            <span key={place} className="walk-paper-stowed">
              <i className="walk-box" /> {place}
            </span>
          ))}
        </span>
        {reading === undefined ? null : (
          <span className="walk-paper-reading">
            <span>
              {reading.limits.map((limit) => (
                <b key={limit}>{limit}</b>
              ))}
            </span>
            <i /> {reading.unit}
          </span>
        )}
        {line.tanks.map((tank) => (
          <span key={tank.name} className="walk-paper-reading">
            <span>{tank.name}</span>
            <i /> {tank.unit}
          </span>
        ))}
      </th>
    </tr>
  );
}
