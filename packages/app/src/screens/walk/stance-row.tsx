import type { OpenAircraft } from "../../frame/open-aircraft.ts";
import { Mark } from "../../marks/mark.tsx";
import { href } from "../../routes/route.ts";
import { type StepView, stepName, type WalkView } from "../../walk/walk-view.ts";

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
          <span>{shortName(stepName(step, open.book.points))}</span>
        </a>
      ))}
    </nav>
  );
}

/** The side is told by the stance; the row has room for little more than the thing. */
function shortName(name: string): string {
  const bare = name.replace(/^(left|right)\s+/i, "");
  return bare.charAt(0).toUpperCase() + bare.slice(1);
}
