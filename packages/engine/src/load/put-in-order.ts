/** Puts a value in its place in a list that rises: for the handful that a line or a burn has, cheaper than sorting. */
export function putInOrder(rising: number[], value: number): void {
  let at = rising.length;
  for (; at > 0; at -= 1) {
    const before = rising[at - 1] ?? value;
    if (before <= value) break;
    rising[at] = before;
  }
  rising[at] = value;
}
