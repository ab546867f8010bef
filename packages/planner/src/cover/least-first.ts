interface Entry<T> {
  readonly key: number;
  readonly item: T;
  /** When it came: of two with the same key, the later is taken first, so that the search goes deep. */
  readonly turn: number;
}

const isSooner = (a: Entry<unknown>, b: Entry<unknown>): boolean =>
  a.key < b.key || (a.key === b.key && a.turn > b.turn);

/** A heap: what has the least key is taken first. */
export class LeastFirst<T> {
  private readonly entries: Entry<T>[] = [];
  private turns = 0;

  add(key: number, item: T): void {
    const entry = { key, item, turn: this.turns };
    this.turns += 1;
    let at = this.entries.length;
    this.entries.push(entry);
    while (at > 0) {
      const up = (at - 1) >> 1;
      const parent = this.entries[up];
      if (parent === undefined || !isSooner(entry, parent)) break;
      this.entries[at] = parent;
      at = up;
    }
    this.entries[at] = entry;
  }

  take(): { readonly key: number; readonly item: T } | undefined {
    const top = this.entries[0];
    const last = this.entries.pop();
    if (top === undefined || last === undefined || this.entries.length === 0) return top;
    let at = 0;
    for (;;) {
      const [left, right] = [this.entries[2 * at + 1], this.entries[2 * at + 2]];
      if (left === undefined) break;
      const isRight = right !== undefined && isSooner(right, left);
      const child = isRight ? right : left;
      if (!isSooner(child, last)) break;
      this.entries[at] = child;
      at = 2 * at + (isRight ? 2 : 1);
    }
    this.entries[at] = last;
    return top;
  }
}
