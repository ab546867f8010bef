import { BookDesk } from "./book-desk.ts";
import { type Phone, TABLET } from "./browser.ts";
import { openScene, type Scene } from "./scene.ts";
import { introduce } from "./screens.ts";

/** A tablet in the hands of MK, and the desk on it for a book of their own. */
export async function openDesk(registration: string): Promise<{
  readonly scene: Scene;
  readonly phone: Phone;
  readonly desk: BookDesk;
}> {
  const scene = await openScene();
  const phone = await scene.phone({ device: TABLET });
  await introduce(phone.page, "MK");
  return { scene, phone, desk: new BookDesk(phone.page, registration) };
}
