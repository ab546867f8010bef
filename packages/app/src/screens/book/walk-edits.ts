import { type BookEdit, freeId, otherSide, type Plain, valueAt } from "@witnessmark/book";
import { isAt, listIn, textOf } from "./book-toc.tsx";

/** A check at a point, and at its mirror image too where it has one. */
export function newCheck(
  plain: Plain,
  point: string,
  blank: readonly BookEdit[],
): { readonly edits: readonly BookEdit[]; readonly id: string } {
  const points = listIn(plain, ["points"]);
  const here = points.find((each) => textOf(each, "id") === point);
  const other =
    textOf(here, "mirrors") ||
    textOf(
      points.find((each) => textOf(each, "mirrors") === point),
      "id",
    );
  const id = freeId(plain, ["checks"], `${point}-look`);
  const at: Plain = other === "" ? point : [point, other];
  return {
    id,
    edits: blank.map((edit): BookEdit => {
      const made = { id, at };
      if ("insert" in edit)
        return { ...edit, item: { ...(edit.item as { readonly [key: string]: Plain }), ...made } }; // a check is keys and values
      return edit;
    }),
  };
}

const SIDES = { left: "right", right: "left" } as const;

/** The other one of a pair: its place across the centre line, and every check that is made here made there too. */
export function mirrorPointEdits(plain: Plain, index: number): readonly BookEdit[] {
  const points = listIn(plain, ["points"]);
  const point = points[index];
  if (point === undefined) return [];
  const id = textOf(point, "id");
  const y_m = Number(valueAt(point, ["place", 1]));
  const side = y_m < 0 ? "left" : "right";
  const other = SIDES[side];
  const name = textOf(point, "name");
  const otherName =
    otherSide(name) === name
      ? `${other === "left" ? "Left" : "Right"} ${name.charAt(0).toLowerCase()}${name.slice(1)}`
      : otherSide(name);
  const otherId = freeId(plain, ["points"], otherSide(id) === id ? `${other}-${id}` : otherSide(id));
  const known = (list: string, of: string) =>
    listIn(plain, [list]).some((each) => textOf(each, "id") === otherSide(of)) ? otherSide(of) : of;
  const image: Plain = {
    id: otherId,
    name: otherName,
    area: known("areas", textOf(point, "area")),
    side: other,
    place: [valueAt(point, ["place", 0]) ?? 0, 0 - y_m, valueAt(point, ["place", 2]) ?? 0],
    stance: known("stances", textOf(point, "stance")),
    mirrors: id,
  };
  const checks = listIn(plain, ["checks"]);
  return [
    { set: ["points", index, "side"], to: side },
    { set: ["points", index, "mirrors"], to: otherId },
    { insert: ["points", index + 1], item: image },
    ...checks.flatMap((check, at): readonly BookEdit[] => {
      if (!isAt(check, id)) return [];
      const before = valueAt(check, ["at"]);
      return [{ set: ["checks", at, "at"], to: [...(Array.isArray(before) ? before : [id]), otherId] }];
    }),
  ];
}
