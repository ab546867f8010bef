/** A length to the centimetre, metres: a finger on a drawing means it no closer. Never −0. */
export const cm = (metres: number): number => Math.round(metres * 100) / 100 + 0;
