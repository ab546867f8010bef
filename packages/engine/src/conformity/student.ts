/**
 * The share of Student's t distribution between −t and t.
 *
 * @param theta atan(t / √n), 0 to π/2
 * @param degrees whole number of degrees of freedom n, 1 or more
 * @source Abramowitz and Stegun, 26.7.3 (odd n) and 26.7.4 (even n)
 */
function centralShare_1(theta: number, degrees: number): number {
  const cosine2 = Math.cos(theta) ** 2;
  const odd = degrees % 2 === 1;
  let term = odd ? Math.cos(theta) : 1;
  let sum = degrees === 1 ? 0 : term;
  for (let k = odd ? 3 : 2; k <= degrees - 2; k += 2) {
    term *= ((k - 1) / k) * cosine2;
    sum += term;
  }
  return odd ? (2 / Math.PI) * (theta + Math.sin(theta) * sum) : Math.sin(theta) * sum;
}

const HALVINGS = 60;

/**
 * The t for which the central share of Student's t distribution is the one asked for, by halving.
 *
 * @param share_1 above 0 and below 1
 * @param degrees whole number, 1 or more
 */
export function studentFactor(share_1: number, degrees: number): number {
  let low = 0;
  let high = Math.PI / 2;
  for (let step = 0; step < HALVINGS; step += 1) {
    const middle = (low + high) / 2;
    if (centralShare_1(middle, degrees) < share_1) low = middle;
    else high = middle;
  }
  return Math.sqrt(degrees) * Math.tan((low + high) / 2);
}
