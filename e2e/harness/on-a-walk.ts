import { demoBook } from "./book.ts";
import type { Phone, PhoneGiven } from "./browser.ts";
import { jpeg } from "./picture-file.ts";
import type { Scene } from "./scene.ts";
import { introduce, readyForNoNet, toWalk } from "./screens.ts";
import { Walker } from "./walker.ts";

export interface OnAWalk {
  readonly phone: Phone;
  readonly walker: Walker;
}

/** A phone whose holder said who they are, with the first walk of the day begun and everything there for no net. */
export async function onAWalk(scene: Scene, name: string, given: PhoneGiven = {}): Promise<OnAWalk> {
  const { phone, walker } = await introduced(scene, name, given);
  await toWalk(phone.page);
  await walker.startFirstOfDay();
  return { phone, walker };
}

/** A phone on the Apron, whose holder said who they are. */
export async function introduced(scene: Scene, name: string, given: PhoneGiven = {}): Promise<OnAWalk> {
  const phone = await scene.phone(given);
  await introduce(phone.page, name);
  await readyForNoNet(phone.page);
  return { phone, walker: new Walker(phone.page, await demoBook(), await jpeg(phone.page)) };
}

/** The same walker at a phone that was switched on again. */
export const sameWalker = (phone: Phone, { book, picture }: Walker): Walker =>
  new Walker(phone.page, book, picture);
