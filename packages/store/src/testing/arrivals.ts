import type { Arrival } from "../store.ts";

export type SoundArrival = Arrival & { readonly kind: "sound" };

/** An event for tests of the store, which looks at nothing but the id, the device and its count. */
export function sound(
  device: string,
  deviceSeq: number,
  words = "",
  id = `${device}-${deviceSeq}`,
): SoundArrival {
  return { kind: "sound", id, device, deviceSeq, text: JSON.stringify({ device, deviceSeq, id, words }) };
}

export function unsound(text: string, reason = "its hash is wrong", id = ""): Arrival {
  return { kind: "unsound", id, text, reason };
}

/** Events of one device, one after the other. */
export function run(device: string, from: number, to: number): readonly SoundArrival[] {
  return Array.from({ length: to - from + 1 }, (_, index) => sound(device, from + index));
}
