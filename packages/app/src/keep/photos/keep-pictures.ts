import type { Connection } from "../storage/open-database.ts";
import type { PhotoRow } from "../storage/schema.ts";
import { writeStrictly } from "../storage/strict-write.ts";

/**
 * Keeps the pictures that a book names, by their hashes, and has them sent: no event tells of them. One that is here
 * already is left as it is.
 */
export async function keepPictures(
  connection: Connection,
  aircraft: string,
  pictures: readonly PhotoRow[],
): Promise<void> {
  if (pictures.length === 0) return;
  await connection.run((database) =>
    writeStrictly(database, ["photos", "uploads"], async (transaction) => {
      const photos = transaction.objectStore("photos");
      const uploads = transaction.objectStore("uploads");
      for (const picture of pictures) {
        await photos.put(picture);
        const known = await uploads.get(picture.sha256);
        if (known === undefined) {
          await uploads.put({ sha256: picture.sha256, aircraft, event: null, state: "waiting" });
        }
      }
    }),
  );
}
