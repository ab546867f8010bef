/** A text with its stop, which it may have already. */
export const ended = (text: string): string => (/[.!?]$/.test(text.trimEnd()) ? text.trimEnd() : `${text}.`);
