import { type ChartWork, type Chosen, isChosen } from "./chart-work.ts";

/** The tracing with what can be undone of it, oldest first. */
export interface Tracing {
  readonly work: ChartWork;
  readonly past: readonly ChartWork[];
  /** The point that the last step moved: more of the same is no step of its own. */
  readonly moving: Chosen | null;
}

/** So many taps can be taken back; each is small. */
const MOST_STEPS = 200;

export const begunWith = (work: ChartWork, past: readonly ChartWork[] = []): Tracing => ({
  work,
  past,
  moving: null,
});

/** What was typed or switched: it is no step, and what is undone later leaves it alone. */
export const said = (tracing: Tracing, work: ChartWork): Tracing => ({ ...tracing, work });

/** A tap, a move or a removal on the picture. */
export function stepped(tracing: Tracing, work: ChartWork, moving: Chosen | null = null): Tracing {
  if (work === tracing.work) return tracing;
  const goesOn = moving !== null && isChosen(tracing.moving, moving);
  const past = goesOn ? tracing.past : [...tracing.past, tracing.work].slice(-MOST_STEPS);
  return { work, past, moving };
}

/** Takes the last step back: where points stand, and nothing of what was typed. */
export function undone({ work, past }: Tracing): Tracing {
  const before = past.at(-1);
  if (before === undefined) return { work, past, moving: null };
  const panels = work.panels.map((panel) => {
    const old = before.panels.find(({ id }) => id === panel.id);
    if (old === undefined) return panel;
    const curves = panel.curves.map((curve) => {
      const was = old.curves.find(({ id }) => id === curve.id);
      return { ...curve, knots: was?.knots ?? [], between: was?.between ?? [] };
    });
    return { ...panel, marks: old.marks, curves };
  });
  const panel = Math.min(before.panel, panels.length - 1);
  const { tapping, curve } = before;
  return {
    work: { ...work, panels, panel, tapping, curve, chosen: null },
    past: past.slice(0, -1),
    moving: null,
  };
}
