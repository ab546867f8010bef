import { sha256 as sha256Of } from "@witnessmark/ledger";
import type { Server } from "../exchange/server.ts";
import { OutOfReach, Refused } from "../exchange/server.ts";
import type { Connection } from "../storage/open-database.ts";
import type { PhotoRow, UploadRow } from "../storage/schema.ts";
import { writeStrictly } from "../storage/strict-write.ts";

/** Refusals that sending the same bytes again cannot mend. */
const FOR_GOOD = new Set([400, 413, 415, 422]);

/**
 * Sends the photos that wait, each after its event has reached the server, and remembers which have arrived. Broken
 * off, it goes on where it was: a photo is known by its hash.
 *
 * @returns the sentence of a refusal, when there was one
 * @throws {OutOfReach} {Refused} when nothing can be sent now
 */
export async function sendPhotos(
  connection: Connection,
  server: Server,
  onChange: () => Promise<void>,
): Promise<string | null> {
  let refusal: string | null = null;
  const waiting = await connection.run((database) =>
    database.getAllFromIndex("uploads", "byState", "waiting"),
  );
  for (const upload of waiting) {
    const photo = await connection.run((database) => ready(database, upload));
    if (photo === null) continue;
    const state = await sendOne(server, photo, upload.wasThere ?? false);
    await connection.run((database) =>
      writeStrictly(database, ["uploads"], async (transaction) => {
        await transaction.objectStore("uploads").put({ ...upload, ...state });
      }),
    );
    refusal = state.refusal ?? refusal;
    await onChange();
  }
  return refusal;
}

/** The bytes of a photo whose event is at the server; `null` when it must wait. */
async function ready(
  database: Parameters<Parameters<Connection["run"]>[0]>[0],
  upload: UploadRow,
): Promise<PhotoRow | null> {
  const event = upload.event === null ? undefined : await database.get("outbox", upload.event);
  if (event?.state === "waiting") return null;
  return (await database.get("photos", upload.sha256)) ?? null;
}

async function sendOne(
  server: Server,
  photo: PhotoRow,
  wasThere: boolean,
): Promise<Pick<UploadRow, "state" | "refusal">> {
  try {
    if (wasThere && (await server.hasPhoto(photo.sha256))) return { state: "there" };
    await server.putPhoto(photo.sha256, photo.bytes);
    return { state: "there" };
  } catch (error) {
    if (!(error instanceof Refused) || !FOR_GOOD.has(error.status)) throw error;
    return { state: "refused", refusal: `The server will not take a photo: ${error.message}` };
  }
}

/**
 * A photo by its hash: from this phone, else from the server, and then kept here too.
 *
 * @param report is told of a copy that could not be kept; the picture is shown all the same
 * @returns `null` when neither has it, or the server is out of reach
 */
export async function findPhoto(
  connection: Connection,
  server: Server,
  sha256: string,
  report: (error: unknown) => void,
): Promise<Blob | null> {
  const kept = await connection.run((database) => database.get("photos", sha256));
  if (kept) return new Blob([kept.bytes], { type: kept.mediaType });
  const fetched = await fetchPhoto(server, sha256);
  if (fetched === null) return null;
  const bytes = await fetched.arrayBuffer();
  const mediaType = pictureType(fetched.type);
  if (mediaType === null || (await sha256Of(new Uint8Array(bytes))) !== sha256) return null;
  try {
    await connection.run((database) => database.put("photos", { sha256, mediaType, bytes }));
  } catch (error) {
    report(error);
  }
  return new Blob([bytes], { type: mediaType });
}

async function fetchPhoto(server: Server, sha256: string): Promise<Blob | null> {
  try {
    return await server.getPhoto(sha256);
  } catch (error) {
    if (error instanceof OutOfReach || error instanceof Refused) return null;
    throw error;
  }
}

function pictureType(type: string): PhotoRow["mediaType"] | null {
  const plain = type.split(";")[0]?.trim();
  return plain === "image/jpeg" || plain === "image/png" || plain === "image/webp" ? plain : null;
}
