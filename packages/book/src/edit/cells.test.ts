import { describe, expect, it } from "vitest";
import { pastedRows, resizedCells, withBlock } from "./cells.ts";

describe("the cells of a table", () => {
  it("keep their figures when an axis grows or shrinks", () => {
    expect(
      resizedCells(
        [
          [1, 2],
          [3, 4],
        ],
        [3, 1],
      ),
    ).toEqual([[1], [3], [null]]);
    expect(resizedCells([1, 2], [2, 2])).toEqual([
      [null, null],
      [null, null],
    ]);
    expect(resizedCells(undefined, [2])).toEqual([null, null]);
  });

  it("take what a spreadsheet copies, a comma for a point and a true minus among it", () => {
    expect(pastedRows("1\t2,5\n−3\t\r\n–\t4\n")).toEqual([
      [1, 2.5],
      [-3, null],
      [null, 4],
    ]);
    expect(() => pastedRows("1\ttwo")).toThrow(
      "Row 1, column 2 of what was pasted: expected a figure, found “two”. Nothing was put in.",
    );
  });

  it("take a block at a place, of the layer that is shown, and no more than there is room for", () => {
    const cells = [
      [
        [1, 2],
        [3, 4],
      ],
      [
        [5, 6],
        [7, 8],
      ],
    ];
    expect(withBlock(cells, [1], [0, 1], [[60, 61], [80], [99]])).toEqual([
      [
        [1, 2],
        [3, 4],
      ],
      [
        [5, 60],
        [7, 80],
      ],
    ]);
    expect(withBlock([1, 2, 3], [], [0, 1], [[20, 30]])).toEqual([1, 20, 30]);
  });
});
