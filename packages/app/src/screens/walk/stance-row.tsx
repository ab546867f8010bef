import type { OpenAircraft } from "../../frame/open-aircraft.ts";
import { Mark } from "../../marks/mark.tsx";
import { href } from "../../routes/route.ts";
import { shortName } from "../../walk/short-name.ts";
import type { StepView, WalkView } from "../../walk/walk-view.ts";

interface StanceRowProps {
  readonly open: OpenAircraft;
  readonly view: WalkView;
  readonly inHand: StepView;
}

/** Everything that is done from this stance, as a row: where one is in it, and a way to each. */
export function StanceRow({ open, view, inHand }: StanceRowProps) {
  return (
    <nav className="stance-row" aria-label="At this stance">
      {inHand.stop.steps.map((step) => (
        <a
          key={step.id}
          href={href({ at: "walk", registration: open.registration, step: { kind: step.kind, id: step.id } })}
          aria-current={step.id === inHand.step.id ? "step" : undefined}
        >
          <Mark status={view.byId.get(step.id)?.status ?? "open"} size_px={24} />
          <span>{shortName(step, inHand.stop.steps, open.book)}</span>
        </a>
      ))}
    </nav>
  );
}
