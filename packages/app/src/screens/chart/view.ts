import type { PicturePoint } from "@witnessmark/chart";

/** How the picture lies in its window: window = picture × scale + offset. */
export interface View {
  readonly scale: number;
  readonly x: number;
  readonly y: number;
}

export interface Size {
  readonly width: number;
  readonly height: number;
}

const CLOSEST = 8;

export const fitted = (picture: Size, window: Size): View =>
  held(
    { scale: Math.min(window.width / picture.width, window.height / picture.height) || 1, x: 0, y: 0 },
    picture,
    window,
  );

/** Nearer or farther, with the place under the fingers staying where it is. */
export function zoomed(view: View, by: number, about: Size, picture: Size, window: Size): View {
  const least = Math.min(window.width / picture.width, window.height / picture.height) || 1;
  const scale = Math.min(CLOSEST, Math.max(least, view.scale * by));
  const share = scale / view.scale;
  return held(
    {
      scale,
      x: about.width - (about.width - view.x) * share,
      y: about.height - (about.height - view.y) * share,
    },
    picture,
    window,
  );
}

export const shifted = (view: View, dx: number, dy: number, picture: Size, window: Size): View =>
  held({ ...view, x: view.x + dx, y: view.y + dy }, picture, window);

/** Keeps the picture in its window: middle where it is smaller, no gap at an edge where it is larger. */
function held(view: View, picture: Size, window: Size): View {
  const hold = (offset: number, long: number, room: number): number =>
    long <= room ? (room - long) / 2 : Math.min(0, Math.max(room - long, offset));
  return {
    scale: view.scale,
    x: hold(view.x, picture.width * view.scale, window.width),
    y: hold(view.y, picture.height * view.scale, window.height),
  };
}

export const toPicture = (view: View, x: number, y: number): PicturePoint => ({
  x_px: (x - view.x) / view.scale,
  y_px: (y - view.y) / view.scale,
});
