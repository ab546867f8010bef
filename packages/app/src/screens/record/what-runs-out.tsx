import { leftText } from "@witnessmark/assess";
import type { OpenAircraft } from "../../frame/open-aircraft.ts";
import { Mark } from "../../marks/mark.tsx";
import { href } from "../../routes/route.ts";
import { RunsOutRule } from "./runs-out-rule.tsx";
import { useTimed } from "./timed-now.ts";
import { ToFollow } from "./to-follow.tsx";
import { whyItStops } from "./why-it-stops.ts";

interface WhatRunsOutProps {
  readonly open: OpenAircraft;
  /** False in the first frame: only as many as a screen shows. */
  readonly whole: boolean;
}

/** No screen shows more of them at once. */
const ON_A_SCREEN = 10;

/** The list of what runs out first, each on its rule. */
export function WhatRunsOut({ open, whole }: WhatRunsOutProps) {
  const { figures } = useTimed(open);
  const verdicts = new Map(open.assessment.verdicts.map((verdict) => [verdict.id, verdict]));
  return (
    <section id="record-timed" className="timed">
      <h2>
        What runs out first <span>{figures.length} followed</span>
      </h2>
      {figures.length === 0 ? (
        <p className="record-none">
          The book follows nothing that runs out: no inspection, no data, no paper. Its timed items are
          written there.
        </p>
      ) : (
        <ul>
          {(whole ? figures : figures.slice(0, ON_A_SCREEN)).map((figure) => {
            const verdict = verdicts.get(`timed:${figure.item.id}`);
            const status = verdict?.status ?? "open";
            const why = whyItStops(verdict);
            return (
              <li key={figure.item.id}>
                <a href={href({ at: "timed", registration: open.registration, item: figure.item.id })}>
                  <Mark status={status} size_px={28} />
                  <b>{figure.item.name}</b>
                  <b className={status}>{verdict?.margin?.text ?? leftText(figure.nearest)}</b>
                  <span className="timed-says">
                    {verdict?.says ?? ""}
                    {why === undefined ? null : <strong>{why}</strong>}
                  </span>
                  <RunsOutRule figure={figure} />
                </a>
              </li>
            );
          })}
        </ul>
      )}
      {whole ? <ToFollow open={open} /> : null}
    </section>
  );
}
