import { type Alias, isAlias, isMap, isScalar, isSeq, type Node, type Pair, type YAMLMap } from "yaml";
import type { Report } from "../faults/fault-list.ts";
import type { Path } from "../faults/path.ts";

/** What an alias stands for. */
export type AliasTargets = Map<Alias, Node>;

/** A book has some 5 000 values. Aliases can make a few lines stand for more than any machine holds. */
const MOST_VALUES = 100_000;
const DEEPEST = 40;

/**
 * Plain data from the nodes of a YAML document, in one pass: aliases are followed, a doubled key is reported and its
 * first value kept. Stops at too many values or levels with a report; the value it then gives is not to be used.
 */
export class PlainReader {
  readonly targets: AliasTargets = new Map();
  readonly #report: Report;
  readonly #anchors = new Map<string, Node>();
  readonly #done = new Map<Node, { readonly value: unknown; readonly count: number }>();
  #count = 0;
  #stopped = false;

  constructor(report: Report) {
    this.#report = report;
  }

  /** Whether it stopped before the end. */
  get stopped(): boolean {
    return this.#stopped;
  }

  read(node: Node | null, path: Path = []): unknown {
    if (this.#stopped || node === null) return null;
    const before = this.#count;
    this.#count += 1;
    if (this.#count > MOST_VALUES || path.length > DEEPEST) return this.#stop(path);
    if (isAlias(node)) return this.#alias(node, path);
    const anchor = isMap(node) || isSeq(node) || isScalar(node) ? node.anchor : undefined;
    if (anchor !== undefined) this.#anchors.set(anchor, node);
    const value = this.#content(node, path);
    this.#done.set(node, { value, count: this.#count - before });
    return value;
  }

  #content(node: Node, path: Path): unknown {
    if (isScalar(node)) return node.value;
    if (isSeq<Node | null>(node)) {
      // An item that was forgotten is not the same as one that is written `null`.
      return node.items.map((item, i) => (isLeftOut(item) ? undefined : this.read(item, [...path, i])));
    }
    if (isMap<Node, Node | null>(node)) return this.#map(node, path);
    return null;
  }

  #map(node: YAMLMap<Node, Node | null>, path: Path): Record<string, unknown> {
    const plain = new Map<string, unknown>();
    for (const pair of node.items) {
      const key = keyOf(pair);
      if (key === undefined) continue; // already a syntax fault
      if (plain.has(key)) {
        this.#report([...path, key], {
          expected: "each key once",
          found: `\`${key}\` a second time`,
          remedy: "keep the one that is right",
          on: "key",
        });
        continue;
      }
      plain.set(key, this.read(pair.value, [...path, key]));
    }
    return Object.fromEntries(plain); // defines own properties, also for `__proto__`
  }

  #alias(node: Alias, path: Path): unknown {
    const target = this.#anchors.get(node.source);
    const done = target === undefined ? undefined : this.#done.get(target);
    if (target === undefined || done === undefined) {
      this.#report(path, {
        expected: "the name of an anchor that is complete before this line",
        found: `*${node.source}`,
        remedy:
          target === undefined ? `mark the value to repeat with &${node.source}` : "write the value out",
      });
      return null;
    }
    this.targets.set(node, target);
    this.#count += done.count;
    return this.#count > MOST_VALUES ? this.#stop(path) : done.value;
  }

  #stop(path: Path): null {
    this.#stopped = true;
    this.#report(path, {
      expected: `a book of at most ${MOST_VALUES} values, ${DEEPEST} levels deep`,
      found: "more, counting what is repeated by aliases",
      remedy: "write it with fewer aliases and levels",
    });
    return null;
  }
}

const isLeftOut = (item: Node | null): boolean =>
  item === null || (isScalar(item) && item.value === null && item.source === "");

export function keyOf(pair: Pair<Node, Node | null>): string | undefined {
  return isScalar(pair.key) ? String(pair.key.value) : undefined;
}
