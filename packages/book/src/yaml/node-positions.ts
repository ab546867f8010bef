import { isAlias, isMap, isScalar, isSeq, type LineCounter, type Node, type Pair, type YAMLMap } from "yaml";
import type { Position, Positions } from "../faults/fault-list.ts";
import type { Path } from "../faults/path.ts";
import { type AliasTargets, keyOf } from "./plain-value.ts";

interface Found {
  readonly key: Node | undefined;
  readonly value: Node | null | undefined;
}

type WrittenPair = Pair<Node, Node | null>;
type Pairs = ReadonlyMap<string, { readonly first: WrittenPair; readonly last: WrittenPair }>;

/** Where the values of a parsed document are written. A path that is not there gives the nearest part that is. */
export class NodePositions implements Positions {
  readonly #root: Node | null;
  readonly #targets: AliasTargets;
  readonly #lines: LineCounter;
  readonly #pairsOf = new WeakMap<object, Pairs>();

  constructor(root: Node | null, targets: AliasTargets, lines: LineCounter) {
    this.#root = root;
    this.#targets = targets;
    this.#lines = lines;
  }

  readonly ofValue = (path: Path): Position => {
    const trail = this.#trail(path);
    const last = trail.at(-1);
    const isEmpty = isScalar(last?.value) && last.value.source === "";
    return this.#position(isEmpty ? (last?.key ?? last?.value) : (last?.value ?? last?.key));
  };

  /** Where the key is written; where it is written twice, the second time. */
  readonly ofKey = (path: Path): Position => {
    const parent = this.#contents(this.#trail(path.slice(0, -1)).at(-1)?.value);
    const key = path.at(-1);
    const pair = isMap<Node, Node | null>(parent) ? this.#pairs(parent).get(String(key))?.last : undefined;
    return pair === undefined ? this.ofValue(path) : this.#position(pair.key);
  };

  /** The nodes from the root towards the path, as far as they are written. */
  #trail(path: Path): readonly Found[] {
    const trail: Found[] = [{ key: undefined, value: this.#root }];
    for (const step of path) {
      const parent = this.#contents(trail.at(-1)?.value);
      const next = this.#child(parent, step);
      if (next === undefined) break;
      trail.push(next);
    }
    return trail;
  }

  #child(parent: Node | null | undefined, step: string | number): Found | undefined {
    if (isSeq<Node | null>(parent) && typeof step === "number") {
      return step < parent.items.length ? { key: undefined, value: parent.items[step] } : undefined;
    }
    if (isMap<Node, Node | null>(parent)) return this.#pairs(parent).get(String(step))?.first;
    return undefined;
  }

  /** The pairs of a map by key, made once: a file may have a fault in each of many keys. */
  #pairs(map: YAMLMap<Node, Node | null>): Pairs {
    const known = this.#pairsOf.get(map);
    if (known !== undefined) return known;
    const pairs = new Map<string, { readonly first: WrittenPair; readonly last: WrittenPair }>();
    for (const pair of map.items) {
      const key = keyOf(pair);
      if (key !== undefined) pairs.set(key, { first: pairs.get(key)?.first ?? pair, last: pair });
    }
    this.#pairsOf.set(map, pairs);
    return pairs;
  }

  #contents(node: Node | null | undefined): Node | null | undefined {
    return isAlias(node) ? this.#targets.get(node) : node;
  }

  #position(node: Node | null | undefined): Position {
    const { line, col } = this.#lines.linePos(node?.range?.[0] ?? 0);
    return { line: Math.max(line, 1), column: Math.max(col, 1) };
  }
}
