import { isAlias, isMap, isScalar, isSeq, type LineCounter, type Node } from "yaml";
import type { Position, Positions } from "../faults/fault-list.ts";
import type { Path } from "../faults/path.ts";
import { type AliasTargets, keyOf } from "./plain-value.ts";

interface Found {
  readonly key: Node | undefined;
  readonly value: Node | null | undefined;
}

/** Where the values of a parsed document are written. A path that is not there gives the nearest part that is. */
export class NodePositions implements Positions {
  readonly #root: Node | null;
  readonly #targets: AliasTargets;
  readonly #lines: LineCounter;

  constructor(root: Node | null, targets: AliasTargets, lines: LineCounter) {
    this.#root = root;
    this.#targets = targets;
    this.#lines = lines;
  }

  readonly ofValue = (path: Path): Position => {
    const trail = this.#trail(path);
    const last = trail.at(-1);
    const isEmpty = isScalar(last?.value) && last.value.source === "";
    return this.#position(isEmpty ? last?.key : (last?.value ?? last?.key));
  };

  /** Where the key is written; where it is written twice, the second time. */
  readonly ofKey = (path: Path): Position => {
    const parent = this.#contents(this.#trail(path.slice(0, -1)).at(-1)?.value);
    const key = path.at(-1);
    if (isMap<Node, Node | null>(parent)) {
      const pair = parent.items.findLast((item) => keyOf(item) === key);
      if (pair !== undefined) return this.#position(pair.key);
    }
    return this.ofValue(path);
  };

  /** The nodes from the root towards the path, as far as they are written. */
  #trail(path: Path): readonly Found[] {
    const trail: Found[] = [{ key: undefined, value: this.#root }];
    for (const step of path) {
      const parent = this.#contents(trail.at(-1)?.value);
      const next = child(parent, step);
      if (next === undefined) break;
      trail.push(next);
    }
    return trail;
  }

  #contents(node: Node | null | undefined): Node | null | undefined {
    return isAlias(node) ? this.#targets.get(node) : node;
  }

  #position(node: Node | null | undefined): Position {
    const { line, col } = this.#lines.linePos(node?.range?.[0] ?? 0);
    return { line: Math.max(line, 1), column: Math.max(col, 1) };
  }
}

function child(parent: Node | null | undefined, step: string | number): Found | undefined {
  if (isSeq<Node | null>(parent) && typeof step === "number") {
    return step < parent.items.length ? { key: undefined, value: parent.items[step] } : undefined;
  }
  if (isMap<Node, Node | null>(parent)) {
    const pair = parent.items.find((item) => keyOf(item) === step);
    return pair === undefined ? undefined : { key: pair.key, value: pair.value };
  }
  return undefined;
}
