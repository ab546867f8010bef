/** A length to the centimetre, m: what is drawn from a few figures is not known closer. */
export const cm = (metres: number): number => Math.round(metres * 100) / 100;

/** A length to the millimetre, m. */
export const mm = (metres: number): number => Math.round(metres * 1000) / 1000;
