import { chordHeight_m, chordwise_m } from "../drawing/lifting-surface.ts";
import type { BookEdit } from "../edit/edit-text.ts";
import type { Geometry } from "../schema/geometry.ts";
import { cm } from "./round.ts";

/**
 * The ends of the struts that go along with a wing: each stays at its share of the chord, and as far under it.
 *
 * @param asked what is asked of the shape; struts that are put somewhere by hand stay as it is asked
 */
export function strutsAlong(
  { wing: was }: Geometry,
  { wing: now }: Geometry,
  asked: readonly BookEdit[],
): readonly BookEdit[] {
  if (asked.some((edit) => "set" in edit && edit.set[2] === "struts")) return [];
  return (now.struts ?? []).flatMap(({ head: [x_m, y_m, z_m] }, index): readonly BookEdit[] => {
    const leading_m = chordwise_m(was, y_m, 0);
    const share_1 = (x_m - leading_m) / (chordwise_m(was, y_m, 1) - leading_m);
    const to = [
      cm(chordwise_m(now, y_m, share_1)),
      y_m,
      cm(z_m + chordHeight_m(now, y_m) - chordHeight_m(was, y_m)),
    ];
    const stays = to[0] === cm(x_m) && to[2] === cm(z_m);
    return stays ? [] : [{ set: ["geometry", "wing", "struts", index, "head"], to }];
  });
}
