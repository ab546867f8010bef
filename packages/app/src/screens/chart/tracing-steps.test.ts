import { expect, it } from "vitest";
import { changeCurve, newWork, panelInHand, tapped } from "./chart-work.ts";
import { begunWith, said, stepped, undone } from "./tracing-steps.ts";

const at = (x_px: number) => ({ x_px, y_px: 10 });
const tap = (tracing: ReturnType<typeof begunWith>, x_px: number) =>
  stepped(tracing, tapped(tracing.work, at(x_px), null));

it("every tap can be taken back, and what was typed since stays", () => {
  const begun = begunWith(newWork("table", "landing-over-50ft"));
  const marked = [10, 20, 30, 40].reduce(tap, begun);
  const curves = said(marked, { ...marked.work, tapping: "curves", curve: "p1-1" });
  const traced = [5, 15, 25].reduce(tap, curves);
  const named = said(
    traced,
    changeCurve(traced.work, "p1-1", (curve) => ({ ...curve, parameter: "2000" })),
  );
  const back = undone(named);
  expect(panelInHand(back.work).curves[0]).toMatchObject({ parameter: "2000", knots: [at(5), at(15)] });
  let all = back;
  for (let i = 0; i < 20; i += 1) all = undone(all);
  expect(panelInHand(all.work)).toMatchObject({
    marks: [null, null, null, null],
    curves: [{ parameter: "2000", knots: [], between: [] }],
  });
  expect(all.past).toEqual([]);
});

it("a point that is dragged is one step, however often it moves", () => {
  const begun = tap(begunWith(newWork("table", "landing-over-50ft")), 10);
  const mark = { on: "mark", index: 0 } as const;
  const dragged = [11, 12, 13].reduce(
    (tracing, x) =>
      stepped(
        tracing,
        { ...tracing.work, panels: [{ ...panelInHand(tracing.work), marks: [at(x), null, null, null] }] },
        mark,
      ),
    begun,
  );
  expect(dragged.past).toHaveLength(2);
  expect(panelInHand(undone(dragged).work).marks[0]).toEqual(at(10));
});
