/** What conversion leaves over is not beyond a step. */
const ON_THE_STEP_1 = 1e-6;

/**
 * A step as scales have them: 1, 2 or 5 times a power of ten.
 *
 * @param value above 0, in any unit
 * @returns the largest that is not above it, or with `up` the least that is not below it
 */
export function roundStep(value: number, direction: "up" | "down"): number {
  const power = Math.floor(Math.log10(value));
  const steps = [1, 2, 5, 10].map((times) => Number(`${times}e${power}`));
  const found =
    direction === "up"
      ? steps.find((step) => step * (1 + ON_THE_STEP_1) >= value)
      : steps.findLast((step) => step * (1 - ON_THE_STEP_1) <= value);
  return found ?? Number(`${direction === "up" ? 10 : 1}e${power}`);
}
