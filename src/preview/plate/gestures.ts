// no-unit-test: it lives in a webview; test/e2e/suites/screen tests it there
import type { Point } from './view';

/** What a hand does to the picture; points and lengths in CSS pixels of its window. */
export interface Hand {
  /** `factor` times larger. Without a point: around the middle. */
  zoom(factor: number, at?: Point): void;
  /** Whether anything moved: a wheel that moves nothing scrolls the page. */
  move(dx: number, dy: number): boolean;
  whole(): void;
  oneToOne(): void;
  printed(): void;
  /** The reading point, by pixels of the picture or of the screen, whichever are larger. */
  step(dx: number, dy: number): void;
  point(at: Point | null): void;
  /** To the picture before or after in the book. */
  turn(to: 'before' | 'after'): void;
}

const KEY_ZOOM = 1.25;
/** CSS pixels that an arrow key moves the picture by. */
const KEY_MOVE = 60;
/** How many pixels of a wheel or a pinch double the size. */
const WHEEL_DOUBLES = 200;
/** A wheel that counts in lines. */
const LINE = 16;

const ARROWS: Record<string, [number, number]> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};

/** Wheel, pinch, drag and keys on a picture's window. */
export function listen(window: HTMLElement, hand: Hand): void {
  const pointOf = ({ clientX, clientY }: MouseEvent): Point => {
    const { left, top } = window.getBoundingClientRect();
    return { x: clientX - left, y: clientY - top };
  };
  window.addEventListener(
    'wheel',
    event => {
      const unit = event.deltaMode === WheelEvent.DOM_DELTA_LINE ? LINE : 1;
      const [dx, dy] = [event.deltaX * unit, event.deltaY * unit];
      // a pinch on a touch pad comes as a wheel with Ctrl
      if (event.ctrlKey || event.metaKey) hand.zoom(2 ** (-dy / WHEEL_DOUBLES), pointOf(event));
      else if (document.activeElement !== window || !hand.move(-dx, -dy)) return;
      event.preventDefault();
    },
    { passive: false },
  );
  byPointer(window, hand, pointOf);
  window.addEventListener('dblclick', event => hand.zoom(2, pointOf(event)));
  window.addEventListener('keydown', event => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    if (act(event, hand)) event.preventDefault();
  });
}

function byPointer(window: HTMLElement, hand: Hand, pointOf: (event: MouseEvent) => Point) {
  const held = new Map<number, Point>();
  const apart = () => {
    const [one, other] = held.values();
    return Math.hypot(one.x - other.x, one.y - other.y);
  };
  window.addEventListener('pointerdown', event => {
    if (event.button !== 0) return;
    window.focus({ preventScroll: true });
    window.setPointerCapture(event.pointerId);
    held.set(event.pointerId, pointOf(event));
  });
  window.addEventListener('pointermove', event => {
    const now = pointOf(event);
    const before = held.get(event.pointerId);
    if (!before) return hand.point(now);
    if (held.size === 1) hand.move(now.x - before.x, now.y - before.y);
    const was = held.size === 2 ? apart() : 0;
    held.set(event.pointerId, now);
    if (was > 0) hand.zoom(apart() / was, now);
  });
  for (const end of ['pointerup', 'pointercancel'] as const)
    window.addEventListener(end, ({ pointerId }) => held.delete(pointerId));
  window.addEventListener('pointerleave', () => hand.point(null));
}

function act({ key, shiftKey }: KeyboardEvent, hand: Hand): boolean {
  const arrow = ARROWS[key];
  if (arrow) {
    const [x, y] = arrow;
    if (shiftKey) hand.step(x, y);
    else hand.move(-x * KEY_MOVE, -y * KEY_MOVE);
    return true;
  }
  switch (key) {
    case '+':
    case '=':
      hand.zoom(KEY_ZOOM);
      return true;
    case '-':
      hand.zoom(1 / KEY_ZOOM);
      return true;
    case '0':
      hand.whole();
      return true;
    case '1':
      hand.oneToOne();
      return true;
    case 'p':
      hand.printed();
      return true;
    case 'PageUp':
      hand.turn('before');
      return true;
    case 'PageDown':
      hand.turn('after');
      return true;
    default:
      return false;
  }
}
