/**
 * A text taken out of a source, each of its characters knowing where it stood there: what HTML says in an attribute,
 * in which a style is written, in which there is a path.
 */
export class Mapped {
  private constructor(
    readonly text: string,
    private readonly starts: Offsets,
    private readonly ends: Offsets,
  ) {}

  /** A stretch of the source as it is. */
  static of(source: string, from = 0, to = source.length): Mapped {
    return new Mapped(source.slice(from, to), { base: from }, { base: from + 1 });
  }

  static build(fill: (add: (text: string, start: number, end: number) => void) => void): Mapped {
    const parts: string[] = [];
    const starts: number[] = [];
    const ends: number[] = [];
    fill((text, start, end) => {
      parts.push(text);
      const asIs = text.length === end - start;
      for (let i = 0; i < text.length; i++) {
        starts.push(asIs ? start + i : start);
        ends.push(asIs ? start + i + 1 : end);
      }
    });
    return new Mapped(parts.join(''), starts, ends);
  }

  slice(from: number, to: number = this.text.length): Mapped {
    const cut = (offsets: Offsets): Offsets =>
      'base' in offsets ? { base: offsets.base + from } : offsets.slice(from, to);
    return new Mapped(this.text.slice(from, to), cut(this.starts), cut(this.ends));
  }

  trim(): Mapped {
    const from = this.text.length - this.text.trimStart().length;
    return this.slice(from, Math.max(from, this.text.trimEnd().length));
  }

  /** Where the first character begins in the source. 0 for an empty text that was built. */
  get start(): number {
    return at(this.starts, 0);
  }

  /** Where the last character ends. */
  get end(): number {
    return this.text.length ? at(this.ends, this.text.length - 1) : this.start;
  }

  startAt(index: number): number {
    return at(this.starts, index);
  }
}

type Offsets = number[] | { base: number };

const at = (offsets: Offsets, index: number): number =>
  'base' in offsets ? offsets.base + index : (offsets[index] ?? 0);
