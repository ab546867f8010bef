import type { Page } from "playwright-core";

/** Fills what the page's origin may keep with another database, as other things on a phone do, until not a byte more goes in. */
export async function fillStorage(page: Page): Promise<void> {
  await page.evaluate(async () => {
    const database = await new Promise<IDBDatabase>((done, fail) => {
      const asked = indexedDB.open("other-things", 1);
      asked.onupgradeneeded = () => asked.result.createObjectStore("bytes", { autoIncrement: true });
      asked.onsuccess = () => done(asked.result);
      asked.onerror = () => fail(asked.error);
    });
    const put = (size_B: number) =>
      new Promise<boolean>((done) => {
        const bytes = new Uint8Array(size_B);
        for (let at = 0; at < size_B; at += 65_536) {
          crypto.getRandomValues(bytes.subarray(at, Math.min(size_B, at + 65_536)));
        }
        const transaction = database.transaction("bytes", "readwrite");
        transaction.objectStore("bytes").put(bytes);
        transaction.oncomplete = () => done(true);
        transaction.onabort = () => done(false);
      });
    for (let size_B = 4_194_304; size_B >= 64; size_B /= 2) {
      while (await put(size_B)) {
        // once more of the same
      }
    }
    database.close();
  });
}
