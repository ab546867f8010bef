/** Letters added, left out, changed or swapped with a neighbour, to get from one word to the other. */
export function editDistance(a: string, b: string): number {
  let beforeLast: number[] = [];
  let last = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const same = a[i - 1] === b[j - 1] ? 0 : 1;
      let least = Math.min(at(last, j) + 1, at(row, j - 1) + 1, at(last, j - 1) + same);
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]) {
        least = Math.min(least, at(beforeLast, j - 2) + 1);
      }
      row.push(least);
    }
    beforeLast = last;
    last = row;
  }
  return at(last, b.length);
}

const at = (row: readonly number[], i: number): number => row[i] ?? Number.POSITIVE_INFINITY;

/** Longer words are not compared: an id never is as long, and the work grows with the square. */
const LONGEST = 80;

/** The known word that was most likely meant, when one is near enough to be worth naming. */
export function nearest(written: string, known: Iterable<string>): string | undefined {
  if (written.length > LONGEST) return undefined;
  const tolerated = Math.max(1, Math.floor(written.length / 3));
  let best: { readonly word: string; readonly distance: number } | undefined;
  for (const word of known) {
    if (word.length > LONGEST || Math.abs(word.length - written.length) > tolerated) continue;
    const distance = editDistance(written.toLowerCase(), word.toLowerCase());
    if (distance <= tolerated && distance < (best?.distance ?? Number.POSITIVE_INFINITY)) {
      best = { word, distance };
    }
  }
  return best?.word;
}

/** "did you mean `x`?", or nothing when no known word is near. */
export function didYouMean(written: string, known: Iterable<string>): string | undefined {
  const word = nearest(written, known);
  return word === undefined ? undefined : `did you mean \`${word}\`?`;
}
