/** What is wrong with a pack, and with which of its files; `entry` is blank for the pack as a whole. */
export interface PackFault {
  readonly entry: string;
  readonly says: string;
}

/** Thrown inside this package and caught at its face: the pack cannot be read on from here. */
export class Unreadable extends Error {
  override readonly name = "Unreadable";
  readonly fault: PackFault;

  constructor(entry: string, says: string) {
    super(says);
    this.fault = { entry, says };
  }
}

/** Bytes as a person counts them. */
export const sizeText = (bytes: number): string =>
  bytes < 1_000_000 ? `${Math.ceil(bytes / 1000)} kB` : `${(bytes / 1_000_000).toFixed(1)} MB`;
