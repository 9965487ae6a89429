/** Width and height, of a picture in its pixels or of a window in CSS pixels. */
export interface Size {
  width: number;
  height: number;
}

export interface Point {
  x: number;
  y: number;
}

/** What is seen of a picture in a window. */
export interface View {
  /** CSS pixels on a pixel of the picture. */
  scale: number;
  /** The place of the picture, in its pixels, that lies in the middle of the window. */
  x: number;
  y: number;
}

/** Empty ground that stays around a picture that is seen whole, CSS pixels. */
export const GROUND = 28;
/** One pixel of the picture is never drawn larger, CSS pixels. */
const LARGEST = 32;

/** The largest view that shows all of it; a small picture is not enlarged. */
export function whole(picture: Size, window: Size, largest = 1): View {
  const room = (edge: number) => Math.max(1, edge - 2 * GROUND);
  const scale = Math.min(room(window.width) / picture.width, room(window.height) / picture.height, largest);
  return { scale, x: picture.width / 2, y: picture.height / 2 };
}

/** The nearest view that shows nothing but picture where there is enough of it; else it lies in the middle. */
export function kept(view: View, picture: Size, window: Size, least: number): View {
  const scale = Math.min(LARGEST, Math.max(Math.min(least, LARGEST), view.scale));
  const along = (at: number, length: number, room: number) => {
    const half = room / scale / 2;
    return length <= 2 * half ? length / 2 : Math.min(length - half, Math.max(half, at));
  };
  return {
    scale,
    x: along(view.x, picture.width, window.width),
    y: along(view.y, picture.height, window.height),
  };
}

/** Another scale; what lies under `at` (in the window) stays there. */
export function zoomed(view: View, scale: number, at: Point, window: Size): View {
  const under = inPicture(view, at, window);
  return {
    scale,
    x: under.x - (at.x - window.width / 2) / scale,
    y: under.y - (at.y - window.height / 2) / scale,
  };
}

/** Moved by so many CSS pixels: the picture goes with them. */
export const moved = (view: View, dx: number, dy: number): View => ({
  ...view,
  x: view.x - dx / view.scale,
  y: view.y - dy / view.scale,
});

/** The place of the picture under a point of the window. */
export const inPicture = ({ scale, x, y }: View, at: Point, window: Size): Point => ({
  x: x + (at.x - window.width / 2) / scale,
  y: y + (at.y - window.height / 2) / scale,
});

/** The point of the window over a place of the picture. */
export const inWindow = ({ scale, x, y }: View, at: Point, window: Size): Point => ({
  x: (at.x - x) * scale + window.width / 2,
  y: (at.y - y) * scale + window.height / 2,
});

/** What of the picture is seen, in its pixels. */
export function seen(view: View, picture: Size, window: Size): Point & Size {
  const first = inPicture(view, { x: 0, y: 0 }, window);
  const last = inPicture(view, { x: window.width, y: window.height }, window);
  const x = Math.max(0, first.x);
  const y = Math.max(0, first.y);
  return {
    x,
    y,
    width: Math.min(picture.width, last.x) - x,
    height: Math.min(picture.height, last.y) - y,
  };
}
