import { type Measure, UNITS } from "@witnessmark/engine";

/** `5.2 bar`, as it was written. */
export const measureText = ({ value, unit }: Measure): string => `${value} ${UNITS[unit].symbol}`.trim();
