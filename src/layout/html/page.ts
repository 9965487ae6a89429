// no-unit-test: test/layout/html/index.test.ts and test/layout/html/cascade.test.ts read sizes by it
import { lengthOf, units } from '../length';
import type { LayoutSize } from '../types';
import type { Cascade, Said } from './cascade';
import type { Element } from './selector';
import type { Tag } from './tags';

interface Opened extends Element {
  parent: Opened | null;
  /** mm that shares of the width are of inside it, where it is known. */
  whole: number | undefined;
}

/** Elements that hold nothing. */
const VOID = new Set('area base br col embed hr img input link meta param source track wbr'.split(' '));
/** So far up the element is sought that a tag closes. */
const MISNESTED = 50;

/** The elements that are open while a page is read, and the widths they leave. */
export class Page {
  private innermost: Opened | null = null;

  constructor(
    private readonly cascade: Cascade,
    private readonly textWidth: number | undefined,
  ) {}

  /** Opens an element; gives the size that a picture in its place has. */
  open({ name, attributes }: Tag): LayoutSize | null {
    const textOf = (key: string) => attributes.get(key)?.value.text;
    const parent = this.innermost;
    const whole = parent ? parent.whole : this.textWidth;
    const classes = textOf('class')?.split(/\s+/) ?? [];
    const element: Opened = { name, id: textOf('id') ?? '', classes, parent, whole };
    const said = this.cascade.of(element, textOf('style'));
    if (!VOID.has(name)) {
      element.whole = inside(name, said, whole);
      this.innermost = element;
    }
    // an image of a drawing is in the drawing's own units
    return name === 'image' ? null : (styledSize(said, whole) ?? attributeSize(textOf, whole));
  }

  close(name: string): void {
    let element = this.innermost;
    for (let up = 0; element && up < MISNESTED; up++, element = element.parent)
      if (element.name === name) {
        this.innermost = element.parent;
        return;
      }
  }
}

/** The width that is left inside an element: its own; what a table, a grid or a row makes of it, nobody knows. */
function inside(name: string, said: Said, whole: number | undefined): number | undefined {
  const display = said('display')?.[1].toLowerCase() ?? '';
  const width = said('width') ?? said('inline-size');
  const own = width && width[1].toLowerCase() !== 'auto' ? lengthOf(width[1], units.web, { whole }) : whole;
  if (/^(?:inline-)?(?:flex|grid|table)/.test(display)) return undefined;
  if (name === 'td' || name === 'th' || name === 'svg') return width && own;
  return own;
}

function styledSize(said: Said, whole: number | undefined): LayoutSize | null {
  const edge = (token: ReturnType<Said>, of?: number) =>
    token && lengthOf(token[1], units.web, { whole: of });
  const width = edge(said('width') ?? said('inline-size'), whole);
  const height = edge(said('height') ?? said('block-size'));
  if (!width && !height) return null;
  const fits = width && height && /^(contain|scale-down)$/i.test(said('object-fit')?.[1] ?? '');
  return { ...(width && { width }), ...(height && { height }), ...(fits && { fits: true }) };
}

function attributeSize(textOf: (key: string) => string | undefined, whole?: number): LayoutSize | null {
  const edge = (key: string, of?: number) => {
    const text = textOf(key);
    return text === undefined ? undefined : lengthOf(text, units.web, { whole: of, bare: 'px' });
  };
  const [width, height] = [edge('width', whole), edge('height')];
  return width || height ? { ...(width && { width }), ...(height && { height }) } : null;
}
