import { smallBookText } from "@witnessmark/book";
import fc from "fast-check";
import { type AsyncZippableFile, strToU8, type Zippable, zipSync } from "fflate";
import { describe, expect, it } from "vitest";
import { crc32 } from "./crc32.ts";
import { MOST_PHOTO_B } from "./limits.ts";
import { type PackedPhoto, sha256Of } from "./photo.ts";
import { readPack } from "./read-pack.ts";
import { writePack } from "./write-pack.ts";

const JPEG = Uint8Array.from([0xff, 0xd8, 0xff, 0xe0, 1, 2, 3, 4, 5, 6]);
const PNG = Uint8Array.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a, 9]);
const BOOK = strToU8("witnessmark: 1\n");

async function photo(
  bytes: Uint8Array<ArrayBuffer>,
  mediaType: PackedPhoto["mediaType"],
): Promise<PackedPhoto> {
  return { sha256: await sha256Of(bytes), mediaType, bytes };
}
const named = async (bytes: Uint8Array<ArrayBuffer>, ending: string) =>
  `photos/${await sha256Of(bytes)}.${ending}`;
const faultsOf = async (bytes: Uint8Array<ArrayBuffer>) => {
  const result = await readPack(bytes);
  return result.ok ? [] : result.faults;
};
const zip = (files: Record<string, Uint8Array | AsyncZippableFile>) => zipSync(files as Zippable);

describe("a pack", () => {
  it("comes back as it was, and the same pack has the same bytes", async () => {
    const pack = {
      text: smallBookText,
      photos: [await photo(JPEG, "image/jpeg"), await photo(PNG, "image/png")],
    };
    const bytes = await writePack(pack);
    expect(await readPack(bytes)).toEqual({ ok: true, pack });
    expect(await writePack(pack)).toEqual(bytes);
  });

  it("may have been packed by hand, with a folder of its own", async () => {
    const bytes = zip({ "book.yaml": BOOK, "photos/": new Uint8Array(0), [await named(JPEG, "jpeg")]: JPEG });
    expect(await readPack(bytes)).toMatchObject({
      ok: true,
      pack: { text: "witnessmark: 1\n", photos: [{}] },
    });
  });

  it("is not written with what no reader would take", async () => {
    const large = new Uint8Array(40_000_000);
    large.set(JPEG);
    await expect(writePack({ text: "", photos: [await photo(large, "image/jpeg")] })).rejects.toThrow(
      /has 40\.0 MB; at most 8\.4 MB are taken\. Make it smaller\.$/,
    );
    await expect(writePack({ text: "", photos: [await photo(JPEG, "image/png")] })).rejects.toThrow(
      /not what it is said/,
    );
  });

  it("has the check sum that ISO 3309 gives for its test string", () => {
    expect(crc32(strToU8("123456789"))).toBe(0xcbf43926); // published check value of CRC-32
  });
});

