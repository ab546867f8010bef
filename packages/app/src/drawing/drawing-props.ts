import type { Book, Detail } from "@witnessmark/book";
import type { Status } from "@witnessmark/ledger";
import type { Camera, Room } from "./camera.ts";
import type { DrawingDimension, DrawingZone } from "./dimensions.ts";
import type { SceneStop } from "./walk-scene.ts";

/** From above, from the left side, or from ahead. */
export type DrawingView = "plan" | "side" | "front";

/** What is known of a mark besides its status: done, left to do, the next to do, or in hand. */
export type MarkState = "done" | "left" | "next" | "here";

/** Something at a place of the aircraft. Marks are given in the order in which they are read aloud: the walk's. */
export interface DrawingMark {
  readonly id: string;
  /** As it is read aloud: "Right main tyre". */
  readonly name: string;
  /** x aft, y right, z up, metres. */
  readonly place: readonly [x_m: number, y_m: number, z_m: number];
  /** Drawn as a witness mark; a mark without a status is a dot. */
  readonly status?: Status | undefined;
  readonly state?: MarkState | undefined;
  /** Written beside it when there is room: a figure, a letter, two or three words. */
  readonly label?: string | undefined;
  /** Larger, for what is done where one stands; smaller, for the many inside. */
  readonly size?: "large" | "small" | undefined;
}

/** The walk on the ground: stances in their order, joined by a line, with soles and numbers. Drawn in plan only. */
export interface DrawingRoute {
  readonly stops: readonly SceneStop[];
  /** Where it begins, x aft, y right, metres: the door, say. */
  readonly start?: readonly [x_m: number, y_m: number] | undefined;
}

/** A place on the drawing, metres: the two that its view shows. */
export interface PlaceOnView {
  readonly x_m?: number;
  readonly y_m?: number;
  readonly z_m?: number;
}

/** Which way up a plan stands: the nose, or what lies ahead of who stands at this heading from the nose. */
export type Up = "nose" | { readonly heading_deg: number };

export interface AircraftDrawingProps {
  readonly geometry: Book["geometry"];
  readonly view?: DrawingView;
  /** What a screen reader says of the drawing as a whole. */
  readonly label: string;
  readonly marks?: readonly DrawingMark[];
  readonly route?: DrawingRoute;
  /** The mark that is selected, ringed. */
  readonly selected?: string | undefined;
  /** Where one stands, degrees clockwise from the nose: with it, the drawing can be turned to "as I stand". */
  readonly heading_deg?: number | undefined;
  /** Which way up it stands at first and after its whole is asked for. */
  readonly up?: Up;
  /** A mark was tapped, or pressed by keyboard. */
  readonly onPoint?: (id: string) => void;
  /** The drawing was tapped where no mark is. */
  readonly onPlace?: (at: PlaceOnView) => void;
  /** A mark is dragged, or moved with Shift and an arrow; `done` at the end of it. With it, marks can
   * be dragged: any by the mouse, by a finger the selected one, so that moving the picture moves no point. */
  readonly onMove?: (id: string, at: PlaceOnView, done: boolean) => void;
  /** Which buttons stand in the drawing: all, one that opens them, or none. */
  readonly tools?: "all" | "folded" | "none";
  /** Pixels across a witness mark. */
  readonly mark_px?: number;
  /** Pixels that each mark has to itself: 48, so that each can be tapped; less where the picture says more. */
  readonly apart_px?: number;
  /** The view it begins with and goes back to; the whole of the aircraft and its walk when not given. */
  readonly home?: ((room: Room) => Camera) | undefined;
  /** Where the home camera's 0,0 lies in the room: shares of its width and height, and so many pixels more. */
  readonly zero?: { readonly x_1: number; readonly y_1: number; readonly y_px: number };
  /** Pixels from a stance to the ring round it. */
  readonly ring_px?: number;
  /** 0 outline, 1 main lines, 2 everything. */
  readonly detail?: Detail;
  /** Measures beside it. */
  readonly dimensions?: readonly DrawingDimension[] | undefined;
  /** Draws the line from which the book counts aft, with its name. */
  readonly datum?: boolean;
  /** Where nobody is to stand. Drawn in plan only. */
  readonly zones?: readonly DrawingZone[] | undefined;
  /** Squares of a metre under it. */
  readonly squares?: boolean;
  /** What kind of room it stands in, when the next of its kind will be as large: it is then drawn at once. */
  readonly room?: string;
  /** A picture only: it does not move, and nothing in it can be chosen. */
  readonly still?: boolean;
  /** Black and white, with weights for paper; still. */
  readonly print?: boolean;
}
