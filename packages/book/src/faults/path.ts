/** Where in a book a value stands: keys and list indices from the top. */
export type Path = readonly (string | number)[];

const PLAIN_KEY = /^[A-Za-z][A-Za-z0-9]*$/;

/** `checks[12].reading.gauge` */
export function pathText(path: Path): string {
  return path
    .map((step, i) => {
      if (typeof step === "number") return `[${step}]`;
      if (!PLAIN_KEY.test(step)) return `[${JSON.stringify(step)}]`;
      return i === 0 ? step : `.${step}`;
    })
    .join("");
}