describe("a pack from anywhere", () => {
  it.each([
    ["../book.yaml", "Its path climbs out of the pack. It was made to mislead."],
    ["photos/../../etc/passwd", "Its path climbs out of the pack. It was made to mislead."],
    ["/etc/passwd", "It has an address outside the pack. A pack holds book.yaml and photos/ only."],
    ["C:/windows.yaml", "It has an address outside the pack. A pack holds book.yaml and photos/ only."],
    ["photos\\a.jpg", "It has an address outside the pack. A pack holds book.yaml and photos/ only."],
    [
      "notes.txt",
      "Expected book.yaml, and pictures in photos/ named by their SHA-256 (.jpg, .png, .webp) only. Take it out, or pack the book again.",
    ],
    [
      "photos/left-tyre.jpg",
      "Expected book.yaml, and pictures in photos/ named by their SHA-256 (.jpg, .png, .webp) only. Take it out, or pack the book again.",
    ],
  ])("is refused for a file called %s", async (name, says) => {
    const faults = await faultsOf(zip({ "book.yaml": BOOK, [name]: JPEG }));
    expect(faults).toEqual([{ entry: name, says }]);
  });

  it("is refused for a link", async () => {
    const bytes = zip({
      "book.yaml": [strToU8("/etc/passwd"), { os: 3, attrs: (0o120777 << 16) >>> 0 }] as AsyncZippableFile,
    });
    expect(await faultsOf(bytes)).toEqual([
      { entry: "book.yaml", says: "It is a link to another file. A pack holds files only." },
    ]);
  });

  it("is refused for one name twice, also in capitals", async () => {
    const faults = await faultsOf(zip({ "book.yaml": BOOK, "Book.yaml": BOOK }));
    expect(faults).toContainEqual({ entry: "Book.yaml", says: "It is in the pack twice. Pack it again." });
  });

  it("is refused without a book, and with too many files", async () => {
    expect(await faultsOf(zip({ [await named(JPEG, "jpg")]: JPEG }))).toEqual([
      { entry: "", says: "Expected a book.yaml in the pack, found none. Is it the right file?" },
    ]);
    const many = Object.fromEntries(Array.from({ length: 500 }, (_, i) => [`photos/${i}.jpg`, JPEG]));
    expect(await faultsOf(zip({ "book.yaml": BOOK, ...many }))).toEqual([
      { entry: "", says: "Expected at most 410 files in the pack, found 501." },
    ]);
  });

  it("is refused for what is no picture, of another kind, or changed", async () => {
    const text = strToU8("<svg onload=alert(1)>");
    expect((await faultsOf(zip({ "book.yaml": BOOK, [await named(text, "jpg")]: text })))[0]?.says).toBe(
      "It is no picture: expected JPEG, PNG or WebP.",
    );
    expect((await faultsOf(zip({ "book.yaml": BOOK, [await named(PNG, "jpg")]: PNG })))[0]?.says).toBe(
      "It is called .jpg and is a picture of another kind: .png.",
    );
    expect((await faultsOf(zip({ "book.yaml": BOOK, [await named(PNG, "jpg")]: JPEG })))[0]?.says).toMatch(
      /^Its bytes have the SHA-256 [0-9a-f]{64}: the picture was changed\. Pack the book again\.$/,
    );
  });

  it("is refused for a picture of 40 MB, by name and size", async () => {
    const large = new Uint8Array(40_000_000);
    large.set(JPEG);
    const name = await named(large, "jpg");
    expect(
      await faultsOf(zip({ "book.yaml": BOOK, [name]: [large, { level: 0 }] as AsyncZippableFile })),
    ).toEqual([
      {
        entry: name,
        says: "The picture has 40.0 MB; at most 8.4 MB are taken. Make it smaller and pack it again.",
      },
    ]);
  });

  it("is refused for a bomb, whether it says its size or not", async () => {
    const bomb = zip({ "book.yaml": [new Uint8Array(12_000_000), { level: 6 }] as AsyncZippableFile });
    expect(bomb.length).toBeLessThan(100_000);
    expect((await faultsOf(bomb))[0]?.says).toBe(
      "It has 12.0 MB; at most 1.0 MB are taken. Is it the right file?",
    );
    // the directory and the header say 10 bytes; what is packed unpacks to 12 MB
    const view = new DataView(bomb.buffer);
    const directory = view.getUint32(bomb.length - 22 + 16, true);
    view.setUint32(directory + 24, 10, true);
    view.setUint32(22, 10, true);
    expect((await faultsOf(bomb))[0]?.says).toMatch(
      /^It has .*; at most 1 kB are taken\. Is it the right file\?$/,
    );
  });

  it("is refused when it is cut short, no ZIP, or damaged anywhere, and never throws", async () => {
    const good = await writePack({ text: smallBookText, photos: [await photo(JPEG, "image/jpeg")] });
    expect(await faultsOf(strToU8("witnessmark: 1"))).toEqual([
      {
        entry: "",
        says: "Expected a ZIP file with a book in it, found something else. Is it the right file?",
      },
    ]);
    await fc.assert(
      fc.asyncProperty(
        fc.nat(good.length - 1),
        fc.integer({ min: 1, max: 255 }),
        fc.boolean(),
        async (at, by, cuts) => {
          const bad = cuts ? good.slice(0, at) : good.slice();
          if (!cuts) bad[at] = (bad[at] ?? 0) ^ by;
          const result = await readPack(bad);
          // a change that is not seen is one of a time or a note, which nothing reads
          if (result.ok)
            expect(result.pack).toEqual({ text: smallBookText, photos: [await photo(JPEG, "image/jpeg")] });
          else expect(result.faults[0].says.length).toBeGreaterThan(0);
        },
      ),
      { numRuns: 300 },
    );
    await fc.assert(
      fc.asyncProperty(fc.uint8Array({ maxLength: 400 }), async (bytes) => {
        expect((await readPack(new Uint8Array(bytes))).ok).toBe(false);
      }),
    );
  });

  it("is refused when its files lie over each other or its names disagree", async () => {
    const bytes = zip({
      "book.yaml": [BOOK, { level: 0 }] as AsyncZippableFile,
      [await named(JPEG, "jpg")]: [JPEG, { level: 0 }] as AsyncZippableFile,
    });
    const view = new DataView(bytes.buffer);
    const renamed = bytes.slice();
    renamed[30] = "c".charCodeAt(0);
    expect((await faultsOf(renamed))[0]?.says).toMatch(/^The pack calls it cook\.yaml in another place/);
    const directory = view.getUint32(bytes.length - 22 + 16, true);
    view.setUint32(directory + 20, BOOK.length + 60, true); // the book's packed bytes reach into the picture
    expect((await faultsOf(bytes))[0]?.says).toMatch(/lies over book\.yaml in the pack/);
    expect(MOST_PHOTO_B).toBe(8 * 1024 * 1024); // as the server has it
  });
});
