import type { Report } from "../faults/fault-list.ts";
import type { Path } from "../faults/path.ts";
import type { Point } from "../schema/book-source.ts";
import type { CheckSource } from "../schema/check.ts";
import type { Draft } from "../shape/draft.ts";
import { firstById } from "../shape/first-by-id.ts";
import type { Rule } from "./rule.ts";
import { withoutSide } from "./sides.ts";

const TOLERANCE_m = 0.01;
const OPPOSITE = { left: "right", right: "left", centre: undefined } as const;

/** A point that says it mirrors another is its mirror image. */
export const mirrorsAreMirrorImages: Rule = (draft, report) => {
  const points = firstById(draft.points);
  for (const { index, value } of draft.points) {
    const other = value.mirrors === undefined ? undefined : points.get(value.mirrors);
    if (other === undefined) continue;
    mirrorFault(value, other, ["points", index], report);
  }
};

function mirrorFault(point: Point, other: Point, path: Path, report: Report): void {
  if (other.id === point.id) {
    report([...path, "mirrors"], {
      expected: "the id of the point on the other side",
      found: `\`${point.id}\`, the point itself`,
    });
    return;
  }
  if (other.mirrors !== undefined && other.mirrors !== point.id) {
    report([...path, "mirrors"], {
      expected: "two points that mirror each other",
      found: `\`${other.id}\`, which mirrors \`${other.mirrors}\``,
    });
  }
  const [x, y, z] = other.place;
  const image = [x, -y, z];
  // A place on the wrong side is told with the side: it is one slip, not two.
  const isOnItsSide = point.side === "centre" || point.place[1] < 0 === (point.side === "left");
  if (
    isOnItsSide &&
    point.place.some((metres, i) => Math.abs(metres - (image[i] ?? 0)) > TOLERANCE_m + 1e-9)
  ) {
    report([...path, "place"], {
      expected: `the mirror image of \`${other.id}\`, [${image.map((metres) => metres + 0).join(", ")}]`,
      found: `[${point.place.join(", ")}]`,
      remedy: "mend one of the two, or take out `mirrors`",
    });
  }
  const opposite = OPPOSITE[other.side];
  if (point.side !== opposite) {
    report([...path, "side"], {
      expected: opposite === undefined ? "a point on one side, mirrored on the other" : opposite,
      found: `${point.side}, where \`${other.id}\` is ${other.side}`,
    });
  }
}

/** What is checked on one side is checked on the other, unless the book says why not. */
export const bothSidesAreChecked: Rule = (draft, report) => {
  const { images, allSound } = mirrorImages(draft);
  const namesAt = new Map<string, Set<string>>();
  for (const { value } of draft.checks) {
    for (const point of pointsOf(value)) {
      const names = namesAt.get(point) ?? new Set();
      for (const name of sidelessNames(value)) names.add(name);
      namesAt.set(point, names);
    }
  }
  // A check whose own text is at fault may be the one that is missing here: say nothing then.
  if (draft.checks.length !== (draft.ids.checks?.length ?? 0)) return;
  for (const { index, value } of draft.checks) {
    const points = pointsOf(value);
    const mirrored = points.filter((point) => images.has(point));
    const names = sidelessNames(value);
    const lonely = mirrored.find((point) => {
      const others = namesAt.get(images.get(point) ?? "");
      return !names.some((name) => others?.has(name));
    });
    if (value.oneSided === undefined && lonely !== undefined) {
      const image = images.get(lonely) ?? "";
      report(["checks", index, "at", ...(typeof value.at === "string" ? [] : [points.indexOf(lonely)])], {
        expected: `the same check at \`${image}\`, the mirror image of \`${lonely}\``,
        found: "it on one side only",
        remedy: `write at: [${lonely}, ${image}], or say why not with \`oneSided:\``,
      });
    }
    if (value.oneSided !== undefined && lonely === undefined && allSound) {
      report(["checks", index, "oneSided"], {
        expected: "a check that is made on one side only, of a point that has a mirror image",
        found: mirrored.length === 0 ? "a point without one" : "the same check on the other side",
        remedy: "take `oneSided` out",
      });
    }
  }
};

const pointsOf = ({ at }: CheckSource): readonly string[] => (typeof at === "string" ? [at] : at);

interface MirrorImages {
  /** Both ways, whichever of the two points says it. */
  readonly images: ReadonlyMap<string, string>;
  /** False when some `mirrors` is itself at fault: then a pair may be missing here. */
  readonly allSound: boolean;
}

function mirrorImages(draft: Draft): MirrorImages {
  const points = firstById(draft.points);
  const images = new Map<string, string>();
  let allSound = draft.points.length === (draft.ids.points?.length ?? 0);
  for (const { value } of draft.points) {
    if (value.mirrors === undefined) continue;
    const other = points.get(value.mirrors);
    if (other !== undefined && value.side === OPPOSITE[other.side]) {
      images.set(value.id, other.id).set(other.id, value.id);
    } else {
      allSound = false;
    }
  }
  return { images, allSound };
}

/** Two checks are the same on either side when their ids, or method and title, differ only in the side they name. */
const sidelessNames = ({ id, method, title }: CheckSource): readonly string[] => [
  `id ${withoutSide(id)}`,
  `${method} ${withoutSide(title)}`,
];
